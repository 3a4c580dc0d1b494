### Machine-drafted, not yet reviewed by a speaker.

## Die Linien auf dem Bild, und die Frage vor dem Drehen

film-process = Dornfortsatz { $mm } mm neben der Mitte
film-rims = Ränder { $mm } mm auseinander
film-facetLateral = Fortsatz { $mm } mm lateral vom Pedikel
film-facetMedial = Fortsatz { $mm } mm medial vom Pedikel
film-openings = Öffnungen { $mm } mm auseinander
film-sides = Pedikel { $mm } mm auseinander
film-clock = Spitze auf { $hour }
film-move = { $way ->
    [left] { $deg }° nach links
    [right] { $deg }° nach rechts
    [cephalad] { $deg }° nach kranial
   *[caudad] { $deg }° nach kaudal
  }
ask-question = Wohin muss der Empfänger?
ask-end = { $way ->
    [left] Nach links
    [right] Nach rechts
    [cephalad] Zum Kopf
   *[caudad] Zu den Füßen
  }
ask-yes = Ja. { $measured }. { $advice }
ask-no = In die andere Richtung. { $measured }. { $advice }

close = Schließen

degrees = { $n } Grad
mm = { $n } mm

## The tour

tour-name = Rundgang
tour-count = { $n } von { $all }
tour-back = Zurück
tour-next = Weiter
tour-done = Fertig
tour-noticed-turned = Sie haben ihn gedreht.
tour-noticed-full = Volle Punkte: eine echte AP.
tour-stops-picture =
    .title = Das Bild
    .text = Eine Person in Bauchlage, wie der C-Bogen sie sieht; bernsteinfarben ist die Höhe, an der Sie arbeiten. Ziehen oder Pfeiltasten: der C-Bogen dreht sich.
tour-stops-oblique =
    .title = Schräg
    .text = Dreht den Empfänger zur linken oder rechten Seite der Person. Drehen, bis der Dornfortsatz mitten zwischen den beiden runden Pedikeln steht.
tour-stops-tilt =
    .title = Kippung
    .text = Neigt ihn zum Kopf oder zu den Füßen. Kippen, bis sich die Deckplatte, eine flache Ellipse, zu einer Linie schließt.
tour-stops-checks =
    .title = Was es wert ist
    .text = Die Punkte dieser Einstellung. Darunter sagt jedes Maß, wie weit es daneben liegt, was volle Punkte verlangen und wohin zu bewegen ist.
tour-stops-gantry =
    .title = Der C-Bogen
    .text = Dieselbe Drehung von außen: auf den Empfänger achten, während Sie einen Regler bewegen. Der Strahl geht von der Röhre unten zu ihm hinauf.
tour-stops-activities =
    .title = Und dann
    .text = Injektion: eine Nadel von der Haut bis zum Kontrastmittel. Lektionen: ein Kurs mit Punkten und einem Beleg zum Abgeben. Dieser Rundgang bleibt im Menü.

## The list of keys

keys-heading = Tasten
keys-use = Einzelne Tasten benutzen
keys-useHint = Aus: nur was den Fokus hat, antwortet auf Tasten.
keys-name = { $key ->
    [space] Leertaste
    [pageup] Bild auf
    [pagedown] Bild ab
    [home] Pos 1
    [end] Ende
    [enter] Eingabe
    [escape] Esc
   *[other] { $given }
  }
keys-command = Strg { $key }
keys-or = {" "}oder{" "}
keys-places-page = Überall
keys-places-sliders = Auf einem Regler
keys-places-picture = Auf dem Bild
keys-places-views = Einstellen
keys-places-needle = Injektion: Nadel und C-Bogen
keys-places-hub = Auf dem Ansatz
keys-places-mark = Auf dem Bild, beim Markieren
keys-places-naming = Auf dem Bild, beim Benennen
keys-places-beam = Auf „Durchleuchtung“
keys-places-menus = Menüs und Dialoge
keys-page-keys = diese Liste der Tasten
keys-page-read = das Bild wird vorgelesen
keys-page-zoom = das Bild größer, kleiner, ganz
keys-page-through = gehalten: durch den Strahl, die Knochen in 3D
keys-page-table = der Tisch: links, rechts, kopfwärts, fußwärts, höher, tiefer
keys-sliders-step = { $deg } Grad, der Knopf geht in die Richtung des Pfeils
keys-sliders-ends = ans Ende des Bereichs
keys-picture-turn = den C-Bogen um { $step } drehen, mit Umschalt um { $coarse }
keys-picture-hub = mit Nadel: den Ansatz um { $step }° bewegen, mit Umschalt um { $fine }°
keys-views-pick = echte AP, schräg, seitlich prüfen
keys-views-check = meine Einstellung prüfen (Selbsttest)
keys-needle-advance = 1 mm vorschieben, mit Umschalt 5 mm
keys-needle-advanceHalf = 0,5 mm vorschieben
keys-needle-withdraw = 1 mm zurückziehen, mit Umschalt 5 mm
keys-needle-withdrawHalf = 0,5 mm zurückziehen
keys-needle-roll = den Ansatz 15° gegen, mit dem Uhrzeigersinn drehen; mit Umschalt 1°
keys-needle-half = den Ansatz um 180° drehen
keys-needle-arm = C-Bogen zu AP, seitlich, schräg, wie gemerkt
keys-needle-mark = im Bild markieren
keys-needle-hint = Hinweis
keys-needle-undo = rückgängig; mit Umschalt wiederholen
keys-needle-redo = wiederholen
keys-hub-turn = um { $step }° drehen, mit Umschalt um { $fine }°
keys-hub-wheel = Das Mausrad über dem Ansatz dreht ihn 5° je Raste; mit Umschalt schiebt es 0,5 mm vor und zurück.
keys-mark-cross = das Kreuz um { $step } mm bewegen, mit Umschalt um { $fine } mm
keys-mark-set = dort markieren
keys-mark-leave = abbrechen
keys-naming-step = von Umriss zu Umriss
keys-naming-answer = mit dem leuchtenden Umriss antworten
keys-beam-hold = Strahl an, solange gehalten wird
keys-beam-stop = Strahl aus, von überall
keys-menus-escape = schließen, was offen ist

## The picture in words

describe-heading = Beschreibung
describe-screen = Auf dem Bildschirm
describe-picture = Im Bild
describe-needle = Nadel
describe-says = Sagen, was sich ändert
describe-saysHint = Über einen Bildschirmleser, wenn das Bild stillsteht.
describe-activity-views = Einstellen: das Bild, darunter die Regler Schräg und Kippung, dann Schritte, Prüfung und eine Zeichnung des C-Bogens.
describe-activity-injection = Injektion: das Bild, darunter die Regler Schräg und Kippung, dann die Abschnitte, und die Nadel in der Hand, sobald es eine gibt.
describe-activity-lessons = Lektionen: die Liste des Kurses. Bild und Regler Schräg und Kippung sind auch da.
describe-step = Jetzt: { $title }.
describe-keys = Fragezeichen zeigt die Liste der Tasten.
describe-none = Es gibt noch kein Bild.
describe-nonePart = Was im Bild steht, wird gesagt, sobald es eines gibt.
describe-judged = Gesagt, wie das Auge es sieht, in ganzen Millimetern und Zwanzigsteln: was die Einstellung wert ist, beurteilen hier Sie.
describe-naming = Wo die Teile stehen, wird hier nicht gesagt: sie zu finden ist, was die Lektion verlangt.

## What stands where in the picture

describe-spinousMidway = { $level ->
    [S1] Der Mittelkamm des Kreuzbeins steht mitten zwischen den Pedikeln.
   *[other] Der Dornfortsatz von { $level } steht mitten zwischen den Pedikeln.
  }
describe-spinousOff = { $level ->
    [S1] { $way ->
        [left] Der Mittelkamm des Kreuzbeins steht { $percent } Prozent des Pedikelabstands links der Person von der Mitte zwischen ihnen.
       *[right] Der Mittelkamm des Kreuzbeins steht { $percent } Prozent des Pedikelabstands rechts der Person von der Mitte zwischen ihnen.
      }
   *[other] { $way ->
        [left] Der Dornfortsatz von { $level } steht { $percent } Prozent des Pedikelabstands links der Person von der Mitte zwischen ihnen.
       *[right] Der Dornfortsatz von { $level } steht { $percent } Prozent des Pedikelabstands rechts der Person von der Mitte zwischen ihnen.
      }
  }
describe-plateOne = { $which ->
    [upper] Die Deckplatte von { $level } ist eine einzige Linie.
   *[lower] Die Grundplatte von { $level } ist eine einzige Linie.
  }
describe-plateTwo = { $which ->
    [upper] Die Deckplatte von { $level } öffnet sich zu zwei Linien.
   *[lower] Die Grundplatte von { $level } öffnet sich zu zwei Linien.
  }
describe-plateApart = { $which ->
    [upper] Die Deckplatte von { $level } öffnet sich zu zwei Linien, { $apart } auseinander.
   *[lower] Die Grundplatte von { $level } öffnet sich zu zwei Linien, { $apart } auseinander.
  }
describe-processBelow = { $stands ->
    [under_lateral] Der laterale Rand des oberen Gelenkfortsatzes von { $below } steht unter dem lateralen Drittel des Pedikels von { $level }, die Spitze { $mm } mm darunter.
    [under_middle] Der laterale Rand des oberen Gelenkfortsatzes von { $below } steht unter dem mittleren Drittel des Pedikels von { $level }, die Spitze { $mm } mm darunter.
    [under_medial] Der laterale Rand des oberen Gelenkfortsatzes von { $below } steht unter dem medialen Drittel des Pedikels von { $level }, die Spitze { $mm } mm darunter.
    [beside_lateral] Der laterale Rand des oberen Gelenkfortsatzes von { $below } steht { $widths } Pedikelbreiten lateral der Mitte des Pedikels von { $level }, die Spitze { $mm } mm darunter.
   *[beside_medial] Der laterale Rand des oberen Gelenkfortsatzes von { $below } steht { $widths } Pedikelbreiten medial der Mitte des Pedikels von { $level }, die Spitze { $mm } mm darunter.
  }
describe-processOver = { $stands ->
    [under_lateral] Der laterale Rand des oberen Gelenkfortsatzes von { $below } steht unter dem lateralen Drittel des Pedikels von { $level }, die Spitze { $mm } mm über dem Pedikel.
    [under_middle] Der laterale Rand des oberen Gelenkfortsatzes von { $below } steht unter dem mittleren Drittel des Pedikels von { $level }, die Spitze { $mm } mm über dem Pedikel.
    [under_medial] Der laterale Rand des oberen Gelenkfortsatzes von { $below } steht unter dem medialen Drittel des Pedikels von { $level }, die Spitze { $mm } mm über dem Pedikel.
    [beside_lateral] Der laterale Rand des oberen Gelenkfortsatzes von { $below } steht { $widths } Pedikelbreiten lateral der Mitte des Pedikels von { $level }, die Spitze { $mm } mm über dem Pedikel.
   *[beside_medial] Der laterale Rand des oberen Gelenkfortsatzes von { $below } steht { $widths } Pedikelbreiten medial der Mitte des Pedikels von { $level }, die Spitze { $mm } mm über dem Pedikel.
  }
describe-off = { $across ->
    [left] { $along ->
        [up] { $x } mm links und { $y } mm oben
        [down] { $x } mm links und { $y } mm unten
       *[none] { $x } mm links
      }
    [right] { $along ->
        [up] { $x } mm rechts und { $y } mm oben
        [down] { $x } mm rechts und { $y } mm unten
       *[none] { $x } mm rechts
      }
   *[none] { $along ->
        [up] { $y } mm oben
        [down] { $y } mm unten
       *[none] { $x } mm
      }
  }
describe-middle = Der Wirbelkörper { $level } liegt, von der Mitte des Bildes, { $off }.
describe-joint = Das Facettengelenk { $level }–{ $below } liegt, von der Mitte des Pedikels, { $off }.
describe-pedicle = { $side ->
    [left] Der linke Pedikel von { $level } liegt, von der Mitte des Bildes, { $off }.
   *[right] Der rechte Pedikel von { $level } liegt, von der Mitte des Bildes, { $off }.
  }
describe-foramen = { $apart ->
    [0] Die beiden Öffnungen des ersten Kreuzbeinlochs liegen übereinander.
   *[other] Die beiden Öffnungen des ersten Kreuzbeinlochs liegen { $apart } mm auseinander.
  }
describe-lateral = { $apart ->
    [0] Linker und rechter Pedikel von { $level } liegen übereinander.
   *[other] Linker und rechter Pedikel von { $level } liegen { $apart } mm auseinander, die Ränder der Hinterwand { $wall } mm.
  }
describe-crestOutside = { $side ->
    [left] Der linke Beckenkamm liegt außerhalb des Bildes.
   *[right] Der rechte Beckenkamm liegt außerhalb des Bildes.
  }
describe-crestBody = { $side ->
    [left] Der linke Beckenkamm reicht bis zur Höhe des Wirbelkörpers von { $level }.
   *[right] Der rechte Beckenkamm reicht bis zur Höhe des Wirbelkörpers von { $level }.
  }
describe-crestDisc = { $side ->
    [left] Der linke Beckenkamm reicht bis zur Höhe der Bandscheibe zwischen { $above } und { $below }.
   *[right] Der rechte Beckenkamm reicht bis zur Höhe der Bandscheibe zwischen { $above } und { $below }.
  }

## The needle in the picture

describe-hubOver = Der Ansatz steht über der Spitze.
describe-hubOff = Der Ansatz steht, von der Spitze, { $off }.
describe-tip = Die Spitze steht, von der Mitte des Pedikels, { $off }.
describe-mark = Die Marke steht, von der Mitte des Pedikels, { $off }.
describe-placed = Nadel { $gauge } G, { $depth } mm tief.
describe-bone = Die Spitze ist am Knochen.
describe-last = Zuletzt getroffen: { $met }
