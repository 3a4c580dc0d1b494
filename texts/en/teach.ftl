### The teacher’s pages.

skip = Skip to the content
theme = Theme
dismiss = Close this message
caution = Teaching model, not for clinical use: never plan or guide a procedure with it. Follow local policy, supervised training and licensed practice.

pages-name = Pages
pages-room = Practise
pages-author = Make a lesson
pages-check = Check a class
pages-model = About the model

noStorage = This browser does not keep settings for this page; they last until you close it.
percent = { $n } %
stopped = The engine stopped ({ $why }). Load the page again and choose the files once more.
noEngine = The engine did not load ({ $why }). Check the connection and load the page again.
loading = Loading the engine.
again = Load again

## Counts, which stand in other sentences

receipts = { $n ->
    [one] { $n } receipt
   *[other] { $n } receipts
  }
files = { $n ->
    [one] { $n } file
   *[other] { $n } files
  }
learners = { $n ->
    [one] { $n } learner
   *[other] { $n } learners
  }

shelf-noList = The list of lessons that come with Downbeam could not be loaded. Add the lessons of your class yourself.
shelf-missing = The lesson “{ $name }” that comes with Downbeam could not be loaded.
shelf-tooLarge = { $name }: a lesson file has at most 32 kB.
shelf-notText = { $name }: is not UTF-8 text.
shelf-bad = { $name }: { $why }

check-title = Downbeam: check a class
check-heading = Check a class
check-lead = Give the receipts that your learners handed in. Each is replayed here, in this browser, and nothing is uploaded.
check-receipts = Receipts
check-drop = Drop files or a folder here, or choose them.
check-files = Choose files
check-folder = Choose a folder
check-kinds = A receipt a file (.json, .txt), or a receipt a line (.ndjson, .jsonl, .txt). Of a folder, all below it is searched.
check-reading = Reading file { $n } of { $all }
check-checking = Checked { $n } of { $receipts }
check-waiting = Waiting for the engine
check-cancel = Stop
check-stopped = Stopped: { $n } checked, { $left } not yet.
check-stoppedReading = Stopped while reading: { $n } of { $files } read.
check-done = { $n ->
    [one] { $n } receipt checked.
   *[other] { $n } receipts checked.
  }
check-goOn = Go on checking
check-clear = Remove all receipts
check-cleared = All receipts are removed from this page.
check-nothing = There is no receipt among these files: of a folder, .json, .ndjson, .jsonl and .txt files are taken.
check-leftOut = { $n ->
    [one] { $n } file of another kind left out:
   *[other] { $n } files of another kind left out:
  }
check-more = and { $n } more
check-notText = is not UTF-8 text
check-gone = cannot be read any more.
check-lessons = Lessons
check-lessonsWhy = A receipt is checked against the lesson it was made on. If you set a lesson of your own, add it here.
check-lessonsState = { $n ->
    [one] { $n } lesson that came with Downbeam.
   *[other] { $n } lessons that came with Downbeam.
  }
check-lessonsStateOwn = { $n ->
    [one] { $n } lesson that came with Downbeam, { $own } of your own.
   *[other] { $n } lessons that came with Downbeam, { $own } of your own.
  }
check-addLesson = Add a lesson file
check-link = Or the link of a lesson
check-addLink = Add the link
check-added = Added: { $title }.
# $receipts is a count of receipts.
check-countsStopped = { $receipts } checked, { $left } not yet
check-status-verified = Verified
check-status-altered = Altered
check-status-unknown_engine = Unknown engine
check-status-unknown_lesson = Unknown lesson
check-status-unreadable = Unreadable
check-status-copies = Same log
check-statusMeans-verified = the log gives the score that is claimed
check-statusMeans-altered = the log gives something else
check-statusMeans-unknown_engine = scored by another version: check with that one
check-statusMeans-unknown_lesson = not among the lessons here
check-statusMeans-unreadable = no receipt; named below
check-statusMeans-copies = as another learner’s; counted in their status too
check-unread = Not readable as a receipt
check-csv = Save CSV
check-ndjson = Save NDJSON
check-print = Print
check-file-csv = class.csv
check-file-ndjson = class.ndjson
check-lesson-sums = { $receipts }, { $verified } verified. { $learners }, { $passed } passed; mean { $mean }. Of several receipts of a learner the best counts.
check-lesson-nothing = { $receipts }, none verified: there is nothing to say about the class yet.
check-lesson-gates = What failed whatever the marks
check-lesson-gate = { $gate }: { $names }
check-lesson-band-under25 = under 25 %
check-lesson-band-to49 = 25 to 49 %
check-lesson-band-to74 = 50 to 74 %
check-lesson-band-from75 = 75 % and more
# $bands: how many learners are in each of the bands, with its name.
check-lesson-bar = { $step }: { $bands }
check-lesson-bandCount = { $n } { $band }
check-lesson-names = { $n }: { $names }
check-lesson-moreNames = { $n } more
check-lesson-caption = { $title }: learners by step and marks
check-lesson-columns-step = Step
check-lesson-columns-bands = Learners by marks
check-lesson-columns-mean = Mean
check-lesson-columns-below = Under the pass mark
check-lesson-key = Marks in the step
check-lesson-nobody = nobody
check-lesson-fewer = fewer
check-lesson-numbers = The same in numbers
check-learners-list = Class list
check-learners-listWhy = A CSV with a code and a name a line. It stays in this page: receipts hold codes only. Or give names alone, a name a line, and each gets a code.
check-learners-choose = Choose a class list
check-learners-deal = Deal out codes to names
check-learners-dealt = Each name has its code: the list has been saved as a file and is used here.
check-learners-state = { $n ->
    [one] { $n } learner on the list.
   *[other] { $n } learners on the list.
  }
check-learners-tooLarge = is larger than 1 MB, the most for a class list
check-learners-notText = is not UTF-8 text: save it from the spreadsheet as “CSV UTF-8”
check-learners-heading = Learner by learner
check-learners-separator = For a spreadsheet with
check-learners-comma = decimal points (comma between)
check-learners-semicolon = decimal commas (semicolon between)
check-learners-tab = tabs between
check-learners-save = Save the gradebook
check-learners-file = gradebook.csv
check-learners-codesFile = class-list.csv
check-learners-named = { $name } ({ $code })
check-learners-notListed = { $code } (not on the list)
check-learners-missing = { $n ->
    [one] { $n } has handed in nothing: { $names }
   *[other] { $n } have handed in nothing: { $names }
  }
check-learners-nothing = nothing yet
check-learners-noneVerified = { $n ->
    [one] { $n } try, not verified
   *[other] { $n } tries, none verified
  }
# $totals: the scores of the tries one after the other.
check-learners-tries = tries: { $totals }
check-learners-rows = { $n ->
    [one] Look at row { $rows }
   *[other] Look at rows { $rows }
  }
check-learners-columns-learner = Learner
check-learners-columns-lookAt = To know
check-rows-heading = Receipts one by one
check-rows-byStatus = Status
check-rows-byLesson = Lesson
check-rows-all = All
check-rows-shownAll = { $n ->
    [one] { $n } row
   *[other] { $n } rows
  }
check-rows-shownOf = { $all ->
    [one] { $n } of { $all } row
   *[other] { $n } of { $all } rows
  }
check-rows-more = Show { $n } more
check-rows-sort = Sort by { $name }
check-rows-weakest = { $name }, { $percent }
check-rows-sameLog = Same log as row { $n }, of another learner.
check-rows-alike = { $percent } in common with row { $n }, of another learner.
check-rows-repeat = Row { $n } again.
check-rows-gatesFailed = Fails whatever the marks: { $names }.
check-rows-place = { $source }, line { $line }
check-rows-columns-number = No.
check-rows-columns-learner = Learner
check-rows-columns-lesson = Lesson
check-rows-columns-status = Status
check-rows-columns-total = Score
check-rows-columns-weakest = Weakest step
check-rows-columns-note = To know
check-rows-columns-source = File
check-rows-noCode = no code
check-rows-noLearner = not known
check-rows-passed = passed
check-rows-notPassed = not passed
check-rows-incomplete = not complete
check-rows-none = No receipt fits this choice.
check-proof-heading = What a receipt proves
check-proof-can = It proves that its log, replayed by this engine on this learner’s patient, gives its score.
check-proof-cannot = It does not prove who did it, that a person did it, or when: a page can keep no secret, so there is no signature in it.
check-proof-identity = Identity comes from where the file was handed in: your learning platform, or a mail. If it matters, let the learner do one more under your eyes.
check-proof-privacy = Receipts hold a code and no name, unless a learner took the name as code. Closing this page forgets them.

author-title = Downbeam: make a lesson
author-heading = Make a lesson
author-lead = Fill in the form, hand out the link or the file. What is wrong is said beside its field while you write; nothing is uploaded.
author-start = Start from
author-shipped = A lesson that comes with Downbeam
author-pick = Choose a lesson
author-file = Open a lesson file
author-fresh = New lesson
author-before = Bring back what was here before
author-link = Or the link of a lesson
author-openLink = Open the link
author-replaced = The form holds another lesson now.
author-broughtBack = The lesson from before is back.
author-draft = What you were working on is back. It is kept in this browser only.
author-noDraft = This browser does not keep your work for this page: save the file before you close it.
author-waits = The JSON cannot be read at the moment, so the form waits. Mend it there, or take up the form’s last lesson again.
author-again = Take up the form’s last lesson
author-sections-about = Name and texts
author-sections-task = What is asked
author-sections-who = Patient and target
author-sections-way = Needle and pictures
author-sections-marks = Marks
author-id = Id
author-idHint = Small letters, digits, hyphens. Receipts name the lesson by it, so do not change it while a class is at work.
author-language = Texts in “{ $tag }”
author-titleIn = Title ({ $tag })
author-introIn = What the learner reads before it ({ $tag })
author-removeLanguage = Remove { $tag }
author-newLanguage = Another language (such as de or pt-BR)
author-addLanguage = Add the language
author-twice = This language is there already.
author-mode = Help
author-modes-guided = Guided
author-modes-practice = Practice
author-modes-assessment = Assessment
author-modeNotes-guided = Hints all along, and the picture is live.
author-modeNotes-practice = Hints when they are asked for.
author-modeNotes-assessment = No hints; nothing is seen without an exposure.
author-steps = Steps that are asked and scored
author-parts = Parts to name
author-partsHint = Asked one after the other, in an order drawn by the learner’s code; only with the step “Parts named”.
author-part = Part
author-partNumber = Part { $n }
author-removePart = Remove part { $n }
author-bone = Bone
author-bones-target = of this bone
author-bones-below = of the next down
author-partSide = Side
author-partSides-needle = needle side
author-partSides-other = other side
author-addPart = Add a part
author-patient = Patient
author-level = Level
author-side = Side of the needle
author-sides-left = Left
author-sides-right = Right
author-one = The same for everybody
author-several = One of several, by the learner’s code
author-which = { $name }, which
author-among = { $name }, among these
author-seed = Small differences between patients of the same build
author-seeds-none = The same for everybody (0)
author-seeds-learner = By the learner’s code
author-seeds-number = By a number
author-seedNumber = Number
author-approach = Way into the foramen
author-approaches-none = Under the pedicle, as usual
author-approaches-subpedicular = Under the pedicle
author-approaches-infraneural = Under the root
author-approaches-open = The learner chooses
author-medium = What the needle bends as in
author-media-none = Muscle, as usual
author-media-muscle = Muscle
author-media-gel = Gel
author-exposures = Pictures
author-exposuresChoice-none = As usual for the help
author-exposuresChoice-true = By exposure only
author-exposuresChoice-false = Live and free
author-exposuresNote = As usual means: by exposure only in an assessment, live and free otherwise.
author-pass = Pass mark, percent of all marks
author-par = What a good hand needs
author-parHint = Only with exposures. Full marks up to it, none from three times as much.
author-pars-exposures = Exposures
author-pars-beam_s = Beam time, seconds
author-tolerances = Limits other than the usual
author-tolerancesHint = Full marks up to the first number, none from the second. Leave both empty for the usual ones; they are common practice, not from a source.
author-usual = usual { $value }
author-fullOf = { $name }: full marks up to
author-noneOf = { $name }: no marks from
author-unknown = { $value } (not known here)
author-full = full marks up to
author-none = none from
author-tolerance-squared_deg = Ray against end plate, degrees
author-tolerance-spinous_percent = Spinous process off the middle, % of the pedicles’ spacing
author-tolerance-facet_percent = Process below off the pedicle’s middle, % of its width
author-tolerance-lateral_mm = Left and right pedicle apart in the lateral, mm
author-tolerance-mid_plate_percent = Process below off the plate’s middle, % of half the plate
author-tolerance-foramen_mm = Sacral foramina apart, mm
author-tolerance-mark_mm = Mark outside the area aimed at, mm
author-tolerance-coaxial_deg = Shaft against beam, degrees
author-tolerance-off_mark_mm = Tip off the mark at the end, mm
author-tolerance-medial_mm = Tip medial of the 6 o’clock line, mm
author-tolerance-depth_mm = Tip outside its part of the foramen, mm
author-hand = Hand it out
author-good = This lesson can be used.
author-bad = { $n ->
    [one] { $n } thing is to be put right:
   *[other] { $n } things are to be put right:
  }
author-atPlace = { $place }: { $problem }
author-linkName = Link that carries the whole lesson
author-linkNote = What stands behind # is not sent to any server.
author-handout = Text to hand out
author-copyHandout = Copy the text
author-handoutCopied = Text copied.
author-checkLink = Check what comes back
# The text for learners: title, link, code, pass mark, what to hand in; a line each.
author-handoutOpen = Practice: { $title }. Open this link in a browser; nothing is installed and nothing is sent:
author-handoutCode = Enter the code that you were given: your patient is drawn by it.
author-handoutNoCode = Enter your code, if you were given one.
author-handoutMark = You pass from { $mark } percent on. Try as often as you like.
author-handoutEnd = At the end save the receipt and hand that file in. A teaching model, not for clinical use.
author-noLink = There is a link once everything is right.
author-copy = Copy link
author-copied = Link copied.
author-notCopied = The browser does not let this page copy: the link is selected, copy it by hand.
author-save = Save file
author-tryIt = Try it
author-newTab = (opens a new tab)
author-hash = Fingerprint (SHA-256 of what is asked; titles and texts do not change it)
author-noHash = none yet
author-drawn = What a learner gets
author-code = Learner’s code
author-codeNote = The code decides what is drawn.
author-noCode = Every learner gets the same.
author-patientLine = { $name }: { $sentence }
author-another = Another code
author-sample = sample { $n }
# $place is a level and a side.
author-gets = { $patient }, { $place }, seed { $seed }.
author-nothingDrawn = Shown once everything is right.
author-views-true_ap = True AP
author-views-oblique = Oblique
author-views-lateral = Lateral
author-view = View
author-picture-loading = Loading the picture
author-picture-shaping = Shaping the patient
author-picture-failed = There is no picture ({ $why }). The lesson is not touched by that.
# $at is where the receptor stands.
author-picture-caption = { $view ->
    [true_ap] Best true AP view of { $place }: { $at }.
    [oblique] Best oblique view of { $place }: { $at }.
   *[lateral] Best lateral view of { $place }: { $at }.
  }
author-picture-alternative = { $view ->
    [true_ap] Computed X-ray picture, best true AP view of { $place }, outlines of the target drawn in.
    [oblique] Computed X-ray picture, best oblique view of { $place }, outlines of the target drawn in.
   *[lateral] Computed X-ray picture, best lateral view of { $place }, outlines of the target drawn in.
  }
author-picture-none = { $view ->
    [true_ap] There is no true AP view to score at { $level }.
    [oblique] There is no oblique view to score at { $level }.
   *[lateral] There is no lateral view to score at { $level }.
  }
author-json = The lesson file
author-jsonNote = Form and file are the same lesson: change either.
author-jsonName = Lesson as JSON
check-lesson-histogram = { $title }: learners by total
check-lesson-totals = Learners by total
check-lesson-tenth = { $from }–{ $to } %
check-lesson-columns-learners = Learners
check-lesson-columns-total = Total
check-lesson-columns-quartiles = Quartiles
check-learners-pressName = Press a name for every try of that learner.
check-learners-everyTry = { $name }: every try
check-learners-oneColumns-row = Row
check-learners-oneColumns-lesson = Lesson
check-learners-oneColumns-result = Result
check-learners-oneColumns-replay = Replay
check-learners-replay = Replay
check-learners-replayOf = Replay row { $n }
check-learners-replayNote = A replay opens the attempt on the practice page and plays it back on a time line, with the places where marks were lost; closed, undo goes back step by step. Its address carries the attempt whole; no server gets it.
