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
