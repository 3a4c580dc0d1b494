### What the engine says of an attempt: why a step has its marks, what to do next, what the needle met, what contrast shows, and cautions.

## Why a step has its marks. Not done yet

name_parts = Name the parts that are asked for.
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
sacral_inside = The tip lies in the first sacral foramen.
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
contrast_good = Aspirated, injected live, along the right root, and named as what it is.
contrast_in_root = Contrast went into the root itself: stop on pain.
pattern-perineural = It stays, outlines the root as a paler band and climbs inside the pedicle along the epidural space.
pattern-intravascular = It runs off along a vessel while it is injected and is gone when it stops.
pattern-intrathecal = It spreads thin and even within the sac, lies at its front and stays.
pattern-intraneural = It shows as a thin dense line within the root, with pain.
pattern-intradiscal = It shows as a dense bun between the end plates.
pattern-peritoneal = It shows as thin streaks far in front of the column.
pattern-muscular = It shows as feathery streaks along the muscle’s fibres, away from the root.

## Radiation

spent = { $pictures ->
    [one] { $pictures } exposure and { $beam_s } s of fluoroscopy; par is { $par_pictures } and { $par_beam_s } s.
   *[other] { $pictures } exposures and { $beam_s } s of fluoroscopy; par is { $par_pictures } and { $par_beam_s } s.
  }

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
tip_in_lateral = { $way ->
    [behind] The tip is { $mm } mm behind the posterior body line.
   *[front] The tip is { $mm } mm in front of the posterior body line.
  }
advance = Advance a little, and prove the depth in AP and lateral before it is deep.

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

caution-upper = At L3 and above an artery to the spinal cord may run in the upper part of the foramen, more often on the left: whether the place under the pedicle is the right one there is debated, and a lower, slightly posterior one may be safer. Non-particulate steroid first; local policy and supervision decide.
caution-lower = Never pass medial of the pedicle’s 6 o’clock before contrast has been seen. Contrast under live imaging comes first, non-particulate steroid first; stop on paraesthesia or blood. Local policy and supervision decide.
caution-sacral = Vascular spread is more frequent at S1 than at lumbar levels: watch the whole injection live. Local policy and supervision decide.
caution-infraneural = The way under the root lies beside the disc: prove depth in the lateral view before each advance. Local policy and supervision decide.
