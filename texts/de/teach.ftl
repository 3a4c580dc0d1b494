### Machine-drafted, not yet reviewed by a speaker.

skip = Zum Inhalt springen
theme = Helligkeit
dismiss = Meldung schließen
caution = Lehrmodell, nicht für den klinischen Gebrauch: niemals einen Eingriff damit planen oder führen. Es gelten örtliche Vorgaben, Ausbildung unter Aufsicht und die eigene berufliche Befugnis.

pages-name = Seiten
pages-room = Üben
pages-author = Lektion erstellen
pages-check = Klasse prüfen
pages-model = Über das Modell

noStorage = Dieser Browser behält keine Einstellungen für diese Seite; sie gelten, bis Sie sie schließen.
percent = { $n } %
stopped = Das Rechenwerk blieb stehen ({ $why }). Die Seite neu laden und die Dateien noch einmal wählen.
noEngine = Das Rechenwerk wurde nicht geladen ({ $why }). Die Verbindung prüfen und die Seite neu laden.
loading = Das Rechenwerk wird geladen.
again = Neu laden

## Counts

receipts = { $n ->
    [one] { $n } Beleg
   *[other] { $n } Belege
  }
files = { $n ->
    [one] { $n } Datei
   *[other] { $n } Dateien
  }
learners = { $n ->
    [one] { $n } Lernende
   *[other] { $n } Lernende
  }

shelf-noList = Die Liste der mitgelieferten Lektionen ließ sich nicht laden. Fügen Sie die Lektionen Ihrer Klasse selbst hinzu.
shelf-missing = Die mitgelieferte Lektion „{ $name }“ ließ sich nicht laden.
shelf-tooLarge = { $name }: eine Lektionsdatei hat höchstens 32 kB.
shelf-notText = { $name }: ist kein UTF-8-Text.
shelf-bad = { $name }: { $why }

check-title = Downbeam: Klasse prüfen
check-heading = Klasse prüfen
check-lead = Geben Sie die Belege hinein, die Ihre Lernenden abgegeben haben. Jeder wird hier im Browser abgespielt, nichts wird hochgeladen.
check-receipts = Belege
check-drop = Dateien oder einen Ordner hier ablegen oder wählen.
check-files = Dateien wählen
check-folder = Ordner wählen
check-kinds = Ein Beleg je Datei (.json, .txt) oder ein Beleg je Zeile (.ndjson, .jsonl, .txt). In einem Ordner wird alles darunter durchsucht.
check-reading = Datei { $n } von { $all } wird gelesen
check-checking = { $n } von { $receipts } geprüft
check-waiting = Warten auf das Rechenwerk
check-cancel = Anhalten
check-stopped = Angehalten: { $n } geprüft, { $left } noch nicht.
check-stoppedReading = Beim Lesen angehalten: { $n } von { $files } gelesen.
check-done = { $n ->
    [one] { $n } Beleg geprüft.
   *[other] { $n } Belege geprüft.
  }
check-goOn = Weiter prüfen
check-clear = Alle Belege entfernen
check-cleared = Alle Belege sind von dieser Seite entfernt.
check-nothing = Unter diesen Dateien ist kein Beleg: aus einem Ordner werden .json, .ndjson, .jsonl und .txt genommen.
check-leftOut = { $n ->
    [one] { $n } Datei anderer Art ausgelassen:
   *[other] { $n } Dateien anderer Art ausgelassen:
  }
check-more = und { $n } mehr
check-notText = ist kein UTF-8-Text
check-gone = ist nicht mehr lesbar.
check-lessons = Lektionen
check-lessonsWhy = Ein Beleg wird gegen die Lektion geprüft, mit der er entstand. Haben Sie eine eigene gestellt, fügen Sie sie hier hinzu.
check-lessonsState = { $n ->
    [one] { $n } mitgelieferte Lektion.
   *[other] { $n } mitgelieferte Lektionen.
  }
check-lessonsStateOwn = { $n ->
    [one] { $n } mitgelieferte Lektion, { $own } eigene.
   *[other] { $n } mitgelieferte Lektionen, { $own } eigene.
  }
check-addLesson = Lektionsdatei hinzufügen
check-link = Oder der Link einer Lektion
check-addLink = Link hinzufügen
check-added = Hinzugefügt: { $title }.
check-countsStopped = { $receipts } geprüft, { $left } noch nicht
check-status-verified = Bestätigt
check-status-altered = Verändert
check-status-unknown_engine = Fremdes Rechenwerk
check-status-unknown_lesson = Fremde Lektion
check-status-unreadable = Unlesbar
check-status-copies = Gleiches Protokoll
check-statusMeans-verified = das Protokoll ergibt die behaupteten Punkte
check-statusMeans-altered = das Protokoll ergibt etwas anderes
check-statusMeans-unknown_engine = von einer anderen Fassung gewertet: mit jener prüfen
check-statusMeans-unknown_lesson = nicht unter den Lektionen hier
check-statusMeans-unreadable = kein Beleg; unten genannt
check-statusMeans-copies = wie bei jemand anderem; zählt auch unter dem eigenen Stand
check-unread = Nicht als Beleg lesbar
check-csv = CSV speichern
check-ndjson = NDJSON speichern
check-print = Drucken
check-file-csv = class.csv
check-file-ndjson = class.ndjson
check-lesson-sums = { $receipts }, { $verified } bestätigt. { $learners }, { $passed } bestanden; Mittel { $mean }. Von mehreren Belegen derselben Person zählt der beste.
check-lesson-nothing = { $receipts }, keiner bestätigt: über die Klasse lässt sich noch nichts sagen.
check-lesson-gates = Woran es scheiterte, wie viele Punkte es auch waren
check-lesson-gate = { $gate }: { $names }
check-lesson-band-under25 = unter 25 %
check-lesson-band-to49 = 25 bis 49 %
check-lesson-band-to74 = 50 bis 74 %
check-lesson-band-from75 = ab 75 %
check-lesson-bar = { $step }: { $bands }
check-lesson-bandCount = { $n } { $band }
check-lesson-names = { $n }: { $names }
check-lesson-moreNames = { $n } mehr
check-lesson-caption = { $title }: Lernende je Schritt und Punkten
check-lesson-columns-step = Schritt
check-lesson-columns-bands = Lernende nach Punkten
check-lesson-columns-mean = Mittel
check-lesson-columns-below = Unter der Bestehensgrenze
check-lesson-key = Punkte im Schritt
check-lesson-nobody = niemand
check-lesson-fewer = weniger
check-lesson-numbers = Dasselbe in Zahlen
check-learners-list = Klassenliste
check-learners-listWhy = Eine CSV-Datei mit Kürzel und Namen je Zeile. Sie bleibt in dieser Seite: Belege enthalten nur Kürzel. Oder geben Sie nur Namen, einen je Zeile, und jeder bekommt ein Kürzel.
check-learners-choose = Klassenliste wählen
check-learners-deal = Kürzel an Namen verteilen
check-learners-dealt = Jeder Name hat sein Kürzel: die Liste ist als Datei gespeichert und gilt hier.
check-learners-state = { $n ->
    [one] { $n } Person auf der Liste.
   *[other] { $n } Personen auf der Liste.
  }
check-learners-tooLarge = ist größer als 1 MB, das Höchste für eine Klassenliste
check-learners-notText = ist kein UTF-8-Text: Speichern Sie die Liste im Tabellenprogramm als „CSV UTF-8“
check-learners-heading = Person für Person
check-learners-separator = Für eine Tabelle mit
check-learners-comma = Dezimalpunkt (Komma dazwischen)
check-learners-semicolon = Dezimalkomma (Semikolon dazwischen)
check-learners-tab = Tabulator dazwischen
check-learners-save = Notenliste speichern
check-learners-file = notenliste.csv
check-learners-codesFile = klassenliste.csv
check-learners-named = { $name } ({ $code })
check-learners-notListed = { $code } (nicht auf der Liste)
check-learners-missing = { $n ->
    [one] { $n } Person hat nichts abgegeben: { $names }
   *[other] { $n } Personen haben nichts abgegeben: { $names }
  }
check-learners-nothing = noch nichts
check-learners-noneVerified = { $n ->
    [one] { $n } Versuch, nicht bestätigt
   *[other] { $n } Versuche, keiner bestätigt
  }
check-learners-tries = Versuche: { $totals }
check-learners-rows = { $n ->
    [one] Zeile { $rows } ansehen
   *[other] Zeilen { $rows } ansehen
  }
check-learners-columns-learner = Person
check-learners-columns-lookAt = Zu wissen
check-rows-heading = Belege einzeln
check-rows-byStatus = Stand
check-rows-byLesson = Lektion
check-rows-all = Alle
check-rows-shownAll = { $n ->
    [one] { $n } Zeile
   *[other] { $n } Zeilen
  }
check-rows-shownOf = { $all ->
    [one] { $n } von { $all } Zeile
   *[other] { $n } von { $all } Zeilen
  }
check-rows-more = { $n } mehr zeigen
check-rows-sort = Nach { $name } ordnen
check-rows-weakest = { $name }, { $percent }
check-rows-sameLog = Gleiches Protokoll wie Zeile { $n }, von jemand anderem.
check-rows-alike = { $percent } gemeinsam mit Zeile { $n }, von jemand anderem.
check-rows-repeat = Zeile { $n } noch einmal.
check-rows-gatesFailed = Fällt durch, wie viele Punkte es auch sind: { $names }.
check-rows-place = { $source }, Zeile { $line }
check-rows-columns-number = Nr.
check-rows-columns-learner = Lernende
check-rows-columns-lesson = Lektion
check-rows-columns-status = Stand
check-rows-columns-total = Punkte
check-rows-columns-weakest = Schwächster Schritt
check-rows-columns-note = Zu wissen
check-rows-columns-source = Datei
check-rows-noCode = kein Code
check-rows-noLearner = nicht bekannt
check-rows-passed = bestanden
check-rows-notPassed = nicht bestanden
check-rows-incomplete = nicht vollständig
check-rows-none = Zu dieser Auswahl passt kein Beleg.
check-proof-heading = Was ein Beleg beweist
check-proof-can = Er beweist, dass sein Protokoll, von diesem Rechenwerk an der Person dieser Lernenden abgespielt, seine Punkte ergibt.
check-proof-cannot = Er beweist nicht, wer es getan hat, dass ein Mensch es getan hat, oder wann: eine Seite kann kein Geheimnis hüten, darum trägt er keine Unterschrift.
check-proof-identity = Wer es war, ergibt sich daraus, wo die Datei abgegeben wurde: auf der Lernplattform oder in einer E-Mail. Kommt es darauf an, lassen Sie noch eine vor Ihren Augen machen.
check-proof-privacy = Belege enthalten einen Code und keinen Namen, es sei denn, jemand nahm den Namen als Code. Wird diese Seite geschlossen, sind sie vergessen.

author-title = Downbeam: Lektion erstellen
author-heading = Lektion erstellen
author-lead = Füllen Sie das Formular aus und geben Sie Link oder Datei weiter. Was falsch ist, steht beim Schreiben neben dem Feld; nichts wird hochgeladen.
author-start = Beginnen mit
author-shipped = Eine mitgelieferte Lektion
author-pick = Lektion wählen
author-file = Lektionsdatei öffnen
author-fresh = Neue Lektion
author-before = Vorigen Inhalt zurückholen
author-link = Oder der Link einer Lektion
author-openLink = Link öffnen
author-replaced = Das Formular enthält jetzt eine andere Lektion.
author-broughtBack = Die vorige Lektion ist wieder da.
author-draft = Woran Sie arbeiteten, ist wieder da. Es liegt nur in diesem Browser.
author-noDraft = Dieser Browser behält Ihre Arbeit an dieser Seite nicht: speichern Sie die Datei, bevor Sie sie schließen.
author-waits = Das JSON ist gerade nicht lesbar, darum wartet das Formular. Dort richten oder die letzte Lektion des Formulars wieder aufnehmen.
author-again = Letzte Lektion aufnehmen
author-sections-about = Name und Texte
author-sections-task = Was verlangt wird
author-sections-who = Person und Ziel
author-sections-way = Nadel und Bilder
author-sections-marks = Punkte
author-id = Id
author-idHint = Kleine Buchstaben, Ziffern, Bindestriche. Belege nennen die Lektion so, darum nicht ändern, während eine Klasse daran arbeitet.
author-language = Texte in „{ $tag }“
author-titleIn = Titel ({ $tag })
author-introIn = Was die Lernenden davor lesen ({ $tag })
author-removeLanguage = { $tag } entfernen
author-newLanguage = Eine weitere Sprache (wie de oder pt-BR)
author-addLanguage = Sprache hinzufügen
author-twice = Diese Sprache ist schon da.
author-mode = Hilfe
author-modes-guided = Geführt
author-modes-practice = Übung
author-modes-assessment = Prüfung
author-modeNotes-guided = Hinweise die ganze Zeit, und das Bild ist live.
author-modeNotes-practice = Hinweise, wenn danach gefragt wird.
author-modeNotes-assessment = Keine Hinweise; ohne Aufnahme ist nichts zu sehen.
author-steps = Schritte, die verlangt und gewertet werden
author-parts = Zu benennende Teile
author-partsHint = Einer nach dem anderen gefragt, in einer vom Code ausgelosten Folge; nur mit dem Schritt „Teile benannt“.
author-part = Teil
author-partNumber = Teil { $n }
author-removePart = Teil { $n } entfernen
author-bone = Knochen
author-bones-target = dieser Knochen
author-bones-below = der nächste darunter
author-partSide = Seite
author-partSides-needle = Nadelseite
author-partSides-other = Gegenseite
author-addPart = Teil hinzufügen
author-patient = Person
author-level = Höhe
author-side = Seite der Nadel
author-sides-left = Links
author-sides-right = Rechts
author-one = Für alle dasselbe
author-several = Eines von mehreren, nach dem Code
author-which = { $name }, welche
author-among = { $name }, unter diesen
author-seed = Kleine Unterschiede zwischen Personen gleichen Baus
author-seeds-none = Für alle dieselben (0)
author-seeds-learner = Nach dem Code der Lernenden
author-seeds-number = Nach einer Zahl
author-seedNumber = Zahl
author-approach = Zugang zum Foramen
author-approaches-none = Unter dem Pedikel, wie üblich
author-approaches-subpedicular = Unter dem Pedikel
author-approaches-infraneural = Unter der Wurzel
author-approaches-open = Die Lernenden wählen
author-medium = Worin sich die Nadel biegt
author-media-none = Muskel, wie üblich
author-media-muscle = Muskel
author-media-gel = Gel
author-exposures = Bilder
author-exposuresChoice-none = Wie für die Hilfe üblich
author-exposuresChoice-true = Nur mit Aufnahme
author-exposuresChoice-false = Live und frei
author-exposuresNote = Wie üblich heißt: in einer Prüfung nur mit Aufnahme, sonst live und frei.
author-pass = Bestehensgrenze, Prozent aller Punkte
author-par = Was eine gute Hand braucht
author-parHint = Nur mit Aufnahmen. Volle Punkte bis dahin, keine ab dem Dreifachen.
author-pars-exposures = Aufnahmen
author-pars-beam_s = Strahlzeit, Sekunden
author-tolerances = Andere Grenzen als die üblichen
author-tolerancesHint = Volle Punkte bis zur ersten Zahl, keine ab der zweiten. Beide leer: die üblichen; sie sind gängige Praxis, ohne Quelle.
author-usual = üblich { $value }
author-fullOf = { $name }: volle Punkte bis
author-noneOf = { $name }: keine Punkte ab
author-unknown = { $value } (hier nicht bekannt)
author-full = volle Punkte bis
author-none = keine ab
author-tolerance-squared_deg = Strahl gegen Endplatte, Grad
author-tolerance-spinous_percent = Dornfortsatz neben der Mitte, % des Pedikelabstands
author-tolerance-facet_percent = Fortsatz darunter neben der Pedikelmitte, % der Pedikelbreite
author-tolerance-lateral_mm = Linker und rechter Pedikel auseinander (seitlich), mm
author-tolerance-mid_plate_percent = Fortsatz darunter neben der Plattenmitte, % der halben Platte
author-tolerance-foramen_mm = Kreuzbeinlöcher auseinander, mm
author-tolerance-mark_mm = Marke außerhalb des Zielbereichs, mm
author-tolerance-coaxial_deg = Schaft gegen Strahl, Grad
author-tolerance-off_mark_mm = Spitze am Ende neben der Marke, mm
author-tolerance-medial_mm = Spitze medial der 6-Uhr-Linie, mm
author-tolerance-depth_mm = Spitze außerhalb ihres Foramenteils, mm
author-hand = Weitergeben
author-good = Diese Lektion ist brauchbar.
author-bad = { $n ->
    [one] { $n } Sache ist zu richten:
   *[other] { $n } Sachen sind zu richten:
  }
author-atPlace = { $place }: { $problem }
author-linkName = Link, der die ganze Lektion trägt
author-linkNote = Was hinter # steht, wird an keinen Server gesendet.
author-handout = Text zum Austeilen
author-copyHandout = Text kopieren
author-handoutCopied = Text kopiert.
author-checkLink = Prüfen, was zurückkommt
author-handoutOpen = Übung: { $title }. Öffnen Sie diesen Link im Browser; nichts wird installiert und nichts gesendet:
author-handoutCode = Geben Sie das Kürzel ein, das Sie bekommen haben: danach richtet sich Ihr Patient.
author-handoutNoCode = Geben Sie Ihr Kürzel ein, wenn Sie eines bekommen haben.
author-handoutMark = Bestanden ist ab { $mark } Prozent. Versuchen Sie es, so oft Sie mögen.
author-handoutEnd = Speichern Sie am Ende den Beleg und geben Sie diese Datei ab. Ein Lehrmodell, nicht für den klinischen Gebrauch.
author-noLink = Einen Link gibt es, sobald alles stimmt.
author-copy = Link kopieren
author-copied = Link kopiert.
author-notCopied = Der Browser lässt diese Seite nicht kopieren: der Link ist markiert, von Hand kopieren.
author-save = Datei speichern
author-tryIt = Ausprobieren
author-newTab = (öffnet einen neuen Tab)
author-hash = Fingerabdruck (SHA-256 dessen, was verlangt wird; Titel und Texte ändern ihn nicht)
author-noHash = noch keiner
author-drawn = Was Lernende bekommen
author-code = Code der Lernenden
author-codeNote = Der Code entscheidet, was ausgelost wird.
author-noCode = Alle bekommen dasselbe.
author-patientLine = { $name }: { $sentence }
author-another = Anderer Code
author-sample = Beispiel { $n }
author-gets = { $patient }, { $place }, Startzahl { $seed }.
author-nothingDrawn = Wird gezeigt, sobald alles stimmt.
author-views-true_ap = Echte AP
author-views-oblique = Schräg
author-views-lateral = Seitlich
author-view = Einstellung
author-picture-loading = Das Bild wird geladen
author-picture-shaping = Die Person wird geformt
author-picture-failed = Es gibt kein Bild ({ $why }). Die Lektion ist davon nicht berührt.
author-picture-caption = { $view ->
    [true_ap] Beste echte AP von { $place }: { $at }.
    [oblique] Beste schräge Einstellung von { $place }: { $at }.
   *[lateral] Beste seitliche Einstellung von { $place }: { $at }.
  }
author-picture-alternative = { $view ->
    [true_ap] Berechnetes Röntgenbild, beste echte AP von { $place }, Umrisse des Ziels eingezeichnet.
    [oblique] Berechnetes Röntgenbild, beste schräge Einstellung von { $place }, Umrisse des Ziels eingezeichnet.
   *[lateral] Berechnetes Röntgenbild, beste seitliche Einstellung von { $place }, Umrisse des Ziels eingezeichnet.
  }
author-picture-none = { $view ->
    [true_ap] Auf { $level } gibt es keine zu wertende echte AP.
    [oblique] Auf { $level } gibt es keine zu wertende schräge Einstellung.
   *[lateral] Auf { $level } gibt es keine zu wertende seitliche Einstellung.
  }
author-json = Die Lektionsdatei
author-jsonNote = Formular und Datei sind dieselbe Lektion: beides lässt sich ändern.
author-jsonName = Lektion als JSON
check-lesson-histogram = { $title }: Lernende nach Gesamtpunkten
check-lesson-totals = Lernende nach Gesamtpunkten
check-lesson-tenth = { $from }–{ $to } %
check-lesson-columns-learners = Lernende
check-lesson-columns-total = Gesamt
check-lesson-columns-quartiles = Quartile
check-learners-pressName = Ein Druck auf einen Namen zeigt jeden Versuch dieser Person.
check-learners-everyTry = { $name }: jeder Versuch
check-learners-oneColumns-row = Zeile
check-learners-oneColumns-lesson = Lektion
check-learners-oneColumns-result = Ergebnis
check-learners-oneColumns-replay = Nachspielen
check-learners-replay = Nachspielen
check-learners-replayOf = Zeile { $n } nachspielen
check-learners-replayNote = Nachspielen öffnet den Versuch auf der Übungsseite und zeigt ihn auf einer Zeitleiste, mit den Stellen, wo Punkte verloren gingen; geschlossen geht es mit Rückgängig Schritt für Schritt zurück. Die Adresse trägt den ganzen Versuch; kein Server bekommt ihn.
