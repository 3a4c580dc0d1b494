### The page.

title = Downbeam: C-arm views of the lumbar spine
subtitle = C-arm views of the lumbar spine
skip = Skip to the picture
noscript = This page computes X-ray views in your browser and needs JavaScript and WebAssembly.

activity-name = Activity
activity-views = Views
activity-injection = Injection
activity-lessons = Lessons

case-heading = Case
case-level = Level
case-side = Side
case-left = Left
case-right = Right
case-patient = Patient
sheet-close = Close
case-theme = Theme
case-dark = Dark room
case-light = Light
case-device = As the device

menu-name = Menu
menu-practice = Daily round: five minutes
menu-check = Teachers: check receipts
menu-author = Teachers: set a lesson
menu-model = About the model
menu-tour = Tour of the page
menu-keys = Keys
menu-read = Read the picture
menu-language = Language
# Said where a translation has not been read by a speaker; empty where it has.
menu-draft = {""}

welcome-what = A C-arm over a lumbar spine.
welcome-first = Make a true AP: say which way, then follow the arrow on the film.
welcome-tour = Tour
welcome-dismiss = Close this hint

picture-heading = Picture
picture-keys = Picture. Arrow keys turn the C-arm.
picture-label = Fluoroscopic view, { $place }
picture-description = Description
picture-hint = Drag the picture to turn: the receptor goes the way you drag. The sliders do the same. Wheel or two fingers enlarge it, a double tap shows all of it.
picture-zoomed = Film { $times } times its size.
picture-whole = The whole film.

## Loading the engine. $why is a short reason.

loading-failedFetch = The engine did not load ({ $why }). Check the connection and try again; the steps and the C-arm drawing still work.
loading-failedStart = The engine could not be started ({ $why }). This needs a browser with WebAssembly; the steps and the C-arm drawing still work.
loading-failedRun = The engine stopped ({ $why }). Load it again to go on; your position is kept.

turn-heading = Turn the C-arm
turn-more = Table and image
turn-reset = Centre the table
turn-straighten = Centre and straighten

rotation-name = Image rotation
rotation-hint = clockwise +
rotation-high = clockwise
rotation-low = counter
rotation-zero = upright
rotation-zeroSpoken = upright, 0 degrees
rotation-turned = { $way ->
    [clockwise] { $deg }° clockwise
   *[counter] { $deg }° counter-clockwise
  }
rotation-turnedSpoken = { $way ->
    [clockwise] { $deg ->
        [one] { $deg } degree clockwise
       *[other] { $deg } degrees clockwise
      }
   *[counter] { $deg ->
        [one] { $deg } degree counter-clockwise
       *[other] { $deg } degrees counter-clockwise
      }
  }

window-contrast = Contrast
window-brightness = Brightness
window-percent = { $n } %
window-percentLess = −{ $n } %

exposure-heading = Exposure
exposure-source = Where the picture comes from
exposure-live = Free live picture
exposure-exposures = Picture only by exposure
exposure-liveNote = For practice: the picture follows the C-arm and costs nothing.
exposure-exposuresNote = Turning the C-arm shows nothing new. The last picture stays until the next exposure, and each exposure costs dose. A new patient or start begins a new record.
exposure-beam = Beam
exposure-spot = Spot
exposure-fluoroscopy = Fluoroscopy
exposure-hold = Hold the button, or hold Space while it has the focus. Escape stops the beam. Under Exposure it can be set to stay on.
exposure-latch = Fluoroscopy stays on until pressed again
exposure-settings = Beam settings
exposure-pulseRate = Pulses of fluoroscopy
exposure-rate = { $n } a second
exposure-magnification = Magnification
exposure-magnified = { $times ->
    [1] whole field
   *[other] { $times } times
  }
exposure-lowDose = Low dose
exposure-width = Field width
exposure-height = Field height
exposure-open = { $n } %
exposure-none = No picture yet. Press Spot, or hold Fluoroscopy.
exposure-noPicture = No picture yet.
exposure-kind-spot = spot
exposure-kind-fluoroscopy = fluoroscopy
# The line under the picture. $where is the angles, with the level before them if another is chosen now.
exposure-on = Beam on: { $where }.
exposure-last = Last picture ({ $kind }): { $where }.
exposure-lastMoved = Last picture ({ $kind }): { $where }. C-arm moved since.
exposure-onMoved = Beam on: { $where }. C-arm moved since.
exposure-whereOf = { $level }, { $oblique }, { $tilt }
exposure-where = { $oblique }, { $tilt }
exposure-alternative = Last X-ray picture, { $kind }, of { $level }, taken with the receptor { $oblique } and { $tilt }.
exposure-alternativeMoved = Last X-ray picture, { $kind }, of { $level }, taken with the receptor { $oblique } and { $tilt }. The C-arm has moved since.
exposure-said = { $kind ->
    [spot] Spot picture taken: receptor { $oblique } and { $tilt }. So far { $exposures }, kerma–area product { $product } mGy·cm².
   *[fluoroscopy] Beam off, last picture held: receptor { $oblique } and { $tilt }. So far { $exposures }, kerma–area product { $product } mGy·cm².
  }
exposure-count = { $n ->
    [one] { $n } exposure
   *[other] { $n } exposures
  }
exposure-spent = Dose so far
exposure-figureName-exposures = Exposures
exposure-figureName-beam = Beam time
exposure-figureName-kerma = Reference air kerma
exposure-figureName-product = Kerma–area product
exposure-figureName-technique = Last exposure
exposure-figure-beam = { $n } s
exposure-figure-kerma = { $n } mGy
exposure-figure-product = { $n } mGy·cm²
exposure-figure-technique = { $kvp } kVp, { $mas } mAs
exposure-nothing-exposures = 0
exposure-nothing-beam = 0 s
exposure-nothing-kerma = 0 mGy
exposure-nothing-product = 0 mGy·cm²
exposure-nothing-technique = none
exposure-estimate = Estimate at the reference point, free in air; not skin dose.
exposure-saving = { $habit ->
    [half_field] Closing both pairs of shutters to half the field would have saved about { $percent } %.
    [low_dose] The low-dose mode would have saved about { $percent } %.
    [slow_pulses] Four pulses a second would have saved about { $percent } %.
   *[fewer_exposures] Half as many exposures would have saved about { $percent } %.
  }
exposure-reset = Reset
exposure-resetLong = Reset the dose
exposure-save = Save dose.json
exposure-saveLong = Save dose.json, the dose in DICOM terms and units
exposure-wasReset = The dose record begins again at nothing.

checks-heading = How close
checks-view = View to check
checks-selfTest = Self-test
checks-selfTestHint = Hides values and advice until you ask.
checks-none = The checks come with the picture.
checks-count = { $n ->
    [0] No checks used yet
    [one] { $n } check used
   *[other] { $n } checks used
  }
# $view is checks-views of the picture's texts.
checks-standsAtBest = The C-arm stands at the best { $view } view this machine can reach here; an exposure shows it. It does not count for the steps.
checks-showingBest = This is the best { $view } view this machine can reach here. It does not count for the steps.
checks-bestLocked = The best view can be shown after a check.
checks-allGood = Nothing left to correct.

steps-heading = Steps
steps-done = done
steps-current = now
steps-later = to come
steps-doIt = Do
steps-lookFor = Look for
steps-progress = { $done } of { $all }
steps-ticked = Step done: { $title }.
steps-allDone = All four steps done. Take another start, side or level, and try again in self-test.
steps-testHint = In self-test a step is ticked when you check your view.
steps-keep = Keep this view
steps-whichWay = Which way?
steps-start = New start
steps-startLong = New start at a random position
steps-again = Same start
steps-againLong = Same start position once more

steps-true_ap-title = True AP
steps-true_ap-act = Turn oblique, left or right, until the beam passes straight through { $level } from back to front.
steps-true_ap-look = { $level ->
    [S1] The crest in the midline of the sacrum stands midway between the two S1 pedicles, and both sides look alike.
   *[other] The spinous process of { $level } stands midway between its two pedicles. Both pedicles look alike and sit equally far from the edge of the body.
  }
steps-square-title = Square the end plate
steps-square-act = Leave oblique alone. Tilt cephalad or caudad.
steps-square-look = The front and the back rim of the { $level } upper end plate come together: the flat ellipse closes to one crisp line and the disc space opens.
steps-oblique-title = { $side ->
    [left] Oblique to the left
   *[right] Oblique to the right
  }
steps-oblique-act = { $side ->
    [left] Keep the tilt. Turn the receptor to the patient’s left.
   *[right] Keep the tilt. Turn the receptor to the patient’s right.
  }
steps-oblique-look = { $level ->
    [S1] The back and the front opening of the first sacral foramen slide over each other until they show as one bright gap below the S1 pedicle.
   *[other] The dog appears, with the { $level } pedicle for its eye. Go on until the ear of the next dog down, the superior articular process of { $below }, stands under that eye with its lateral edge below the eye’s middle.
  }
steps-square_again-title = Square again
steps-square_again-act = Going oblique has tipped the plate a little. Tilt until it closes again, and put oblique right if that moved things.
steps-square_again-look = { $level ->
    [S1] Both at once: the S1 end plate is one line, and the foramen openings still lie over each other.
   *[other] Both at once: the { $level } upper end plate is one line, and the { $below } process still stands under the pedicle.
  }

gantry-heading = C-arm and patient
gantry-short = C-arm
gantry-feet = From the feet: { $oblique }
gantry-side = From the patient’s right: { $tilt }
gantry-describeFeet = C-arm seen from the feet, patient prone, patient’s left on the left. The receptor above is { $oblique }; the source is opposite, under the table.
gantry-describeSide = C-arm seen from the patient’s right, head on the right. The receptor above is tilted: { $tilt }; the source is opposite, under the table.
gantry-receptor = receptor
gantry-source = source
gantry-left = left
gantry-right = right
gantry-head = head
gantry-feetEnd = feet

notice-dismiss = Close this message
notice-badFragment = The address asks for { $key } “{ $value }”; allowed is { $allowed }. The default was used instead.
notice-unknownFragment = The address has an unknown entry “{ $key }”; it was ignored.
notice-noPart = “{ $name }” could not be loaded ({ $why }). Everything else goes on working; try again.
notice-noPartYet = “{ $name }” could not be loaded ({ $why }). Everything else goes on working; load the page again to have it.
notice-tools = Views so far, comparing and saving
notice-noLanguage = The page’s language “{ $tag }” could not be loaded; it goes on in English.
notice-offlineKept = No network. Everything here goes on working: the page is kept on this device.
notice-offline = No network. What is open goes on working; what has not been opened yet needs the network.
notice-online = The network is back.
notice-noStorage = This browser does not keep settings for this page; they last until you close it.

bench-title = Downbeam: how long a frame takes
bench-done = { $n } frames over an orbit, canvas 512 and 1024 pixels
bench-running = Measuring { $n } frames over an orbit
bench-failed = The engine did not load: { $why }
bench-median = median, ms
bench-slow = 95th percentile, ms
bench-rows-radiograph = radiograph
bench-rows-outlines = outlines, drawn
bench-rows-report = report
bench-rows-frame = whole frame
bench-rows-still = film at rest, 1024 pixels
bench-rows-patient = new patient
