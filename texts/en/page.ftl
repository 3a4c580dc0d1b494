### The page.

title = Downbeam: C-arm views of the lumbar spine
subtitle = C-arm views of the lumbar spine
skip = Skip to the picture
noscript = This page computes X-ray views in your browser and needs JavaScript and WebAssembly.

case-heading = Case
case-level = Level
case-side = Side
case-left = Left
case-right = Right
case-patient = Patient
case-theme = Theme
case-dark = Dark room
case-light = Light
case-device = As the device

menu-name = Menu
menu-check = Teachers: check receipts
menu-author = Teachers: set a lesson
menu-model = About the model
menu-tour = Tour of the page
menu-keys = Keys
menu-read = Read the picture

welcome-what = A C-arm over a lumbar spine.
welcome-first = Make a true AP: turn and tilt as “How close” advises.
welcome-tour = Tour
welcome-dismiss = Close this hint

picture-heading = Picture
picture-keys = Picture. Arrow keys turn the C-arm.
picture-description = Description
picture-hint = Drag the picture to turn: the receptor goes the way you drag. The sliders do the same.

turn-heading = Turn the C-arm
turn-more = Table and image
turn-reset = Centre the table
turn-straighten = Centre and straighten

rotation-name = Image rotation
rotation-hint = clockwise +
rotation-high = clockwise
rotation-low = counter

window-contrast = Contrast
window-brightness = Brightness

table-name = Move the table
table-left = Left
table-right = Right
table-head = To the head
table-feet = To the feet
table-by = Move the table 5 mm:

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
exposure-magnification = Magnification
exposure-lowDose = Low dose
exposure-width = Field width
exposure-height = Field height
exposure-none = No picture yet. Press Spot, or hold Fluoroscopy.
exposure-noPicture = No picture yet.
exposure-kind-spot = spot
exposure-kind-fluoroscopy = fluoroscopy
exposure-spent = Dose so far
exposure-figureName-exposures = Exposures
exposure-figureName-beam = Beam time
exposure-figureName-kerma = Reference air kerma
exposure-figureName-product = Kerma–area product
exposure-figureName-technique = Last exposure
exposure-nothing-exposures = 0
exposure-nothing-beam = 0 s
exposure-nothing-kerma = 0 mGy
exposure-nothing-product = 0 mGy·cm²
exposure-nothing-technique = none
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
checks-bestLocked = The best view can be shown after a check.
checks-allGood = Nothing left to correct.

steps-heading = Steps
steps-done = done
steps-current = now
steps-later = to come
steps-doIt = Do
steps-lookFor = Look for
steps-allDone = All four steps done. Take another start, side or level, and try again in self-test.
steps-testHint = In self-test a step is ticked when you check your view.
steps-start = New start
steps-startLong = New start at a random position
steps-again = Same start
steps-againLong = Same start position once more

gantry-heading = C-arm and patient
gantry-receptor = receptor
gantry-source = source
gantry-left = left
gantry-right = right
gantry-head = head
gantry-feetEnd = feet

notice-dismiss = Close this message
notice-offlineKept = No network. Everything here goes on working: the page is kept on this device.
notice-offline = No network. What is open goes on working; what has not been opened yet needs the network.
notice-online = The network is back.
notice-noStorage = This browser does not keep settings for this page; they last until you close it.

bench-title = Downbeam: how long a frame takes
bench-rows-radiograph = radiograph
bench-rows-outlines = outlines, drawn
bench-rows-report = report
bench-rows-frame = whole frame
bench-rows-patient = new patient
