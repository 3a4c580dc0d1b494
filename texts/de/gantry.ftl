### Machine-drafted, not yet reviewed by a speaker.

show = Was die Zeichnungen zeigen
whole = C-Bogen
near = Knochen
hint = Eine Zeichnung ziehen, um den C-Bogen zu drehen; Tasten: die Regler Schräg und Kippung. Die Linie eines Knochens berühren, hier oder im Bild, damit er in beiden leuchtet.
hintTurn = Eine Zeichnung ziehen, um den C-Bogen zu drehen; Tasten: die Regler Schräg und Kippung.
find = Teil, der leuchten soll
none = keiner
name = { $side ->
    [left] { $Part } von { $level } links
    [right] { $Part } von { $level } rechts
   *[none] { $Part } von { $level }
  }
lit = { $name } leuchtet im Bild und in den Zeichnungen.
notInPicture = { $name } leuchtet in den Zeichnungen; im Bild ist keine Linie davon.
noOutlines = { $name } leuchtet in den Zeichnungen; um es im Bild zu sehen, die Umrisse einschalten.
litHere = { $side ->
    [left] Es leuchtet: { $part } von { $level } links.
    [right] Es leuchtet: { $part } von { $level } rechts.
   *[none] Es leuchtet: { $part } von { $level }.
  }
unlit = Kein Teil leuchtet.
ray = Eine Linie geht von der Röhre durch das Ziel zu dem Punkt, wo sie auf den Empfänger trifft.
needle = Die Nadel ist gezeichnet, wie sie liegt.
near_feet = Knochen von { $level }, von den Füßen
near_side = Knochen von { $level }, von rechts
describeNear = Umrisse von { $level } und Nachbarn, { $from }, 13 cm breit.
centralRay = Der Zentralstrahl kommt von der Röhre unten; der Empfänger steht { $oblique } und { $tilt }.
fromFeet = von den Füßen gesehen, linke Seite der Person links, Rücken oben
fromSide = von der rechten Seite der Person gesehen, Kopf rechts, Rücken oben
noPicture = Kein Strahl ist gezeichnet: von hier gibt es noch kein Bild.

## The table, and what stops a turn.

table-name = Tisch verschieben
table-left = Links
table-right = Rechts
table-head = Kopfwärts
table-feet = Fußwärts
table-by = Tisch um 5 mm verschieben:
table-isocentre = Ziel im Isozentrum
table-across = { $way ->
    [left] { $mm } mm links
   *[right] { $mm } mm rechts
  }
table-along = { $way ->
    [head] { $mm } mm kopfwärts
   *[feet] { $mm } mm fußwärts
  }
table-up = Höher
table-down = Tiefer
table-height = { $way ->
    [up] { $mm } mm höher
   *[down] { $mm } mm tiefer
  }
table-asItStood = wie zu Beginn
table-putBack = Zurückstellen
table-stands = Tisch: { $where }.
table-to = { $way ->
    [down] Tisch { $mm } mm tiefer
    [up] Tisch { $mm } mm höher
    [left] Tisch { $mm } mm nach links
    [right] Tisch { $mm } mm nach rechts
    [head] Tisch { $mm } mm kopfwärts
   *[feet] Tisch { $mm } mm fußwärts
  }
hit-receptor-patient = Angehalten: Der Detektor stieße an die Person auf dem Tisch; { $way }.
hit-receptor-table = Angehalten: Der Detektor stieße an den Tisch; { $way }.
hit-source-patient = Angehalten: Die Röhre stieße an die Person auf dem Tisch; { $way }.
hit-source-table = Angehalten: Die Röhre stieße an den Tisch; { $way }.
hit-way = { $way ->
    [down] zuerst den Tisch { $mm } mm tiefer stellen
    [up] zuerst den Tisch { $mm } mm höher stellen
    [left] zuerst den Tisch { $mm } mm nach links schieben
    [right] zuerst den Tisch { $mm } mm nach rechts schieben
    [head] zuerst den Tisch { $mm } mm kopfwärts schieben
    [feet] zuerst den Tisch { $mm } mm fußwärts schieben
   *[none] anders herum drehen
  }
