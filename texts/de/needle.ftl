### Machine-drafted, not yet reviewed by a speaker.

heading = Nadel
wait = Die Schritte der Injektion kommen mit dem Bild: Einstellungen merken, Zielpunkt markieren, Nadel setzen und steuern, Kontrastmittel.
steps = Schritt für Schritt
progress = { $done } von { $all }

## Places

hour = { $hour } Uhr
hourHalf = { $hour } Uhr 30
offset-across = { $way ->
    [right] { $mm } mm rechts
   *[left] { $mm } mm links
  }
offset-along = { $way ->
    [up] { $mm } mm oben
   *[down] { $mm } mm unten
  }

help-name = Hilfe bei der Arbeit
help-guided = Geführt
help-asked = Auf Wunsch
help-test = Selbsttest
help-note-guided = Das Nächste steht immer da.
help-note-asked = Ein Hinweis kommt, wenn Sie danach fragen.
help-note-test = Keine Hinweise, keine Messwerte, keine Zeichen im Bild bis zum Abschluss.
help-ask = Hinweis
help-heading = Hinweis

more = Hilfe und Datei
undo = Rückgängig
redo = Wiederholen
again = Von vorn
againLong = Diese Injektion von vorn beginnen
caution = Vorsicht

stage-later = später
stage-current = jetzt
stage-done = fertig
stage-left = offen gelassen
stage-marks = { $points } von 100
stage-now = Jetzt { $marks }.
stage-list-centre-title = Ziel in die Mitte
stage-list-centre-act = In AP den Tisch quer und längs schieben, bis der Wirbelkörper von { $level } mitten im Film steht. Dann seitlich sehen und ihn höher oder tiefer stellen.
stage-list-true_ap-title = Echte AP
stage-list-true_ap-act = { $level ->
    [S1] Drehen, bis der Mittelkamm mitten zwischen den Pedikeln von { $level } steht, die Deckplatte durch Kippen einstellen und die Einstellung merken.
   *[other] Drehen, bis der Dornfortsatz mitten zwischen den Pedikeln von { $level } steht, die Deckplatte durch Kippen einstellen und die Einstellung merken.
  }
stage-list-true_ap-kept = gemerkt
stage-list-oblique-title = Schräg, eingestellt
stage-list-oblique-actS1 = { $side ->
    [left] Nach links drehen und kippen, bis beide Öffnungen des ersten Kreuzbeinlochs übereinanderliegen, und die Einstellung merken.
   *[right] Nach rechts drehen und kippen, bis beide Öffnungen des ersten Kreuzbeinlochs übereinanderliegen, und die Einstellung merken.
  }
stage-list-oblique-actLumbar = { $side ->
    [left] Nach links drehen, bis der Gelenkfortsatz der nächsten Höhe darunter unter dem Pedikel steht, wieder einstellen und die Einstellung merken.
   *[right] Nach rechts drehen, bis der Gelenkfortsatz der nächsten Höhe darunter unter dem Pedikel steht, wieder einstellen und die Einstellung merken.
  }
stage-list-oblique-actRoot = { $side ->
    [left] Der Weg unter der Wurzel braucht eine steilere Schräge: nach links drehen, bis der Gelenkfortsatz der nächsten Höhe darunter an der Mitte der Deckplatte steht, die obere Deckplatte der Höhe darunter einstellen und die Einstellung merken.
   *[right] Der Weg unter der Wurzel braucht eine steilere Schräge: nach rechts drehen, bis der Gelenkfortsatz der nächsten Höhe darunter an der Mitte der Deckplatte steht, die obere Deckplatte der Höhe darunter einstellen und die Einstellung merken.
  }
stage-list-oblique-kept = gemerkt
stage-list-parts-title = Teile benennen
stage-list-parts-act = Im Bild finden, wonach gefragt wird.
stage-list-lateral-title = Seitlich
stage-list-lateral-act = { $side ->
    [left] Um etwa 90 Grad nach links drehen, bis linker und rechter Pedikel übereinanderliegen und die Endplatten einfache Linien sind, und die Einstellung merken.
   *[right] Um etwa 90 Grad nach rechts drehen, bis linker und rechter Pedikel übereinanderliegen und die Endplatten einfache Linien sind, und die Einstellung merken.
  }
stage-list-lateral-kept = gemerkt
stage-list-mark-title = Zielpunkt markieren
stage-list-mark-act = Die Schaltfläche drücken, dann die Stelle im Schrägbild. Mit der Tastatur: Pfeiltasten bewegen das Kreuz 1 mm (mit Umschalt 0,2 mm), Eingabe markiert, Esc bricht ab.
stage-list-mark-done = markiert
stage-list-place-title = Nadel setzen
stage-list-place-act = Sie wird senkrecht auf die Haut über der Marke gesetzt.
stage-list-place-caution = Vor jeder Nadel: Blutverdünner (auch ihr Absetzen hat ein Risiko), Kontrastmittelallergie, Schwangerschaft. Was jeweils geschieht, regeln die örtlichen Vorgaben.
stage-list-align-title = Ansatz über Spitze
stage-list-align-act = Im Schrägbild den Ansatz bewegen, bis die Nadel ein Punkt ist: den Ring im Bild ziehen, die vier Schaltflächen oder die Pfeiltasten auf dem Bild. Sie dreht sich um die Haut, also solange sie flach liegt. Dann vorschieben, bis sie etwa 15 mm tief ist.
stage-list-align-done = { $deg }° neben dem Strahl
stage-list-steer-title = Vorschieben und steuern
stage-list-steer-act = Kurz vorschieben. Die Spitze weicht von der Kerbe weg: die Kerbe zu der Seite drehen, zu der die Spitze abgewichen ist. Eine halbe Drehung biegt anders herum; beim Rollen geht sie gerade.
stage-list-steer-caution = Schmerz ins Bein heißt anhalten und zurückziehen. Sedierung kann ihn verdecken: bei schläfriger Person beweist fehlender Schmerz nichts.
stage-list-steer-done = { $mm } mm tief
stage-list-depth-title = Tiefe belegen
stage-list-depth-act = Seitlich drehen, bevor sie tief ist, auch diese Einstellung merken, und zwischen ihr, AP und schräg so oft wechseln wie nötig und nicht öfter.
stage-list-depth-done = am Ort, in AP und seitlich gesehen
stage-list-contrast-title = Kontrastmittel
stage-list-contrast-act = Aspirieren, dann unter Livebild ein wenig spritzen. Zusehen, wohin es läuft, und es benennen.
stage-list-contrast-exposures = Live heißt, dass die Durchleuchtung an ist, während es einläuft: unter „Strahlung“ „Durchleuchtung bleibt an“ setzen, einschalten, dann spritzen.
stage-list-contrast-caution-live = Kontrastmittel unter Livebild vor allem anderen, und ganz zusehen. Eine Arterie zum Rückenmark kann auf jeder Höhe getroffen werden.
stage-list-contrast-caution-aspirate = Jedes Mal aspirieren, und nur dem Blut trauen: von Spitzen in einem Gefäß gibt weniger als die Hälfte welches. Bei L5-S1 folgte eine Querschnittlähmung, obwohl nichts zurückkam und die Subtraktion nichts zeigte.
stage-list-contrast-caution-subtraction = Subtraktion und eine Testdosis Lokalanästhetikum finden mehr und übersehen doch manches; Subtraktion kostet Strahlung.
stage-list-contrast-caution-fluid = Durch eine dünne Nadel kommt klare Flüssigkeit spät oder nie: ein trockener Ansatz schließt die Dura nicht aus.
stage-list-contrast-caution-steroid = Durchweg nicht-partikuläres Steroid; Ausnahmen nur nach örtlichen Vorgaben. Bei Kontrastmittelallergie sagen die örtlichen Vorgaben, was statt dessen geschieht.
stage-list-contrast-wrong = Falscher Ort für eine Injektion: zurückziehen, neu setzen und wieder belegen.
stage-list-contrast-right = Das ist die gewünschte Ausbreitung.
stage-list-finish-title = Abschließen und werten
stage-list-finish-act = Danach geht nichts mehr, aber „Rückgängig“ nimmt es zurück.
stage-keep = { $view ->
    [true_ap] Diese AP merken
    [oblique] Diese schräge merken
   *[lateral] Diese seitliche merken
  }
stage-keepAgain = { $view ->
    [true_ap] Lieber diese AP merken
    [oblique] Lieber diese schräge
   *[lateral] Lieber diese seitliche
  }
# $title is the name of a step, $result what was reached in it.
stage-ended = { $title }: { $result }.
stage-next = Als Nächstes: { $title }.
stage-goOn = Weiter zum nächsten Schritt
stage-keepAsked = Trotzdem merken
stage-keepNothing = So, wie sie steht, ist diese Einstellung 0 von 100 wert. Besser einstellen, oder zum Merken noch einmal drücken.
stage-mark = Im Bild markieren
stage-marking = Stelle drücken
stage-showArea = Bereich zeigen
stage-place = Nadel setzen
stage-placeAgain = Andere Nadel nehmen
stage-remove = Nadel herausziehen
stage-gauge = Gauge
stage-length = Länge
stage-gaugeName = { $gauge } G
stage-lengthName = { $mm } mm
stage-hubColour = { $gauge ->
    [22] Schwarzer Ansatz.
    [25] Oranger Ansatz. Für 25 G wurde keine veröffentlichte Biegung gefunden: angenommen ist ein Viertel mehr.
   *[other] {""}
  }
stage-placed = { $colour ->
    [black] { $gauge } G, { $mm } mm, schwarzer Ansatz
    [orange] { $gauge } G, { $mm } mm, oranger Ansatz
   *[other] { $gauge } G, { $mm } mm
  }
stage-approach = Zugang
stage-approachName-subpedicular = Unter dem Pedikel
stage-approachName-infraneural = Unter der Wurzel
stage-finish = Abschließen
stage-none = Noch keine Nadel.

# The next action as one button.
next-hub = Ansatz über die Spitze
next-notch = Kerbe auf { $hour } drehen
next-look = { $view ->
    [true_ap] In der AP ansehen
    [lateral] In der seitlichen ansehen
   *[oblique] In der schrägen ansehen
  }

hand-heading = Nadel in der Hand
hand-hub = Ansatz von oben
hand-hubKeys = Pfeiltasten drehen ihn 15 Grad, mit Umschalt 1 Grad.
hand-notch = Kerbe auf { $hour }
hand-notchFine = Kerbe auf { $hour }, Spitze weicht nach { $to } ab
hand-drift = Weicht nach { $to } ab
hand-half = 180° drehen
hand-depth = { $mm } mm tief
hand-left = { $mm } mm übrig
hand-advance = Vorschieben, mm
hand-withdraw = Zurückziehen, mm
hand-advanceBy = { $mm } mm vorschieben
hand-withdrawBy = { $mm } mm zurückziehen
hand-spin = Rollen beim Vorschieben
hand-percent = { $n ->
    [0] nein
   *[other] { $n } %
  }
hand-pad = Ansatz bewegen
hand-fine = 0,1°-Schritte
hand-way-left = links
hand-way-up = oben
hand-way-down = unten
hand-way-right = rechts
hand-hubBy = { $way ->
    [left] Ansatz nach links
    [right] Ansatz nach rechts
    [up] Ansatz nach oben
   *[down] Ansatz nach unten
  }
hand-views = C-Bogen drehen zu
hand-view-true_ap = AP
hand-view-lateral = Seitlich
hand-view-oblique = Schräg
hand-beam = { $deg }° neben dem Strahl
hand-hubOff = Ansatz { $offset } der Spitze
hand-hubOver = Ansatz über der Spitze
hand-offMark = Spitze { $offset } der Marke
hand-onMark = Spitze auf der Marke
hand-ap = { $way ->
    [medial] AP: Spitze auf { $hour } des Pedikels, { $mm } mm medial von 6 Uhr
   *[lateral] AP: Spitze auf { $hour } des Pedikels, { $mm } mm lateral von 6 Uhr
  }
hand-lateral = { $way ->
    [behind] Seitlich: { $mm } mm hinter der hinteren Körperlinie, { $height }
   *[front] Seitlich: { $mm } mm vor der hinteren Körperlinie, { $height }
  }
hand-height-above = über dem Foramen
hand-height-upper = im oberen Drittel des Foramens
hand-height-middle = im mittleren Drittel des Foramens
hand-height-lower = im unteren Drittel des Foramens
hand-height-below = unter dem Foramen
hand-asOf = Stand des letzten Bildes
hand-met = Unterwegs getroffen
hand-nothingMet = Noch nichts.

contrast-aspirate = Aspirieren
contrast-inject = { $ml } ml spritzen
contrast-in = { $ml } ml drin.
contrast-answer-blood = Blut kommt zurück: die Spitze liegt in einem Gefäß. Nicht spritzen; neu setzen.
contrast-answer-clear_fluid = Klare Flüssigkeit kommt zurück: die Spitze liegt im Duralsack. Nicht spritzen; neu setzen.
contrast-hold = Halten
contrast-holdMore = {" "}zum Spritzen
contrast-holdHint = Etwa 0,4 ml je Sekunde, solange gehalten wird, auch mit der Leertaste.
contrast-notAspirated = Es wurde gespritzt, ohne zuerst zu aspirieren.
contrast-notLive = Es wurde ohne Livebild gespritzt: ein Gefäß wäre nicht gesehen worden.
contrast-name = Was hat das Kontrastmittel gezeigt?
contrast-pattern-perineural = Entlang der Wurzel und in den Epiduralraum
contrast-pattern-arterial = Arteriell
contrast-pattern-venous = Venös
contrast-pattern-mixed = Gemischt, Wurzel und Vene
contrast-pattern-intrathecal = Im Duralsack
contrast-pattern-subdural = Subdural
contrast-pattern-intraneural = In der Wurzel selbst
contrast-pattern-intradiscal = In der Bandscheibe
contrast-pattern-facet_joint = Facettengelenk
contrast-pattern-peritoneal = Vor der Wirbelsäule, hinter dem Rücken hinaus
contrast-pattern-muscular = Im Muskel
contrast-naming = So benennen
contrast-right = Richtig benannt: { $name }. { $sign }
contrast-wrong = Nicht: { $name }. Es war: { $truth }. { $sign }
contrast-pick = Zuerst ein Muster wählen.

score-heading = Punkte je Schritt
score-columns-step = Schritt
score-columns-weight = Gewicht
score-columns-marks = Punkte
score-total = Gesamt
score-none = noch keine
score-notCounted = zählt nicht
score-said = Abgeschlossen: { $marks } für die ganze Injektion.
score-table = Punkte je Schritt, mit Gründen
gates-heading = Was zum Bestehen nötig ist
gates-held = Alles, was zum Bestehen nötig ist, wurde eingehalten.
gates-failed = { $n ->
    [one] { $n } Punkt, der zum Bestehen nötig ist, wurde nicht eingehalten, und keine Punktzahl gleicht das aus:
   *[other] { $n } Punkte, die zum Bestehen nötig sind, wurden nicht eingehalten, und keine Punktzahl gleicht das aus:
  }
gates-isHeld = eingehalten
gates-isFailed = nicht eingehalten
signs-blood = Blut am Ansatz.
signs-clear_fluid = Klare Flüssigkeit am Ansatz.
signs-paraesthesia = Schmerz ins Bein wird gemeldet.

file-save = attempt.json speichern
file-open = Versuch öffnen
file-opened = Der Versuch ist offen, wie er verlassen wurde.
file-notResumed = Der aufbewahrte Versuch ließ sich nicht aufnehmen ({ $why }); die Lektion beginnt neu.
file-bad = Diese Datei ließ sich nicht öffnen: { $why }. Der Versuch auf der Seite bleibt.
file-strange = sie hat einen unbekannten Eintrag „{ $key }“; erlaubt sind patient, seed, changed, case und log
file-noPatient = hier gibt es keine Person „{ $name }“
file-notJson = sie ist kein JSON
file-tooLarge = sie ist größer als 2 MB
file-noAttempt = sie enthält keinen Versuch mit patient, case und log
file-back = Letzten Versuch zurückholen

picture-label = Bild. Pfeiltasten bewegen den Ansatz, beim Markieren das Kreuz.
picture-key-mark = Marke
picture-key-area = Zielbereich
picture-key-hub = Ansatz
picture-key-tip = Spitze
picture-cross = Kreuz { $offset } der Mitte.
picture-crossMiddle = Kreuz in der Mitte.
picture-words = Nadel { $gauge } G, { $mm } mm tief.
picture-wordsOpen = Nadel { $gauge } G, { $mm } mm tief, { $hub }.
picture-markWords = Eine Marke ist gesetzt.

did-mark = Zielpunkt markiert.
did-keep = { $view ->
    [true_ap] Echte AP gemerkt.
    [oblique] Schräge Einstellung gemerkt.
   *[lateral] Seitliche Einstellung gemerkt.
  }
did-recall = { $view ->
    [true_ap] C-Bogen in der gemerkten AP.
    [oblique] C-Bogen in der gemerkten schrägen Einstellung.
   *[lateral] C-Bogen in der gemerkten seitlichen Einstellung.
  }
did-orient = { $view ->
    [true_ap] C-Bogen ungefähr AP: einstellen und merken.
    [oblique] C-Bogen ungefähr schräg: einstellen und merken.
   *[lateral] C-Bogen ungefähr seitlich: einstellen und merken.
  }
did-choose = { $approach ->
    [subpedicular] Zugang: unter dem Pedikel.
   *[infraneural] Zugang: unter der Wurzel.
  }
did-place = Nadel auf der Haut: { $needle }.
did-remove = Nadel heraus.
did-undo = Zurückgenommen.
did-redo = Wieder getan.
did-no_undo = Es gibt nichts zurückzunehmen.
did-no_redo = Es gibt nichts zu wiederholen.
did-again = Ein neuer Versuch derselben Injektion.
did-named = Muster benannt.

refuse-bestView = Das ist die beste Einstellung der Seite, nicht Ihre: zu Ihrer zurückkehren, sie einstellen und die merken.
refuse-noPicture = Von dieser Stellung gibt es kein Bild: zuerst eine Aufnahme machen, dann darauf markieren.
refuse-noOblique = Noch keine schräge Einstellung gemerkt: zuerst einstellen und merken.
