### Ein Versuch, auf einer Zeitleiste abgespielt.

open = Nachspielen
heading = Nachgespielt
close = Schließen
loading = Der Patient wird geformt …
reading = Der Versuch wird gelesen: { $percent } %
play = Abspielen
pause = Anhalten
earlier = Handlung davor
later = Nächste Handlung
speed = Tempo
times = { $n } ×
line = Zeitleiste
lineKeys = Pfeiltasten gehen von Handlung zu Handlung, Bild auf und Bild ab zehn Sekunden, Pos1 und Ende an die Enden. Pausen über zwei Sekunden sind gekürzt.
value = { $clock }, Handlung { $n } von { $all }: { $what }
begin = der Anfang
did-orient = C-Bogen auf { $oblique }, { $tilt }
did-rotate_image = Bild auf { $deg }° gedreht
did-move_table = Tisch verschoben
did-spot = Einzelaufnahme
did-fluoroscopy = Durchleuchtung, { $n ->
    [one] { $n } Puls
   *[other] { $n } Pulse
  }
did-keep = { $view ->
    [true_ap] echtes AP behalten
    [lateral] seitliche Ansicht behalten
   *[oblique] Schrägansicht behalten
  }
did-recall = { $view ->
    [true_ap] zurück zum echten AP
    [lateral] zurück zur seitlichen Ansicht
   *[oblique] zurück zur Schrägansicht
  }
did-mark = Ziel markiert
did-choose = anderer Zugang gewählt
did-place = Nadel auf die Haut gesetzt
did-angle = Ansatz bewegt
did-roll = Ansatz um { $deg }° gedreht
did-advance = Nadel { $mm } mm vorgeschoben
did-withdraw = Nadel { $mm } mm zurückgezogen
did-remove = Nadel herausgenommen
did-aspirate = an der Spritze gezogen
did-inject = { $ml } ml Kontrastmittel
did-name = Ausbreitung benannt
did-point = auf einen Teil gezeigt
did-finish = beendet
arm = C-Bogen { $oblique }, { $tilt }.
needle = Nadel { $mm } mm tief.
noNeedle = Noch keine Nadel.
film = Das Bild wird für jeden Augenblick gezeichnet, auch wo keine Aufnahme gemacht wurde.
lost = Wo Punkte verloren gingen
lostNone = In den Schritten, die getan wurden, ging nichts verloren.
lostStep = { $step }, { $marks }: { $why }
lostGate = Nicht bestanden, { $gate }: { $why }
lostHere = Hier: { $what }
notMarked = Die Punkte wurden nicht berechnet: { $why }
undone = Nicht getan, also ohne Platz auf der Leiste: { $steps }.
beside = Ein anderer Versuch daneben
besideNote = Etwa der einer Lehrperson: seine Nadel ist gestrichelt, und beide stehen bei Ansichten, Markierung, Nadel und Kontrastmittel zugleich.
besideOff = Wegnehmen
besideNow = Der andere: C-Bogen { $oblique }, { $tilt }; { $depth }
besideDepth = Nadel { $mm } mm tief.
besideNone = keine Nadel.
besideOther = Dieser Versuch ist von einem anderen Patienten, einer anderen Höhe oder Seite; daneben passt einer am selben Fall.
bad = Das lässt sich nicht nachspielen ({ $why }).
tooLarge = die Datei ist zu groß
notJson = die Datei ist kein JSON
