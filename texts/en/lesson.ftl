### Lessons.

heading = Lessons
intro = In the order of the course. Nothing leaves this page: at the end you get a receipt to hand in.
loading = The lessons are being loaded.
none = The course is empty here. Open a lesson file that you were given, or one that you wrote.
retry = Try again
open = Open a lesson file
tooLarge = the file is larger than 32 kB, the most that a lesson may have

mode-guided = guided
mode-practice = practice
mode-assessment = assessment

modeNote-guided = Guided: what comes next is always shown.
modeNote-practice = Practice: a hint when you ask for it.
modeNote-assessment = Assessment: no hints, no readings, no outlines until you finish, and nothing is seen without an exposure. What is finished stays finished.

exposures = Pictures come from exposures only, and they count.
begin = Begin
beginAnew = Begin anew
toList = All lessons
leave = Leave the lesson
code = Your code
codeHint = A code from your teacher or of your own, not your name. It draws your patient: with the same code you meet the same one again. At most 64 characters.
codeWanted = This lesson draws your own patient: type a code first.
codeOptional = Stands in the receipt, so that your teacher knows whose it is. It may stay empty.
steps = What is asked
hintDone = Everything that the lesson asks for is done: finish.
incomplete = Not every step was done; what is missing counts nothing.
receipt = Save the receipt
receiptNote = Hand the receipt in where your teacher asks for it. It holds your code, every action and the marks; replayed by the same engine it gives the same marks. It does not prove who did it.
again = Once more
notKept = This browser keeps nothing for this page: progress lasts until it is closed. Save the receipt before you leave.
notHeldHere = Progress is not kept in this place: finish in one go, or save the receipt before you leave.
left = You have left the lesson; it is kept as it was.

progress-save = Save progress
progress-open = Open progress
progress-bad = That file holds no progress of this page; nothing was changed.

naming-allFound = All parts are found.
naming-how = Press an outline on the picture: it lights up. Press it again, or the button, to answer. By keyboard, on the picture: arrow keys go from outline to outline, Enter answers. The C-arm may be turned.
naming-answer = This one
naming-previous = Previous outline
naming-following = Next outline
naming-none = No outline there: press nearer to a line.
naming-chosen = An outline is lit.
naming-first = Choose an outline first.

teach-heading = For teachers:
teach-check = Check receipts
teach-author = Write a lesson
