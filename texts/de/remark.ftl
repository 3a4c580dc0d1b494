### Machine-drafted, not yet reviewed by a speaker.

## Why a step has its marks. Not done yet

name_parts = Benennen Sie die Teile, nach denen gefragt wird.
centre_target = Das Ziel in die Mitte bringen: quer und längs in AP, die Höhe seitlich.
keep_view = { $view ->
    [true_ap] Die echte AP einstellen und merken.
    [oblique] Die schräge Einstellung herstellen und merken.
    [steep_oblique] Die steile schräge Einstellung herstellen und merken.
   *[lateral] Seitlich einstellen und merken.
  }
mark_on_oblique = Den Zielpunkt im Schrägbild markieren.
beam_not_yet = Den Ansatz über die Spitze bringen, bis die Nadel ein Punkt ist, dann vorschieben.
steer_not_yet = Die Spitze auf die Marke steuern.
depth_not_yet = Die Spitze ins Foramen bringen und das in AP und seitlich belegen.
nothing_met_yet = Noch wurde nichts getroffen.
contrast_not_yet = Vor allem anderen Kontrastmittel unter Livebild spritzen.
no_exposure = Noch keine Aufnahme.
pictures_free = Bilder kosten hier nichts; mit Strahlung werden sie gezählt.

## The table

target_centred = Das Ziel liegt in der Mitte: quer, längs und in der Höhe.
move_table = { $way ->
    [left] In AP: den Tisch { $mm } mm nach links.
    [right] In AP: den Tisch { $mm } mm nach rechts.
    [head] In AP: den Tisch { $mm } mm kopfwärts.
    [feet] In AP: den Tisch { $mm } mm fußwärts.
    [up] Seitlich: den Tisch { $mm } mm höher.
   *[down] Seitlich: den Tisch { $mm } mm tiefer.
  }

## Kept views

view_right = { $view ->
    [true_ap] Die echte AP stimmt: alle Kriterien liegen innerhalb ihrer Toleranz.
    [oblique] Die schräge Einstellung stimmt: alle Kriterien liegen innerhalb ihrer Toleranz.
    [steep_oblique] Die steile schräge Einstellung stimmt: alle Kriterien liegen innerhalb ihrer Toleranz.
   *[lateral] Die seitliche Einstellung stimmt: alle Kriterien liegen innerhalb ihrer Toleranz.
  }
view_off = { $criterion }: { $finding }
kept_late = Sie wurde erst nach der schrägen gemerkt: die echte AP kommt zuerst.

## The mark

mark_along_plane = Das Bild verläuft längs der Ebene des Ziels: im Schrägbild markieren.
mark_inside = { $area ->
    [sacral_foramen] Die Marke liegt in der Öffnung des ersten Kreuzbeinlochs.
    [under_pedicle] Die Marke liegt im Dreieck unter dem Pedikel.
   *[under_root] Die Marke liegt im Dreieck unter der Wurzel.
  }
mark_outside = { $area ->
    [sacral_foramen] Die Marke liegt { $mm } mm außerhalb der Öffnung des ersten Kreuzbeinlochs; { $off }.
    [under_pedicle] Die Marke liegt { $mm } mm außerhalb des Dreiecks unter dem Pedikel; { $off }.
   *[under_root] Die Marke liegt { $mm } mm außerhalb des Dreiecks unter der Wurzel; { $off }.
  }
off-high-none = sie ist zu hoch
off-low-none = sie ist zu tief
off-none-medial = sie ist zu weit medial
off-none-lateral = sie ist zu weit lateral
off-high-medial = sie ist zu hoch und zu weit medial
off-high-lateral = sie ist zu hoch und zu weit lateral
off-low-medial = sie ist zu tief und zu weit medial
off-low-lateral = sie ist zu tief und zu weit lateral
mark_medial = Sie liegt { $mm } mm medial von 6 Uhr des Pedikels.
mark_behind_bone = { $level ->
    [none] Einer Nadel in diesem Strahl steht Knochen im Weg.
   *[other] Einer Nadel in diesem Strahl steht Knochen von { $level } im Weg.
  }

## The needle’s way

beam_held = Die Nadel wurde im Strahl gehalten: im Mittel { $deg } Grad daneben.
beam_off = Die Nadel stand im Mittel { $deg } Grad neben dem Strahl: den Ansatz über die Spitze bringen, solange sie flach liegt.
steered = Die Spitze endete { $mm } mm von der Marke.
strayed = Die Spitze endete { $mm } mm von der Marke: die Kerbe zu der Seite drehen, zu der sie abgewichen ist, denn sie weicht von der Kerbe weg.
turned_blind = { $blind } von { $all } Drehungen des Ansatzes folgten keiner gesehenen Abweichung: hinsehen, die Kerbe zu der Seite drehen, zu der die Spitze abweicht, und sie lassen, solange sie auf der Linie ist.

## The depth

ap_medial = In AP liegt die Spitze { $mm } mm weiter medial, als sie vor dem Kontrastmittel liegen darf.
ap_short = In AP fehlen der Spitze { $mm } mm bis zum Foramen.
ap_at = In AP steht die Spitze auf { $hour }.
side_deep = Seitlich liegt sie { $mm } mm vor der hinteren Körperlinie: zu tief.
side_shallow = Seitlich fehlen ihr { $mm } mm bis zum Foramen: nicht tief genug.
side_off = { $along ->
    [high] Seitlich liegt sie im Foramen { $mm } mm zu hoch.
   *[low] Seitlich liegt sie im Foramen { $mm } mm zu niedrig.
  }
side_inside = Seitlich liegt sie in ihrem Teil des Foramens.
sacral_upper = Die Spitze liegt im oberen lateralen Teil der Öffnung, abseits der Wurzel.
sacral_low = Die Spitze liegt in der Öffnung { $mm } mm zu tief unten oder zu weit medial: dort läuft die Wurzel nach unten und außen.
sacral_deep = Die Spitze liegt { $mm } mm zu tief im ersten Kreuzbeinloch.
sacral_inside = Die Spitze liegt in guter Tiefe im ersten Kreuzbeinloch.
sacral_outside = Die Spitze liegt nicht im ersten Kreuzbeinloch.
unproven = { $view ->
    [true_ap] Die Tiefe wurde mit liegender Nadel nicht in AP belegt.
   *[lateral] Die Tiefe wurde mit liegender Nadel nicht seitlich belegt.
  }

## What was met

nothing_met = Die Nadel traf nichts, was sie nicht hätte treffen sollen.
harm = { $pushed ->
    [no] { $met }.
   *[yes] { $met }, und { $pushed_mm } mm weiter vorgeschoben.
  }
met = { $kind } bei { $mm } mm: { $sign }
metOf = { $kind } von { $level } bei { $mm } mm: { $sign }
kind-skin = Haut
kind-fascia = Faszie
kind-bone = Knochen
kind-disc = Bandscheibe
kind-dura = Dura
kind-root = Wurzel
kind-ganglion = Spinalganglion
kind-vessel = Gefäß
kind-peritoneum = Peritoneum
sign-skin = die Haut gibt nach
sign-fascia = ein leichtes Nachgeben: die Faszie
sign-bone = harter Anschlag: Knochen
sign-disc = fester, gummiartiger Widerstand: die Bandscheibe
sign-dura = ein Nachgeben und klare Flüssigkeit am Ansatz: die Dura ist durchstochen
sign-root = Schmerz das Bein hinunter wird angegeben: aufhören und zurückziehen
sign-ganglion = Schmerz das Bein hinunter wird angegeben: aufhören und zurückziehen
sign-vessel = Blut am Ansatz
sign-peritoneum = Verlust des Widerstands weit vorn: die Nadel hat den Rücken verlassen

## Contrast

aspirate_first = Vor jedem Spritzen aspirieren.
inject_live = Unter Livebild spritzen: ein Gefäß zeigt sich nur, solange es fließt.
wrong_place = Das letzte Kontrastmittel lief an den falschen Ort: neu setzen, bevor irgendetwas anderes gespritzt wird.
name_pattern = Das Muster benennen, das zu sehen ist.
named_wrongly = Ein Muster wurde falsch benannt.
contrast_good = Aspiriert, live gespritzt, entlang der angezielten Wurzel, und als das benannt, was es ist.
contrast_in_root = Kontrastmittel lief in die Wurzel selbst: bei Schmerz aufhören.
pattern-perineural = Es bleibt, umgibt die Wurzel, die sich als blasseres Band abzeichnet, und steigt innen am Pedikel entlang des Epiduralraums auf.
pattern-arterial = Es läuft schnell in einer dünnen Linie davon und ist gleich fort, zum Rückenmark hin, wo die Arterie es versorgt.
pattern-venous = Es füllt während des Spritzens eine weitere Vene, langsamer, und ist fort, sobald es endet.
pattern-mixed = Ein Teil umgibt die Wurzel und bleibt, ein Teil läuft in einer Vene davon.
pattern-intrathecal = Es verteilt sich dünn und gleichmäßig im Duralsack, liegt vorn in ihm und bleibt.
pattern-subdural = Es zeigt sich als dichtes, schmales Band mit scharfem Rand an der Innenseite des Duralsacks und wandert nur langsam.
pattern-intraneural = Es zeigt sich als dünne, dichte Linie in der Wurzel, mit Schmerz.
pattern-intradiscal = Es zeigt sich als dichtes Kissen zwischen den Endplatten.
pattern-facet_joint = Es zeigt sich als dichter, kleiner Saum im Gelenk, abseits der Wurzel.
pattern-peritoneal = Es zeigt sich als dünne Streifen weit vor der Wirbelsäule.
pattern-muscular = Es zeigt sich als gefiederte Streifen entlang der Muskelfasern, abseits der Wurzel.

## Radiation

spent = { $pictures ->
    [one] { $pictures } Aufnahme und { $beam_s } s Durchleuchtung; Vorgabe sind { $par_pictures } und { $par_beam_s } s.
   *[other] { $pictures } Aufnahmen und { $beam_s } s Durchleuchtung; Vorgabe sind { $par_pictures } und { $par_beam_s } s.
  }

economy_scaled = Wenig Strahlung zählt nur für das, was damit erreicht wurde: { $percent } % der übrigen Punkte.

## Gates

gate-complete = Jeder Schritt getan
gate-views = Ansichten erreicht
gate-target = Richtige Höhe und Seite
gate-root = Keine Wurzel durchstochen
gate-dura = Dura nicht durchstochen
gate-paraesthesia = Bei Parästhesie aufgehört
gate-medial = Nicht medial vor Kontrastmittel
gate-blood = Nichts bei Blut gespritzt
gate-contrast_live = Kontrastmittel live gesehen
gate-compartment = Kontrastmittel am richtigen Ort
gate-steering = Nach Sicht gesteuert
gate-aspirated = Jedes Mal aspiriert
gate-pattern_named = Muster richtig benannt
gate-within_par = Innerhalb der Vorgabe
gate-one_needle = Eine Nadel
gate_held = Eingehalten.
steps_left = { $left } von { $all } Schritten wurden nicht getan.
view_missed = { $view ->
    [true_ap] Die echte AP-Ansicht wurde nicht erreicht.
    [oblique] Die Schrägansicht wurde nicht erreicht.
    [steep_oblique] Die steile Schrägansicht wurde nicht erreicht.
   *[lateral] Die seitliche Ansicht wurde nicht erreicht.
  }
other_target = { $side ->
    [left] Es liegt bei { $level } links, und verlangt war { $wanted }.
   *[right] Es liegt bei { $level } rechts, und verlangt war { $wanted }.
  }
wanted-left = { $level } links
wanted-right = { $level } rechts
pain_ignored = Bei { $mm } mm wurde Schmerz das Bein hinunter angegeben, und vor dem Zurückziehen geschah noch etwas.
medial_before_contrast = Die Spitze ging { $mm } mm über 6 Uhr hinaus, bevor Kontrastmittel gesehen wurde.
injected_on_blood = Es wurde gespritzt, während Blut am Ansatz stand: erst zurückziehen und neu setzen.
needles_used = { $needles } Nadeln wurden gebraucht.

## Parts named

parts_found = { $all ->
    [one] Der eine Teil wurde beim ersten Fragen gefunden.
   *[other] Alle { $all } Teile wurden beim ersten Fragen gefunden.
  }
parts_missed = Gefunden, aber zuerst verfehlt: { $missed }.
parts_left = { $left } von { $all } Teilen sind noch zu finden.
parts_left_missed = { $left } von { $all } Teilen sind noch zu finden; bisher verfehlt: { $missed }.
part = { $side ->
    [left] { $part } von { $level } links
    [right] { $part } von { $level } rechts
   *[none] { $part } von { $level }
  }

## The next thing to do

mark_area = { $area ->
    [sacral_foramen] Den Zielpunkt markieren: die Öffnung des ersten Kreuzbeinlochs.
    [under_pedicle] Den Zielpunkt gleich unter dem Pedikel markieren, lateral von 6 Uhr, am Gelenkfortsatz vorbei.
   *[under_root] Den Zielpunkt gleich über der Deckplatte der nächsten Höhe darunter markieren, neben dem Gelenkfortsatz.
  }
place_needle = Eine Nadel auf die Haut über der Marke setzen.
hub_off = { $n ->
    [one] Der Ansatz steht im Schrägbild { $of } der Spitze: ihn { $to } bewegen, um etwa { $n } Grad, bis die Nadel ein Punkt ist.
   *[other] Der Ansatz steht im Schrägbild { $of } der Spitze: ihn { $to } bewegen, um etwa { $n } Grad, bis die Nadel ein Punkt ist.
  }
name_spread = Die Ausbreitung ansehen und ihr Muster benennen.
spread_good = Gute Ausbreitung entlang der Wurzel: abschließen.
spread_wrong = Falscher Ort: zurückziehen, neu setzen und wieder belegen.
on_bone = Knochen: ein wenig zurückziehen, die Kerbe zum Knochen drehen, damit der Schliff von ihm weg führt, und vorschieben.
tip_strayed = Die Spitze ist { $mm } mm { $to } abgewichen: die Kerbe auf { $hour } drehen, zu dieser Seite, und vorschieben; die Spitze weicht von der Kerbe weg.
advance = Ein wenig vorschieben und die Tiefe in AP und seitlich belegen, bevor sie tief ist.
advance_by = Noch etwa { $mm } mm: in kleinen Schritten vorschieben und nach jedem hinsehen.
draw_back_by = Etwa { $mm } mm zurückziehen.
look_in = { $view ->
    [true_ap] In AP ansehen, mit der Nadel dort.
   *[lateral] In der seitlichen Ansicht ansehen, mit der Nadel dort.
  }
aspirate_now = Am Ort und in beiden Ansichten gesehen: aspirieren.
inject_now = Jetzt Kontrastmittel unter Livebild: eine leere Aspiration beweist nichts.
blood_answer = Blut am Ansatz: zurückziehen, neu setzen und hier nichts spritzen.
pain_answer = Schmerz das Bein hinunter: aufhören, zurückziehen und erst dann auf anderem Weg weiter.
clear_fluid_answer = Klare Flüssigkeit: die Dura ist durchstochen. Zurückziehen und nichts spritzen; ob es überhaupt weitergeht, entscheiden die örtlichen Vorgaben.
aspirate-nothing-worth = Es kommt nichts. Das beweist nichts: von Spitzen in einem Gefäß geben weniger als die Hälfte (45 %) Blut. Kontrastmittel unter Livebild entscheidet.

## Ways on the screen

to-up = nach oben
to-up_right = nach rechts oben
to-right = nach rechts
to-down_right = nach rechts unten
to-down = nach unten
to-down_left = nach links unten
to-left = nach links
to-up_left = nach links oben
of-up = oberhalb
of-up_right = rechts oberhalb
of-right = rechts
of-down_right = rechts unterhalb
of-down = unterhalb
of-down_left = links unterhalb
of-left = links
of-up_left = links oberhalb

## Cautions

caution-upper = Bei L3 und höher kann eine Arterie zum Rückenmark im oberen Teil des Foramens verlaufen, öfter links: ob der Ort unter dem Pedikel dort der richtige ist, ist umstritten, und ein tieferer, etwas weiter hinten liegender kann sicherer sein. Eine leere Aspiration schließt kein Gefäß aus. Durchweg nicht partikelhaltiges Steroid; örtliche Vorgaben und Aufsicht entscheiden.
caution-lower = Nie über 6 Uhr des Pedikels nach medial, bevor Kontrastmittel gesehen wurde. Querschnittlähmung ist nach leerer Aspiration bis hinab zu L5-S1 vorgekommen: Kontrastmittel unter Livebild kommt zuerst, durchweg nicht partikelhaltiges Steroid; bei Parästhesie oder Blut aufhören. Örtliche Vorgaben und Aufsicht entscheiden.
caution-sacral = Ausbreitung in Gefäße ist bei S1 häufiger als an den Lendenwirbeln, und eine Arterie zum Rückenmark kann in jeder Höhe getroffen werden: die ganze Injektion live ansehen. Durchweg nicht partikelhaltiges Steroid; örtliche Vorgaben und Aufsicht entscheiden.
caution-infraneural = Der Weg unter der Wurzel liegt neben der Bandscheibe: die Tiefe vor jedem Vorschieben in der seitlichen Ansicht belegen. Eine Arterie zum Rückenmark kann in jeder Höhe getroffen werden. Durchweg nicht partikelhaltiges Steroid; örtliche Vorgaben und Aufsicht entscheiden.
