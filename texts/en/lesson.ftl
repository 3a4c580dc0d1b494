### Lessons.

## The course

heading = Lessons
intro = In the order of the course. Nothing leaves this page: at the end you get a receipt to hand in.
loading = The lessons are being loaded.
none = The course is empty here. Open a lesson file that you were given, or one that you wrote.
# $why is a reason, without a full stop, here and below.
noList = The course could not be shown: { $why }. Check the connection and try again; the views and the injection go on working.
noEngine = The part of the page that reads lessons could not be loaded: { $why }. The views and the injection still work.
noFile = { $name } could not be loaded
unreadable = This lesson cannot be opened: { $why }. The page is as it was.
# $id is what the address asks for.
unknown = There is no lesson “{ $id }” in the course; the list shows those there are.
retry = Try again
open = Open a lesson file
# A reason, as above.
tooLarge = the file is larger than 32 kB, the most that a lesson may have

# How much a lesson helps.
mode-guided = guided
mode-practice = practice
mode-assessment = assessment

modeNote-guided = Guided: what comes next is always shown.
modeNote-practice = Practice: a hint when you ask for it.
modeNote-assessment = Assessment: no hints, no readings, no outlines until you finish, and nothing is seen without an exposure. What is finished stays finished.

exposures = Pictures come from exposures only, and they count.
# Where the learner stands in a lesson.
standingNew = new
standingBegun = begun
standingDone = { $passed ->
    [yes] passed, best { $points } of 100
   *[no] not yet passed, best { $points } of 100
  }

## One lesson

begin = Begin
# An action is what the learner has done: a turn, a push of the needle.
goOn = { $n ->
    [one] Go on where you left off ({ $n } action)
   *[other] Go on where you left off ({ $n } actions)
  }
beginAnew = Begin anew
toList = All lessons
leave = Leave the lesson
# It tells a learner’s receipts apart.
code = Your code
codeHint = A code from your teacher or of your own, not your name. It draws your patient: with the same code you meet the same one again. At most 64 characters.
codeWanted = This lesson draws your own patient: type a code first.
codeOptional = Stands in the receipt, so that your teacher knows whose it is. It may stay empty.
steps = What is asked
passMark = Passed from { $n } of 100.
gates = What fails it whatever the marks
# $place is a level and a side: “L4 left”.
drawn = Your patient: { $patient }, { $place }.
running = Lesson: { $title }
hintDone = Everything that the lesson asks for is done: finish.
hintOpen = Not every step is done: go back to one that was left open, or finish as it stands.
done = { $passed ->
    [yes] { $points } of 100: passed.
   *[no] { $points } of 100: not passed yet.
  }
incomplete = Not every step was done; what is missing counts nothing.
# The file that a learner hands in.
receipt = Save the receipt
receiptNote = Hand the receipt in where your teacher asks for it. It holds your code, every action and the marks; replayed by the same engine it gives the same marks. It does not prove who did it.
again = Once more
next = Next: { $title }
bad = The receipt could not be made: { $why }.
notKept = This browser keeps nothing for this page: progress lasts until it is closed. Save the receipt before you leave.
notHeldHere = Progress is not kept in this place: finish in one go, or save the receipt before you leave.
left = You have left the lesson; it is kept as it was.

## Progress, kept in a file

progress-save = Save progress
progress-open = Open progress
progress-opened = { $n ->
    [one] Progress of { $n } lesson taken in.
   *[other] Progress of { $n } lessons taken in.
  }
progress-bad = That file holds no progress of this page; nothing was changed.

## Naming the parts of a bone in the picture

# A part of a bone, such as “left pedicle of L4”: said in the sentences below as $part.
naming-part = { $side ->
    [left] left { $part } of { $level }
    [right] right { $part } of { $level }
   *[none] { $part } of { $level }
  }
naming-ask = Point at the { $part }.
naming-allFound = All parts are found.
# Where to look for a part, in words of the oblique picture, where a vertebra looks like a small dog.
naming-hint = { $part ->
    [transverse_process] The transverse process of { $level } is the dog’s nose: it juts out sideways from the pedicle, towards the needle’s side.
    [pedicle] The pedicle of { $level } is the dog’s eye: a ring under the upper end plate.
    [superior_articular_process] The superior articular process of { $level } is the dog’s ear: it points up from the eye, to the level above.
    [pars] The pars of { $level } is the dog’s neck: the narrow bridge between ear and foreleg.
    [lamina] The lamina of { $level } is the dog’s body: the broad plate towards the midline.
    [inferior_articular_process] The inferior articular process of { $level } is the dog’s foreleg: it points down to the level below.
    [spinous_process] The spinous process of { $level } stands at the midline, behind the dog’s body.
    [body] The body of { $level } is the large block between its two end plates.
   *[other] Look along the outlines of { $level }; one after the other lights up when it is pressed.
  }
naming-count = { $found } of { $all } found
naming-how = Press an outline on the picture: it lights up. Press it again, or the button, to answer. By keyboard, on the picture: arrow keys go from outline to outline, Enter answers. The C-arm may be turned.
naming-answer = This one
naming-previous = Previous outline
naming-following = Next outline
naming-none = No outline there: press nearer to a line.
naming-chosenOf = Outline { $i } of { $n } is lit.
naming-chosen = An outline is lit.
naming-first = Choose an outline first.
naming-right = Right: the { $part }.
# The part that was pointed at; then the one that was asked for.
naming-wrong = No: that is the { $part }.
naming-shown = The { $part } is lit now; it will be asked again.
naming-later = The { $part } will be asked again.

## Pages for teachers

teach-heading = For teachers:
teach-check = Check receipts
teach-author = Write a lesson
completion-open = A page to print
completion-note = For a portfolio. Name and date stand on it as you give them; they are neither kept nor sent.
completion-name = Name
completion-day = Date
completion-print = Print
completion-heading = { $passed ->
    [yes] Lesson passed
   *[no] Lesson done, not passed
  }
completion-code = Code
completion-lesson = Lesson
completion-patient = Patient
completion-dayGiven = Date, as given
completion-engine = Scored by
completion-engineLine = Downbeam { $version }, engine { $scoring }, lesson { $hash }
completion-caution = Practice on a computed model. It says nothing about skill on patients and allows no clinical work: follow local policy, supervised training and licensed practice. Anyone can print such a page; what can be checked is the receipt.
completion-patientLine = { $patient }, { $place }
