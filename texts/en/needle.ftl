### The whole injection. What the engine says of an attempt is in remark.ftl.

heading = Needle
wait = The steps of the injection come with the picture: views to keep, a target to mark, a needle to place and steer, contrast.
steps = Step by step
progress = { $done } of { $all }

## Places: an hour of the clock, a way on the screen, off something else

hour = { $hour } o’clock
hourHalf = half past { $hour }
offset-across = { $way ->
    [right] { $mm } mm right
   *[left] { $mm } mm left
  }
offset-along = { $way ->
    [up] { $mm } mm up
   *[down] { $mm } mm down
  }

help-name = Help while you work
help-guided = Guided
help-asked = On request
help-test = Self-test
help-note-guided = The next thing to do is always shown.
help-note-asked = A hint is shown when you ask for it.
help-note-test = No hints, no readings, no marks on the picture until you finish.
help-ask = Hint
help-heading = Hint

more = Help and file
undo = Undo
redo = Redo
again = Again
againLong = Begin this injection again
caution = Caution

stage-later = to come
stage-current = now
stage-done = done
stage-left = left open
stage-marks = { $points } of 100
stage-now = Now { $marks }.
stage-list-centre-title = Target in the middle
stage-list-centre-act = In AP move the table across and along until the body of { $level } stands in the middle of the film. Then look in lateral, and move it up or down.
stage-list-true_ap-title = True AP
stage-list-true_ap-act = { $level ->
    [S1] Turn until the sacral crest stands midway between the pedicles of { $level }, square the upper end plate with tilt, and keep the view.
   *[other] Turn until the spinous process stands midway between the pedicles of { $level }, square the upper end plate with tilt, and keep the view.
  }
stage-list-true_ap-kept = kept
stage-list-oblique-title = Oblique, squared
stage-list-oblique-actS1 = { $side ->
    [left] Turn to the left and tilt until the two openings of the first sacral foramen lie over each other, and keep the view.
   *[right] Turn to the right and tilt until the two openings of the first sacral foramen lie over each other, and keep the view.
  }
stage-list-oblique-actLumbar = { $side ->
    [left] Turn to the left until the articular process of the level below stands under the pedicle, square again, and keep the view.
   *[right] Turn to the right until the articular process of the level below stands under the pedicle, square again, and keep the view.
  }
stage-list-oblique-actRoot = { $side ->
    [left] The way under the root wants a steeper oblique: turn to the left until the articular process of the level below stands at the middle of the end plate, square the upper end plate of the level below, and keep the view.
   *[right] The way under the root wants a steeper oblique: turn to the right until the articular process of the level below stands at the middle of the end plate, square the upper end plate of the level below, and keep the view.
  }
stage-list-oblique-kept = kept
stage-list-parts-title = Name the parts
stage-list-parts-act = Find on the picture what is asked for.
stage-list-lateral-title = Lateral
stage-list-lateral-act = { $side ->
    [left] Turn to the left by about 90 degrees until left and right pedicles lie over each other and the end plates are single lines, and keep the view.
   *[right] Turn to the right by about 90 degrees until left and right pedicles lie over each other and the end plates are single lines, and keep the view.
  }
stage-list-lateral-kept = kept
stage-list-mark-title = Mark the target
stage-list-mark-act = Press the button, then press the place on the oblique picture. By keyboard: arrow keys move the cross 1 mm (with Shift 0.2 mm), Enter marks, Escape leaves.
stage-list-mark-done = marked
stage-list-place-title = Place a needle
stage-list-place-act = It is set upright on the skin over the mark.
stage-list-place-caution = Before any needle: blood thinners (to stop them has a risk too), allergy to contrast, pregnancy. What is done about each is local policy.
stage-list-align-title = Hub over tip
stage-list-align-act = On the oblique picture, move the hub until the needle is a dot: drag the ring in the picture, use the four buttons, or the arrow keys on the picture. It turns about the skin, so do it while the needle is shallow. Then advance until it is about 15 mm deep.
stage-list-align-done = { $deg }° off the beam
stage-list-steer-title = Advance and steer
stage-list-steer-act = Short advances. The tip drifts away from the notch: turn the notch to the side that the tip has strayed to. Half a turn bends the other way; spinning goes straight.
stage-list-steer-caution = Pain down the leg means stop and draw back. Sedation can hide it: no pain proves nothing in a sleepy patient.
stage-list-steer-done = { $mm } mm deep
stage-list-depth-title = Prove the depth
stage-list-depth-act = Turn to the lateral before it is deep, keep that view too, and go back and forth with the AP and oblique as often as needed and no more.
stage-list-depth-done = in its place, seen in AP and lateral
stage-list-contrast-title = Contrast
stage-list-contrast-act = Aspirate, then inject a little under live imaging. Watch where it runs, and name it.
stage-list-contrast-exposures = Live means that fluoroscopy is on while it goes in: set “Fluoroscopy stays on” under Exposure, switch it on, then inject.
stage-list-contrast-caution-live = Contrast live before anything else; watch all of it. An artery to the cord can be met at any level.
stage-list-contrast-caution-aspirate = Aspirate each time, and trust only blood: of tips in a vessel fewer than half give any. Paraplegia followed at L5-S1 after nothing came back and subtraction showed nothing.
stage-list-contrast-caution-subtraction = Subtraction and a test dose of local anaesthetic find more, and still miss some; subtraction costs radiation.
stage-list-contrast-caution-fluid = Through a thin needle clear fluid comes late or never: a dry hub does not clear the dura.
stage-list-contrast-caution-steroid = Non-particulate steroid throughout; exceptions by local policy alone. With an allergy to contrast local policy says what is done instead.
stage-list-contrast-wrong = Wrong place for an injection: draw back, reposition, and prove it again.
stage-list-contrast-right = This is the spread that is wanted.
stage-list-finish-title = Finish and score
stage-list-finish-act = Nothing more can be done after it, but undo takes it back.
stage-keep = { $view ->
    [true_ap] Keep this true AP
    [oblique] Keep this oblique
   *[lateral] Keep this lateral
  }
stage-keepAgain = { $view ->
    [true_ap] Keep this true AP instead
    [oblique] Keep this oblique instead
   *[lateral] Keep this lateral instead
  }
# $title is the name of a step, $result what was reached in it.
stage-ended = { $title }: { $result }.
stage-next = Next: { $title }.
stage-goOn = Go on to the next step
stage-keepAsked = Keep it all the same
stage-keepNothing = As it stands this view is worth 0 of 100. Set it up better, or press again to keep it.
stage-mark = Mark on the picture
stage-marking = Marking: press the place
stage-showArea = Show the area
stage-place = Place the needle
stage-placeAgain = Take another needle
stage-remove = Take the needle out
stage-gauge = Gauge
stage-length = Length
stage-gaugeName = { $gauge } G
stage-lengthName = { $mm } mm
# The usual colours of hubs by gauge; nothing of the others.
stage-hubColour = { $gauge ->
    [22] Black hub.
    [25] Orange hub. No published bend of a 25 G needle was found: it is taken to bend a quarter more.
   *[other] {""}
  }
stage-placed = { $colour ->
    [black] { $gauge } G, { $mm } mm, black hub
    [orange] { $gauge } G, { $mm } mm, orange hub
   *[other] { $gauge } G, { $mm } mm, { $colour } hub
  }
stage-approach = Way in
stage-approachName-subpedicular = Under the pedicle
stage-approachName-infraneural = Under the root
stage-finish = Finish
stage-none = No needle yet.

# The next action as one button.
next-hub = Put the hub over the tip
next-notch = Turn the notch to { $hour }
next-look = { $view ->
    [true_ap] Look in AP
    [lateral] Look in the lateral
   *[oblique] Look in the oblique
  }

hand-heading = Needle in hand
hand-hub = Hub from above
hand-hubKeys = Arrow keys turn it 15 degrees, with Shift 1 degree.
# $hour is one of the hours above.
hand-notch = Notch at { $hour }
hand-notchFine = notch at { $hour }, tip drifts towards { $to }
hand-drift = Drifts to { $to }
hand-half = Turn 180°
hand-depth = { $mm } mm deep
# What of the needle is still outside.
hand-left = { $mm } mm left
hand-advance = Advance, mm
hand-withdraw = Withdraw, mm
hand-advanceBy = Advance { $mm } mm
hand-withdrawBy = Withdraw { $mm } mm
hand-spin = Spin while advancing
hand-percent = { $n ->
    [0] none
   *[other] { $n } %
  }
hand-pad = Move the hub
hand-fine = 0.1° steps
hand-way-left = left
hand-way-up = up
hand-way-down = down
hand-way-right = right
hand-hubBy = { $way ->
    [left] Hub left
    [right] Hub right
    [up] Hub up
   *[down] Hub down
  }
hand-views = Turn the C-arm to
hand-view-true_ap = AP
hand-view-lateral = Lateral
hand-view-oblique = Oblique
hand-beam = { $deg }° off the beam
# $offset is a way on the screen, as above.
hand-hubOff = hub { $offset } of the tip
hand-hubOver = hub over the tip
hand-offMark = tip { $offset } of the mark
hand-onMark = tip on the mark
hand-ap = { $way ->
    [medial] AP: tip at { $hour } of the pedicle, { $mm } mm medial of 6 o’clock
   *[lateral] AP: tip at { $hour } of the pedicle, { $mm } mm lateral of 6 o’clock
  }
hand-lateral = { $way ->
    [behind] Lateral: { $mm } mm behind the posterior body line, { $height }
   *[front] Lateral: { $mm } mm in front of the posterior body line, { $height }
  }
hand-height-above = above the foramen
hand-height-upper = in the upper third of the foramen
hand-height-middle = in the middle third of the foramen
hand-height-lower = in the lower third of the foramen
hand-height-below = below the foramen
hand-asOf = As of the last picture
hand-met = Met on the way
hand-nothingMet = Nothing yet.

contrast-aspirate = Aspirate
contrast-inject = Inject { $ml } ml
contrast-in = { $ml } ml in.
contrast-answer-blood = Blood comes back: the tip lies in a vessel. Do not inject; reposition.
contrast-answer-clear_fluid = Clear fluid comes back: the tip lies in the sac. Do not inject; reposition.
contrast-hold = Hold
contrast-holdMore = {" "}to inject
contrast-holdHint = About 0.4 ml a second while it is held, also with Space.
contrast-notAspirated = It went in without aspirating first.
contrast-notLive = It went in without live imaging: a vessel would not have been seen.
contrast-name = What did the contrast show?
contrast-pattern-perineural = Along the root and into the epidural space
contrast-pattern-arterial = Arterial
contrast-pattern-venous = Venous
contrast-pattern-mixed = Mixed, root and vein
contrast-pattern-intrathecal = In the sac
contrast-pattern-subdural = Subdural
contrast-pattern-intraneural = In the root itself
contrast-pattern-intradiscal = In the disc
contrast-pattern-facet_joint = Facet joint
contrast-pattern-peritoneal = In front of the column, past the back
contrast-pattern-muscular = In muscle
contrast-naming = Name it so
# $sign is one of the messages pattern-… of remark.ftl.
contrast-right = Named rightly: { $name }. { $sign }
contrast-wrong = Not { $name }. It was { $truth }. { $sign }
contrast-pick = Choose a pattern first.

score-heading = Marks by step
score-columns-step = Step
score-columns-weight = Weight
score-columns-marks = Marks
score-total = Whole
score-none = none yet
score-notCounted = not counted
score-said = Finished: { $marks } for the whole injection.
score-table = Marks by step, with reasons
gates-heading = What a pass needs
gates-held = All that a pass needs was kept to.
gates-failed = { $n ->
    [one] { $n } thing that a pass needs was not kept to, and no marks make up for it:
   *[other] { $n } things that a pass needs were not kept to, and no marks make up for them:
  }
gates-isHeld = kept to
gates-isFailed = not kept to
signs-blood = Blood at the hub.
signs-clear_fluid = Clear fluid at the hub.
signs-paraesthesia = The patient reports pain down the leg.

file-save = Save attempt.json
file-open = Open an attempt
file-opened = The attempt is open as it was left.
file-notResumed = The attempt that was kept could not be taken up ({ $why }); the lesson begins anew.
file-bad = That file could not be opened: { $why }. The attempt on the page is kept.
file-strange = it has an unknown entry “{ $key }”; allowed are patient, seed, changed, case and log
file-noPatient = there is no patient “{ $name }” here
file-notJson = it is not JSON
file-tooLarge = it is larger than 2 MB
file-noAttempt = it holds no attempt with patient, case and log
file-back = Bring back the last attempt

picture-label = Picture. Arrow keys move the hub, or the cross while marking.
picture-key-mark = mark
picture-key-area = area to aim at
picture-key-hub = hub
picture-key-tip = tip
picture-cross = Cross { $offset } of the middle.
picture-crossMiddle = Cross in the middle.
picture-words = Needle { $gauge } G, { $mm } mm deep.
# $hub is hand-hubOff or hand-hubOver.
picture-wordsOpen = Needle { $gauge } G, { $mm } mm deep, { $hub }.
picture-markWords = A mark is set.

did-mark = Target marked.
did-keep = { $view ->
    [true_ap] True AP kept.
    [oblique] Oblique kept.
   *[lateral] Lateral kept.
  }
did-recall = { $view ->
    [true_ap] C-arm at the kept true AP.
    [oblique] C-arm at the kept oblique.
   *[lateral] C-arm at the kept lateral.
  }
did-orient = { $view ->
    [true_ap] C-arm at a plain true AP: set it up and keep it.
    [oblique] C-arm at a plain oblique: set it up and keep it.
   *[lateral] C-arm at a plain lateral: set it up and keep it.
  }
did-choose = { $approach ->
    [subpedicular] Way in: under the pedicle.
   *[infraneural] Way in: under the root.
  }
# $needle is stage-placed.
did-place = Needle on the skin: { $needle }.
did-remove = Needle out.
did-undo = Taken back.
did-redo = Done again.
did-no_undo = There is nothing to take back.
did-no_redo = There is nothing to do again.
did-again = A new attempt at the same injection.
did-named = Pattern named.

refuse-bestView = This is the page’s best view, not yours: return to your view, set it up, and keep that.
refuse-noPicture = There is no picture of this position: make an exposure first, then mark on it.
refuse-noOblique = No oblique view has been kept yet: set it up and keep it first.
