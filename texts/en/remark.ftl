### What the engine says of an attempt: why a step has its marks, what to do next, what the needle met, what contrast shows, and cautions.

## Why a step has its marks. Not done yet

name_parts = Name the parts that are asked for.
centre_target = Bring the target to the middle: across and along in AP, the height in lateral.
keep_view = { $view ->
    [true_ap] Set up the true AP view and keep it.
    [oblique] Set up the oblique view and keep it.
    [steep_oblique] Set up the steep oblique view and keep it.
   *[lateral] Set up the lateral view and keep it.
  }
mark_on_oblique = Mark the target on the oblique picture.
beam_not_yet = Put the hub over the tip until the needle is a dot, then advance.
steer_not_yet = Steer the tip onto the mark.
depth_not_yet = Bring the tip into the foramen, and prove it in AP and lateral.
nothing_met_yet = Nothing has been met yet.
contrast_not_yet = Inject contrast under live imaging before anything else.
no_exposure = No exposure yet.
pictures_free = Pictures are free here; with exposures on they are counted.

## The table

target_centred = The target lies in the middle: across, along and in height.
move_table = { $way ->
    [left] In AP, the table is to go { $mm } mm to the left.
    [right] In AP, the table is to go { $mm } mm to the right.
    [head] In AP, the table is to go { $mm } mm to the head.
    [feet] In AP, the table is to go { $mm } mm to the feet.
    [up] In lateral, the table is to go { $mm } mm up.
   *[down] In lateral, the table is to go { $mm } mm down.
  }

## Kept views. $finding is a sentence of the checks.

view_right = { $view ->
    [true_ap] The true AP view is right: all its criteria are within their tolerance.
    [oblique] The oblique view is right: all its criteria are within their tolerance.
    [steep_oblique] The steep oblique view is right: all its criteria are within their tolerance.
   *[lateral] The lateral view is right: all its criteria are within their tolerance.
  }
view_off = { $criterion }: { $finding }
kept_late = It was kept only after the oblique: the true AP comes first.

## The mark

mark_along_plane = The picture runs along the plane of the target: mark it on the oblique view.
mark_inside = { $area ->
    [sacral_foramen] The mark lies in the opening of the first sacral foramen.
    [under_pedicle] The mark lies in the triangle under the pedicle.
   *[under_root] The mark lies in the triangle under the root.
  }
# $off is one of the messages off-…
mark_outside = { $area ->
    [sacral_foramen] The mark lies { $mm } mm outside the opening of the first sacral foramen; { $off }.
    [under_pedicle] The mark lies { $mm } mm outside the triangle under the pedicle; { $off }.
   *[under_root] The mark lies { $mm } mm outside the triangle under the root; { $off }.
  }
off-high-none = it is too high
off-low-none = it is too low
off-none-medial = it is too far medial
off-none-lateral = it is too far lateral
off-high-medial = it is too high and too far medial
off-high-lateral = it is too high and too far lateral
off-low-medial = it is too low and too far medial
off-low-lateral = it is too low and too far lateral
mark_medial = It is { $mm } mm medial of the pedicle’s 6 o’clock.
mark_behind_bone = { $level ->
    [none] Bone stands in the way of a needle down this beam.
   *[other] Bone of { $level } stands in the way of a needle down this beam.
  }

## The needle’s way

beam_held = The needle was held down the beam: { $deg } degrees off on the mean.
beam_off = The needle stood { $deg } degrees off the beam on the mean: put the hub over the tip while it is shallow.
steered = The tip ended { $mm } mm from the mark.
strayed = The tip ended { $mm } mm from the mark: turn the notch towards the side it has strayed to, since it drifts away from the notch.
turned_blind = { $blind } of { $all } turns of the hub were not decided by drift that was seen: look, turn the notch towards the side it strays to, and leave it while it is on line.

## The depth. $hour is an hour in words.

ap_medial = In AP the tip is { $mm } mm medial of where it may be before contrast.
ap_short = In AP the tip is { $mm } mm short of the foramen.
ap_at = In AP the tip stands at { $hour }.
side_deep = In the lateral view it is { $mm } mm in front of the posterior body line: too deep.
side_shallow = In the lateral view it is { $mm } mm short of the foramen: not deep enough.
side_off = { $along ->
    [high] In the lateral view it is { $mm } mm too high in the foramen.
   *[low] In the lateral view it is { $mm } mm too low in the foramen.
  }
side_inside = In the lateral view it lies in its part of the foramen.
sacral_upper = The tip lies in the upper lateral part of the opening, away from the root.
sacral_low = The tip is { $mm } mm too low or too far medial in the opening: the root runs down and out there.
sacral_deep = The tip is { $mm } mm too deep in the first sacral foramen.
sacral_inside = The tip lies at a good depth in the first sacral foramen.
sacral_outside = The tip does not lie in the first sacral foramen.
unproven = { $view ->
    [true_ap] The depth was not proven in an AP view with the needle in place.
   *[lateral] The depth was not proven in a lateral view with the needle in place.
  }

## What was met. $met is one of the messages met and metOf without their full stop.

nothing_met = The needle met nothing that it should not have.
harm = { $pushed ->
    [no] { $met }.
   *[yes] { $met }, and pushed on { $pushed_mm } mm.
  }
met = { $kind } at { $mm } mm: { $sign }
metOf = { $kind } of { $level } at { $mm } mm: { $sign }
kind-skin = Skin
kind-fascia = Fascia
kind-bone = Bone
kind-disc = Disc
kind-dura = Dura
kind-root = Root
kind-ganglion = Ganglion
kind-vessel = Vessel
kind-peritoneum = Peritoneum
sign-skin = the skin gives way
sign-fascia = a slight give: the fascia
sign-bone = hard stop: bone
sign-disc = firm, rubbery resistance: the disc
sign-dura = a give, and clear fluid at the hub: the dura is through
sign-root = the patient reports pain down the leg: stop and draw back
sign-ganglion = the patient reports pain down the leg: stop and draw back
sign-vessel = blood at the hub
sign-peritoneum = loss of resistance far in front: the needle has left the back

## Contrast

aspirate_first = Aspirate before each injection.
inject_live = Inject under live imaging: a vessel shows only while it flows.
wrong_place = The last contrast went to the wrong place: reposition before anything else goes in.
name_pattern = Name the pattern that you see.
named_wrongly = A pattern was named wrongly.
contrast_good = Aspirated, injected live, along the root that was aimed at, and named as what it is.
contrast_in_root = Contrast went into the root itself: stop on pain.
pattern-perineural = It stays, outlines the root as a paler band and climbs inside the pedicle along the epidural space.
pattern-arterial = It shows as a thin line that runs off fast and is gone at once, towards the cord where the artery feeds it.
pattern-venous = It is wider and slower: fills a vein while it is injected and clears when it stops.
pattern-mixed = It is mixed: part outlines the root and stays, part runs off along a vein.
pattern-intrathecal = It spreads thin and even within the sac, lies at its front and stays.
pattern-subdural = It shows as a dense, narrow band with a sharp edge along the inside of the sac, slow to move on.
pattern-intraneural = It shows as a thin dense line within the root, with pain.
pattern-intradiscal = It shows as a dense bun between the end plates.
pattern-facet_joint = It shows as a dense, small rim within the joint, away from the root.
pattern-peritoneal = It shows as thin streaks far in front of the column.
pattern-muscular = It shows as feathery streaks along the muscle’s fibres, away from the root.

## Radiation

spent = { $pictures ->
    [one] { $pictures } exposure and { $beam_s } s of fluoroscopy; par is { $par_pictures } and { $par_beam_s } s.
   *[other] { $pictures } exposures and { $beam_s } s of fluoroscopy; par is { $par_pictures } and { $par_beam_s } s.
  }

economy_scaled = Little radiation counts for what was reached with it: { $percent } % of the other marks.

## Gates: what fails an attempt whatever its marks

gate-complete = Every step done
gate-views = Views reached
gate-target = Right level and side
gate-root = No root pushed through
gate-dura = Dura not gone through
gate-paraesthesia = Stopped on paraesthesia
gate-medial = Not medial before contrast
gate-blood = Nothing injected on blood
gate-contrast_live = Contrast seen live
gate-compartment = Contrast in the right place
gate-steering = Steered by sight
gate-aspirated = Aspirated each time
gate-pattern_named = Patterns named rightly
gate-within_par = Within par
gate-one_needle = One needle
gate_held = Held.
steps_left = { $left } of { $all } steps were not done.
view_missed = { $view ->
    [true_ap] The true AP was not reached.
    [oblique] The oblique was not reached.
    [steep_oblique] The steep oblique was not reached.
   *[lateral] The lateral was not reached.
  }
other_target = { $side ->
    [left] It is at { $level } left, and { $wanted } was asked for.
   *[right] It is at { $level } right, and { $wanted } was asked for.
  }
wanted-left = { $level } left
wanted-right = { $level } right
pain_ignored = The patient reported pain down the leg at { $mm } mm, and more was done before drawing back.
medial_before_contrast = The tip went { $mm } mm past 6 o’clock before contrast was seen.
injected_on_blood = Something was injected with blood at the hub: draw back and reposition first.
needles_used = { $needles } needles were used.

## Parts named. $missed is a list of messages part.

parts_found = { $all ->
    [one] The one part was found at the first asking.
   *[other] All { $all } parts were found at the first asking.
  }
parts_missed = Found, but missed at first: { $missed }.
parts_left = { $left } of { $all } parts are still to be found.
parts_left_missed = { $left } of { $all } parts are still to be found; missed so far: { $missed }.
part = { $side ->
    [left] left { $part } of { $level }
    [right] right { $part } of { $level }
   *[none] { $part } of { $level }
  }

## The next thing to do

mark_area = { $area ->
    [sacral_foramen] Mark the target: the opening of the first sacral foramen.
    [under_pedicle] Mark the target just under the pedicle, lateral to its 6 o’clock, past the articular process.
   *[under_root] Mark the target just above the upper end plate of the level below, beside the articular process.
  }
place_needle = Set a needle on the skin over the mark.
# $of and $to are messages of-… and to-… of the ways on the screen.
hub_off = { $n ->
    [one] The hub stands { $of } of the tip on the oblique picture: move it { $to }, about { $n } degree, until the needle is a dot.
   *[other] The hub stands { $of } of the tip on the oblique picture: move it { $to }, about { $n } degrees, until the needle is a dot.
  }
name_spread = Look at the spread and name its pattern.
spread_good = Good spread along the root: finish.
spread_wrong = Wrong place: draw back, reposition, and prove it again.
on_bone = Bone: draw back a little, turn the notch towards the bone so that the bevel leads away, and advance.
tip_strayed = The tip has strayed { $mm } mm { $to }: turn the notch to { $hour }, towards that side, and advance; it drifts away from the notch.
advance = Advance a little, and prove the depth in AP and lateral before it is deep.
advance_by = About { $mm } mm to go: advance a little at a time, and look after each.
draw_back_by = Draw back about { $mm } mm.
look_in = { $view ->
    [true_ap] Look in AP with the needle there.
   *[lateral] Look in the lateral view with the needle there.
  }
aspirate_now = In its place and seen in both views: aspirate.
inject_now = Now contrast under live imaging: a dry aspirate proves nothing.
blood_answer = Blood at the hub: draw back, reposition, and inject nothing here.
pain_answer = Pain down the leg: stop, draw back, and only then go on another way.
clear_fluid_answer = Clear fluid: the dura is through. Draw back and inject nothing; local policy decides whether to go on at all.
aspirate-nothing-worth = Nothing comes back. That proves nothing: of tips in a vessel fewer than half (45 %) give blood. Contrast under live imaging decides.

## Ways on the screen

to-up = up
to-up_right = up and to the right
to-right = to the right
to-down_right = down and to the right
to-down = down
to-down_left = down and to the left
to-left = to the left
to-up_left = up and to the left
of-up = up
of-up_right = up and to the right
of-right = right
of-down_right = down and to the right
of-down = down
of-down_left = down and to the left
of-left = left
of-up_left = up and to the left

## Cautions

caution-upper = At L3 and above an artery to the spinal cord may run in the upper part of the foramen, more often on the left: whether the place under the pedicle is the right one there is debated, and a lower, slightly posterior one may be safer. A dry aspirate does not exclude a vessel. Non-particulate steroid throughout; local policy and supervision decide.
caution-lower = Never pass medial of the pedicle’s 6 o’clock before contrast has been seen. Paraplegia has followed injections down to L5-S1 after a dry aspirate: contrast under live imaging comes first, non-particulate steroid throughout; stop on paraesthesia or blood. Local policy and supervision decide.
caution-sacral = Vascular spread is more frequent at S1 than at lumbar levels, and an artery to the spinal cord can be met at any level: watch the whole injection live. Non-particulate steroid throughout; local policy and supervision decide.
caution-infraneural = The way under the root lies beside the disc: prove depth in the lateral view before each advance. An artery to the spinal cord can be met at any level. Non-particulate steroid throughout; local policy and supervision decide.
