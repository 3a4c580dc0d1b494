### Tour, list of keys, description, and what stands on the film.

## The lines on the film, and the question before a turn

film-process = process { $mm } mm off the middle
film-rims = rims { $mm } mm apart
film-facetLateral = process { $mm } mm lateral of the pedicle
film-facetMedial = process { $mm } mm medial of the pedicle
film-openings = openings { $mm } mm apart
film-sides = pedicles { $mm } mm apart
film-clock = tip at { $hour }
film-move = { $way ->
    [left] { $deg }° to the left
    [right] { $deg }° to the right
    [cephalad] { $deg }° cephalad
   *[caudad] { $deg }° caudad
  }
ask-question = Which way must the receptor go?
ask-end = { $way ->
    [left] To the left
    [right] To the right
    [cephalad] To the head
   *[caudad] To the feet
  }
# $measured is a value of the checks, $advice the sentence that says what to move.
ask-yes = Yes. { $measured }. { $advice }
ask-no = The other way. { $measured }. { $advice }

## Tour, list of keys and description

close = Close

# Said in other sentences, as $step and the like.
degrees = { $n ->
    [one] { $n } degree
   *[other] { $n } degrees
  }
mm = { $n } mm

## The tour: a panel beside one part of the page after the other

tour-name = Tour
# The stop, and how many there are.
tour-count = { $n } of { $all }
tour-back = Back
tour-next = Next
tour-done = Done
tour-noticed-turned = You have turned it.
tour-noticed-full = Full marks: a true AP.
tour-stops-picture =
    .title = The picture
    .text = A patient who lies prone, as the C-arm sees it; amber is the level you work at. Drag it, or use its arrow keys: the C-arm turns.
tour-stops-oblique =
    .title = Oblique
    .text = Turns the receptor to the patient’s left or right. Turn until the spinous process stands midway between the two round pedicles.
tour-stops-tilt =
    .title = Tilt
    .text = Leans it towards the head or the feet. Tilt until the upper end plate, a flat ellipse, closes to one line.
tour-stops-checks =
    .title = What it is worth
    .text = The marks of this view. Under them each measure says how far off it is, what full marks need, and which way to move.
tour-stops-gantry =
    .title = The C-arm
    .text = The same turn from outside: watch the receptor when you move a slider. The beam runs from the source below up to it.
tour-stops-activities =
    .title = And then
    .text = Injection: a needle from the skin to the contrast. Lessons: a course with marks and a receipt to hand in. This tour stays in the menu.

## The list of keys: places on the page, and what a key does there

keys-heading = Keys
keys-use = Use single keys
keys-useHint = Off, only what has the focus answers to keys.
# What is printed on a key; $given is a letter, a sign or an arrow, said as it is.
keys-name = { $key ->
    [space] Space
    [pageup] Page up
    [pagedown] Page down
    [home] Home
    [end] End
    [enter] Enter
    [escape] Escape
   *[other] { $given }
  }
# The key of commands, and a letter.
keys-command = Ctrl { $key }
# Between the last two keys of a row, with its spaces.
keys-or = {" "}or{" "}
keys-places-page = Anywhere
keys-places-sliders = On a slider
keys-places-picture = On the picture
keys-places-views = Views
keys-places-needle = Injection: needle and C-arm
keys-places-hub = On the hub
keys-places-mark = On the picture, while marking
keys-places-naming = On the picture, naming parts
keys-places-beam = On Fluoroscopy
keys-places-menus = Menus and dialogs
keys-page-keys = this list of keys
keys-page-read = the picture is read out
keys-page-zoom = the film larger, smaller, whole
keys-page-through = held: through the beam, the bones in 3D
keys-page-table = the table: left, right, to the head, to the feet, up, down
# The thumb is the part of a slider that moves.
keys-sliders-step = { $deg ->
    [one] { $deg } degree, the thumb goes the way of the arrow
   *[other] { $deg } degrees, the thumb goes the way of the arrow
  }
keys-sliders-ends = to the end of the range
# $step and $coarse are degrees, as said above: “1 degree”.
keys-picture-turn = turn the C-arm { $step }, with Shift { $coarse }
keys-picture-hub = with a needle: move the hub { $step }°, with Shift { $fine }°
keys-views-pick = check true AP, oblique, lateral
keys-views-check = check my view (self-test)
keys-needle-advance = advance 1 mm, with Shift 5 mm
keys-needle-advanceHalf = advance 0.5 mm
keys-needle-withdraw = withdraw 1 mm, with Shift 5 mm
keys-needle-withdrawHalf = withdraw 0.5 mm
keys-needle-roll = turn the hub 15° counter-clockwise, clockwise; with Shift 1°
keys-needle-half = turn the hub 180°
keys-needle-arm = C-arm to AP, lateral, oblique as kept
keys-needle-mark = mark on the picture
keys-needle-hint = hint
keys-needle-undo = undo; with Shift redo
keys-needle-redo = redo
# About the needle’s own axis.
keys-hub-turn = turn it { $step }°, with Shift { $fine }°
keys-hub-wheel = The wheel over the hub turns it 5° a notch; with Shift it advances and withdraws 0.5 mm.
# Where the skin will be marked.
keys-mark-cross = move the cross { $step } mm, with Shift { $fine } mm
keys-mark-set = mark there
keys-mark-leave = leave
keys-naming-step = from outline to outline
keys-naming-answer = answer with the outline that is lit
keys-beam-hold = beam on while it is held
keys-beam-stop = beam off, from anywhere
keys-menus-escape = close what is open

## The picture in words, also read out by a screen reader

describe-heading = Description
describe-screen = On the screen
describe-picture = In the picture
describe-needle = Needle
describe-says = Say what changes
describe-saysHint = Through a screen reader, when the picture stands still.
describe-activity-views = Views: the picture, under it the sliders Oblique and Tilt, then steps, checks and a drawing of the C-arm.
describe-activity-injection = Injection: the picture, under it the sliders Oblique and Tilt, then the stages, and the needle in hand once there is one.
describe-activity-lessons = Lessons: the list of the course. The picture and the sliders Oblique and Tilt are there too.
describe-step = Now: { $title }.
describe-keys = Question mark lists the keys.
describe-none = There is no picture yet.
describe-nonePart = What stands in the picture is told as soon as there is one.
describe-judged = Told as the eye sees it, in whole millimetres and twentieths: what the view is worth is for you to judge here.
describe-naming = Where the parts stand is not told here: finding them is what the lesson asks.

## What stands where in the picture. A level is L1 to L5 or S1; the one below L5 is S1.

# The sacrum has a crest in place of spinous processes.
describe-spinousMidway = { $level ->
    [S1] The sacral crest stands midway between the pedicles.
   *[other] The spinous process of { $level } stands midway between the pedicles.
  }
describe-spinousOff = { $level ->
    [S1] { $way ->
        [left] The sacral crest stands { $percent } percent of the pedicles’ spacing to the patient’s left of midway between them.
       *[right] The sacral crest stands { $percent } percent of the pedicles’ spacing to the patient’s right of midway between them.
      }
   *[other] { $way ->
        [left] The spinous process of { $level } stands { $percent } percent of the pedicles’ spacing to the patient’s left of midway between them.
       *[right] The spinous process of { $level } stands { $percent } percent of the pedicles’ spacing to the patient’s right of midway between them.
      }
  }
# Front and back rim of an end plate make one line where the beam runs along it, otherwise two.
describe-plateOne = { $which ->
    [upper] The { $level } upper end plate is a single line.
   *[lower] The { $level } lower end plate is a single line.
  }
describe-plateTwo = { $which ->
    [upper] The { $level } upper end plate opens as two lines.
   *[lower] The { $level } lower end plate opens as two lines.
  }
# $apart is degrees, mm, or both: “6 degrees, 6 mm”.
describe-plateApart = { $which ->
    [upper] The { $level } upper end plate opens as two lines, { $apart } apart.
   *[lower] The { $level } lower end plate opens as two lines, { $apart } apart.
  }
# Under a third of the pedicle, or beside it, $widths pedicle widths off its middle. Its tip is below the pedicle, or lies over it.
describe-processBelow = { $stands ->
    [under_lateral] The lateral edge of the superior articular process of { $below } stands under the lateral third of the { $level } pedicle, the tip { $mm } mm below it.
    [under_middle] The lateral edge of the superior articular process of { $below } stands under the middle third of the { $level } pedicle, the tip { $mm } mm below it.
    [under_medial] The lateral edge of the superior articular process of { $below } stands under the medial third of the { $level } pedicle, the tip { $mm } mm below it.
    [beside_lateral] The lateral edge of the superior articular process of { $below } stands { $widths } pedicle widths lateral of the middle of the { $level } pedicle, the tip { $mm } mm below it.
   *[beside_medial] The lateral edge of the superior articular process of { $below } stands { $widths } pedicle widths medial of the middle of the { $level } pedicle, the tip { $mm } mm below it.
  }
describe-processOver = { $stands ->
    [under_lateral] The lateral edge of the superior articular process of { $below } stands under the lateral third of the { $level } pedicle, the tip over the pedicle by { $mm } mm.
    [under_middle] The lateral edge of the superior articular process of { $below } stands under the middle third of the { $level } pedicle, the tip over the pedicle by { $mm } mm.
    [under_medial] The lateral edge of the superior articular process of { $below } stands under the medial third of the { $level } pedicle, the tip over the pedicle by { $mm } mm.
    [beside_lateral] The lateral edge of the superior articular process of { $below } stands { $widths } pedicle widths lateral of the middle of the { $level } pedicle, the tip over the pedicle by { $mm } mm.
   *[beside_medial] The lateral edge of the superior articular process of { $below } stands { $widths } pedicle widths medial of the middle of the { $level } pedicle, the tip over the pedicle by { $mm } mm.
  }
# Left, right, up and down in the picture: said in other sentences as $off.
describe-off = { $across ->
    [left] { $along ->
        [up] { $x } mm left and { $y } mm up
        [down] { $x } mm left and { $y } mm down
       *[none] { $x } mm left
      }
    [right] { $along ->
        [up] { $x } mm right and { $y } mm up
        [down] { $x } mm right and { $y } mm down
       *[none] { $x } mm right
      }
   *[none] { $along ->
        [up] { $y } mm up
        [down] { $y } mm down
       *[none] { $x } mm
      }
  }
describe-middle = The body of { $level } lies { $off } from the middle of the film.
describe-joint = The { $level }–{ $below } facet joint lies { $off } from the pedicle’s centre.
describe-pedicle = { $side ->
    [left] The left { $level } pedicle lies { $off } from the picture’s middle.
   *[right] The right { $level } pedicle lies { $off } from the picture’s middle.
  }
# The front and the back opening of the passage for the first sacral nerve.
describe-foramen = { $apart ->
    [0] The two openings of the first sacral foramen lie over each other.
   *[other] The two openings of the first sacral foramen lie { $apart } mm apart.
  }
# From the side. The posterior wall is that of the vertebral body.
describe-lateral = { $apart ->
    [0] Left and right { $level } pedicles lie over each other.
   *[other] Left and right { $level } pedicles lie { $apart } mm apart, the edges of the posterior wall { $wall } mm.
  }
describe-crestOutside = { $side ->
    [left] The left iliac crest lies outside of the picture.
   *[right] The right iliac crest lies outside of the picture.
  }
describe-crestBody = { $side ->
    [left] The left iliac crest reaches the height of the { $level } body.
   *[right] The right iliac crest reaches the height of the { $level } body.
  }
describe-crestDisc = { $side ->
    [left] The left iliac crest reaches the height of the disc between { $above } and { $below }.
   *[right] The right iliac crest reaches the height of the disc between { $above } and { $below }.
  }

## The needle in the picture. Its hub is the end that is held.

describe-hubOver = The hub stands over the tip.
describe-hubOff = The hub stands { $off } from the tip.
describe-tip = The tip stands { $off } from the pedicle’s centre.
# The mark on the skin.
describe-mark = The mark stands { $off } from the pedicle’s centre.
# The gauge is the needle’s thickness.
describe-placed = Needle { $gauge } G, { $depth } mm deep.
describe-bone = The tip is on bone.
# $met is a sentence on what the needle met, with its full stop.
describe-last = Met last: { $met }
