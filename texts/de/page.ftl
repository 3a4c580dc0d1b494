### Machine-drafted, not yet reviewed by a speaker.

title = Downbeam: C-Bogen-Einstellungen der Lendenwirbelsäule
subtitle = C-Bogen-Einstellungen der Lendenwirbelsäule
skip = Zum Bild springen
noscript = Diese Seite berechnet Röntgenbilder in Ihrem Browser und braucht JavaScript und WebAssembly.

activity-name = Tätigkeit
activity-views = Einstellen
activity-injection = Injektion
activity-lessons = Lektionen

case-heading = Fall
case-level = Höhe
case-side = Seite
case-left = Links
case-right = Rechts
case-patient = Person
sheet-close = Schließen
case-theme = Helligkeit
case-dark = Dunkler Raum
case-light = Hell
case-device = Wie das Gerät

menu-name = Menü
menu-practice = Tagesrunde: fünf Minuten
menu-check = Lehrende: Belege prüfen
menu-author = Lehrende: Lektion stellen
menu-model = Über das Modell
menu-tour = Rundgang
menu-keys = Tasten
menu-read = Bild vorlesen
menu-language = Sprache
menu-draft = Maschinell übersetzt, noch nicht von einer Fachperson gelesen.

welcome-what = Ein C-Bogen über einer Lendenwirbelsäule.
welcome-first = Eine echte AP einstellen: sagen, wohin es geht, dann dem Pfeil auf dem Bild folgen.
welcome-tour = Rundgang
welcome-dismiss = Hinweis schließen

picture-heading = Bild
picture-keys = Bild. Pfeiltasten drehen den C-Bogen.
picture-label = Durchleuchtungsbild, { $place }
picture-description = Beschreibung
picture-hint = Das Bild ziehen, um zu drehen: der Empfänger geht mit. Die Regler tun dasselbe. Mausrad oder zwei Finger vergrößern es, ein Doppeltippen zeigt es ganz.
picture-zoomed = Bild { $times }-mal so groß.
picture-whole = Das ganze Bild.

## Loading the engine

loading-failedFetch = Das Rechenwerk wurde nicht geladen ({ $why }). Die Verbindung prüfen und noch einmal versuchen; Schritte und C-Bogen-Zeichnung gehen weiter.
loading-failedStart = Das Rechenwerk ließ sich nicht starten ({ $why }). Nötig ist ein Browser mit WebAssembly; Schritte und C-Bogen-Zeichnung gehen weiter.
loading-failedRun = Das Rechenwerk blieb stehen ({ $why }). Zum Weitermachen neu laden; Ihre Stellung bleibt erhalten.

turn-heading = C-Bogen drehen
turn-more = Tisch und Bild
turn-reset = Tisch mittig
turn-straighten = Mittig und gerade

rotation-name = Bilddrehung
rotation-hint = im Uhrzeigersinn +
rotation-high = rechtsherum
rotation-low = linksherum
rotation-zero = aufrecht
rotation-zeroSpoken = aufrecht, 0 Grad
rotation-turned = { $way ->
    [clockwise] { $deg }° im Uhrzeigersinn
   *[counter] { $deg }° gegen den Uhrzeigersinn
  }
rotation-turnedSpoken = { $way ->
    [clockwise] { $deg } Grad im Uhrzeigersinn
   *[counter] { $deg } Grad gegen den Uhrzeigersinn
  }

window-contrast = Kontrast
window-brightness = Helligkeit
window-percent = { $n } %
window-percentLess = −{ $n } %

exposure-heading = Strahlung
exposure-source = Woher das Bild kommt
exposure-live = Freies Livebild
exposure-exposures = Bild nur mit Strahlung
exposure-liveNote = Zum Üben: das Bild folgt dem C-Bogen und kostet nichts.
exposure-exposuresNote = Drehen zeigt nichts Neues. Das letzte Bild bleibt bis zur nächsten Aufnahme, und jede kostet Dosis. Eine neue Person oder ein neuer Start beginnt ein neues Protokoll.
exposure-beam = Strahl
exposure-spot = Aufnahme
exposure-fluoroscopy = Durchleuchtung
exposure-hold = Die Taste halten, oder die Leertaste, solange sie den Fokus hat. Esc hält den Strahl an. Unter „Strahlung“ lässt sich einstellen, dass er anbleibt.
exposure-latch = Durchleuchtung bleibt an, bis man wieder drückt
exposure-settings = Strahl einstellen
exposure-pulseRate = Pulse der Durchleuchtung
exposure-rate = { $n } je Sekunde
exposure-magnification = Vergrößerung
exposure-magnified = { $times ->
    [1] ganzes Feld
   *[other] { $times }-fach
  }
exposure-lowDose = Niedrige Dosis
exposure-width = Feldbreite
exposure-height = Feldhöhe
exposure-open = { $n } %
exposure-none = Noch kein Bild. „Aufnahme“ drücken oder „Durchleuchtung“ halten.
exposure-noPicture = Noch kein Bild.
exposure-kind-spot = Aufnahme
exposure-kind-fluoroscopy = Durchleuchtung
exposure-on = Strahl an: { $where }.
exposure-last = Letztes Bild ({ $kind }): { $where }.
exposure-lastMoved = Letztes Bild ({ $kind }): { $where }. Der C-Bogen wurde seither bewegt.
exposure-onMoved = Strahl an: { $where }. Der C-Bogen wurde seither bewegt.
exposure-whereOf = { $level }, { $oblique }, { $tilt }
exposure-where = { $oblique }, { $tilt }
exposure-alternative = Letztes Röntgenbild, { $kind }, von { $level }, mit dem Empfänger { $oblique } und { $tilt }.
exposure-alternativeMoved = Letztes Röntgenbild, { $kind }, von { $level }, mit dem Empfänger { $oblique } und { $tilt }. Der C-Bogen wurde seither bewegt.
exposure-said = { $kind ->
    [spot] Aufnahme gemacht: Empfänger { $oblique } und { $tilt }. Bisher { $exposures }, Dosisflächenprodukt { $product } mGy·cm².
   *[fluoroscopy] Strahl aus, letztes Bild gehalten: Empfänger { $oblique } und { $tilt }. Bisher { $exposures }, Dosisflächenprodukt { $product } mGy·cm².
  }
exposure-count = { $n ->
    [one] { $n } Aufnahme
   *[other] { $n } Aufnahmen
  }
exposure-spent = Dosis bisher
exposure-figureName-exposures = Aufnahmen
exposure-figureName-beam = Strahlzeit
exposure-figureName-kerma = Luftkerma am Referenzpunkt
exposure-figureName-product = Dosisflächen{ "\u00AD" }produkt
exposure-figureName-technique = Letzte Aufnahme
exposure-figure-beam = { $n } s
exposure-figure-kerma = { $n } mGy
exposure-figure-product = { $n } mGy·cm²
exposure-figure-technique = { $kvp } kV, { $mas } mAs
exposure-nothing-exposures = 0
exposure-nothing-beam = 0 s
exposure-nothing-kerma = 0 mGy
exposure-nothing-product = 0 mGy·cm²
exposure-nothing-technique = keine
exposure-estimate = Schätzung am Referenzpunkt, frei in Luft; keine Hautdosis.
exposure-saving = { $habit ->
    [half_field] Beide Blendenpaare auf das halbe Feld zu schließen hätte etwa { $percent } % gespart.
    [low_dose] Die niedrige Dosis hätte etwa { $percent } % gespart.
    [slow_pulses] Vier Pulse je Sekunde hätten etwa { $percent } % gespart.
   *[fewer_exposures] Halb so viele Aufnahmen hätten etwa { $percent } % gespart.
  }
exposure-reset = Auf null
exposure-resetLong = Die Dosis auf null setzen
exposure-save = dose.json speichern
exposure-saveLong = dose.json speichern, die Dosis in Begriffen und Einheiten von DICOM
exposure-wasReset = Das Dosisprotokoll beginnt wieder bei null.

checks-heading = Wie genau
checks-view = Zu prüfende Einstellung
checks-selfTest = Selbsttest
checks-selfTestHint = Verbirgt Werte und Rat, bis Sie fragen.
checks-none = Die Prüfung kommt mit dem Bild.
checks-count = { $n ->
    [0] Noch nicht geprüft
    [one] { $n }-mal geprüft
   *[other] { $n }-mal geprüft
  }
checks-standsAtBest = Der C-Bogen steht in der besten Einstellung „{ $view }“, die dieses Gerät hier erreicht; eine Aufnahme zeigt sie. Sie zählt nicht für die Schritte.
checks-showingBest = Das ist die beste Einstellung „{ $view }“, die dieses Gerät hier erreicht. Sie zählt nicht für die Schritte.
checks-bestLocked = Die beste Einstellung lässt sich nach einer Prüfung zeigen.
checks-allGood = Nichts mehr zu verbessern.

steps-heading = Schritte
steps-done = fertig
steps-current = jetzt
steps-later = später
steps-doIt = Tun
steps-lookFor = Darauf achten
steps-progress = { $done } von { $all }
steps-ticked = Schritt fertig: { $title }.
steps-allDone = Alle vier Schritte fertig. Einen anderen Start, eine andere Seite oder Höhe nehmen und es im Selbsttest versuchen.
steps-testHint = Im Selbsttest wird ein Schritt abgehakt, wenn Sie Ihre Einstellung prüfen.
steps-keep = Einstellung behalten
steps-whichWay = Wohin?
steps-start = Neuer Start
steps-startLong = Neuer Start an zufälliger Stelle
steps-again = Gleicher Start
steps-againLong = Gleicher Start: noch einmal von derselben Stelle

steps-true_ap-title = Echte AP
steps-true_ap-act = Nach links oder rechts drehen, bis der Strahl gerade von hinten nach vorn durch { $level } geht.
steps-true_ap-look = { $level ->
    [S1] Der Mittelkamm des Kreuzbeins steht mitten zwischen den beiden Pedikeln von S1, und beide Seiten sehen gleich aus.
   *[other] Der Dornfortsatz von { $level } steht mitten zwischen den beiden Pedikeln. Beide Pedikel sehen gleich aus und liegen gleich weit vom Rand des Wirbelkörpers.
  }
steps-square-title = Deckplatte einstellen
steps-square-act = Nicht drehen. Nach kranial oder kaudal kippen.
steps-square-look = Vorderer und hinterer Rand der Deckplatte von { $level } kommen zusammen: die flache Ellipse schließt sich zu einer scharfen Linie, der Bandscheibenraum öffnet sich.
steps-oblique-title = { $side ->
    [left] Schräg nach links
   *[right] Schräg nach rechts
  }
steps-oblique-act = { $side ->
    [left] Die Kippung behalten. Den Empfänger zur linken Seite der Person drehen.
   *[right] Die Kippung behalten. Den Empfänger zur rechten Seite der Person drehen.
  }
steps-oblique-look = { $level ->
    [S1] Hintere und vordere Öffnung des ersten Kreuzbeinlochs schieben sich übereinander, bis sie als eine helle Lücke unter dem Pedikel von S1 erscheinen.
   *[other] Der Hund erscheint, mit dem Pedikel von { $level } als Auge. Weiterdrehen, bis das Ohr des nächsten Hundes darunter, der obere Gelenkfortsatz von { $below }, unter diesem Auge steht und sein lateraler Rand unter der Mitte des Auges liegt.
  }
steps-square_again-title = Noch einmal einstellen
steps-square_again-act = Durch das Schrägdrehen ist die Platte etwas gekippt. Kippen, bis sie sich wieder schließt, und die Drehung nachstellen, falls sie sich verschoben hat.
steps-square_again-look = { $level ->
    [S1] Beides zugleich: die Deckplatte von S1 ist eine Linie, und die Öffnungen des Lochs liegen noch übereinander.
   *[other] Beides zugleich: die Deckplatte von { $level } ist eine Linie, und der Fortsatz von { $below } steht noch unter dem Pedikel.
  }

gantry-heading = C-Bogen und Person
gantry-short = C-Bogen
gantry-feet = Von den Füßen: { $oblique }
gantry-side = Von der rechten Seite: { $tilt }
gantry-describeFeet = C-Bogen von den Füßen gesehen, Person in Bauchlage, ihre linke Seite links. Der Empfänger oben steht { $oblique }; die Röhre steht gegenüber, unter dem Tisch.
gantry-describeSide = C-Bogen von der rechten Seite der Person gesehen, Kopf rechts. Der Empfänger oben ist gekippt: { $tilt }; die Röhre steht gegenüber, unter dem Tisch.
gantry-receptor = Empfänger
gantry-source = Röhre
gantry-left = links
gantry-right = rechts
gantry-head = Kopf
gantry-feetEnd = Füße

notice-dismiss = Meldung schließen
notice-badFragment = Die Adresse verlangt { $key } „{ $value }“; erlaubt ist { $allowed }. Benutzt wurde die Voreinstellung.
notice-unknownFragment = Die Adresse hat einen unbekannten Eintrag „{ $key }“; er wurde übergangen.
notice-noPart = „{ $name }“ ließ sich nicht laden ({ $why }). Alles andere geht weiter; noch einmal versuchen.
notice-noPartYet = „{ $name }“ ließ sich nicht laden ({ $why }). Alles andere geht weiter; die Seite neu laden, um es zu haben.
notice-tools = Bisherige Ansichten, Vergleichen und Speichern
notice-noLanguage = Die Sprache „{ $tag }“ der Seite ließ sich nicht laden; sie geht auf Englisch weiter.
notice-offlineKept = Kein Netz. Alles hier geht weiter: die Seite ist auf diesem Gerät gespeichert.
notice-offline = Kein Netz. Was offen ist, geht weiter; was noch nicht geöffnet wurde, braucht das Netz.
notice-online = Das Netz ist wieder da.
notice-noStorage = Dieser Browser behält keine Einstellungen für diese Seite; sie gelten, bis Sie sie schließen.

bench-title = Downbeam: wie lange ein Bild braucht
bench-done = { $n } Bilder auf einer Umdrehung, Zeichenfläche 512 und 1024 Pixel
bench-running = { $n } Bilder auf einer Umdrehung werden gemessen
bench-failed = Das Rechenwerk wurde nicht geladen: { $why }
bench-median = Median, ms
bench-slow = 95. Perzentil, ms
bench-rows-radiograph = Röntgenbild
bench-rows-outlines = Umrisse, gezeichnet
bench-rows-report = Bericht
bench-rows-frame = ganzes Bild
bench-rows-still = Bild in Ruhe, 1024 Pixel
bench-rows-patient = neue Person
