### Practice: a day's round, the learning curve, a round in a class.

title = Downbeam: daily round
classTitle = Downbeam: a round for a class
heading = Daily round
lead = Nine short films a day, about five minutes. Answer first; then the film moves to what is true, with the reason on it. What you got wrong comes back tomorrow, what you know comes back later.
toClass = For teachers: a round for a class
toPractice = Daily round
noPage = The page stopped ({ $why }). Load it again; what you answered is kept.
noEngine = The practice module did not load ({ $why }). Check the connection and load the page again.
loading = Loading the films.
noKeep = This browser keeps nothing for this page: your answers last until you close it. Save them as a file below.
badKeep = What this browser kept of your practice cannot be read ({ $why }), so it was left as it is and nothing new is written over it. Save today's answers as a file.

## Before a round

due = { $n ->
    [0] Nothing is due today. A round now brings what is new.
    [one] { $n } decision is due again today.
   *[other] { $n } decisions are due again today.
  }
begun = { $begun } of { $all } decisions begun, each at five or six levels and on two sides; { $n ->
    [one] { $n } answer
   *[other] { $n } answers
  } so far.
begin = Begin today’s round
more = Another round

## A question

progress = Question { $n } of { $all }
placeStage = { $level } { $side ->
    [left] left
   *[right] right
  }, stage { $stage } of 6
shaping = The patient is being shaped.
film = Film of a computed patient
filmAt = Oblique { $oblique }°, tilt { $tilt }°.
asked-way-true_ap = This is to become a true AP of { $level }. Which way does the receptor have to go first?
asked-way-oblique = This is to become the { $side ->
    [left] left
   *[right] right
  } oblique of { $level }, with { $level ->
    [S1] the front opening of the first sacral foramen over its back one
   *[other] the articular process of the level below under the pedicle
  }. Which way does the receptor have to go first?
asked-way-steep_oblique = This is to become the { $side ->
    [left] left
   *[right] right
  } oblique of { $level } for the way under the root: the articular process of the level below at the middle of its own end plate, and that plate squared. Which way does the receptor have to go first?
asked-amount-true_ap = For a true AP of { $level } the receptor has to go { $to ->
    [left] to the patient’s left
    [right] to the patient’s right
    [cephalad] cephalad
   *[caudad] caudad
  }. About how far?
asked-amount-oblique = For the { $side ->
    [left] left
   *[right] right
  } oblique of { $level } the receptor has to go { $to ->
    [left] to the patient’s left
    [right] to the patient’s right
    [cephalad] cephalad
   *[caudad] caudad
  }. About how far?
asked-amount-steep_oblique = For the { $side ->
    [left] left
   *[right] right
  } oblique of { $level } for the way under the root the receptor has to go { $to ->
    [left] to the patient’s left
    [right] to the patient’s right
    [cephalad] cephalad
   *[caudad] caudad
  }. About how far?
asked-part = Which part is under the dot?
asked-step = Which view of { $level }, { $side ->
    [left] left side
   *[right] right side
  }, is this film good for?
asked-true_ap = Is this a true AP of { $level }? If not, why?
asked-clock = The needle is on the { $side ->
    [left] left
   *[right] right
  } side of { $level }. Where does its tip stand on the pedicle’s clock face?
asked-notch_ahead = You look down the beam on the hub; the line shows where its notch looks. Which way does the tip go when you push on?
asked-notch_wanted = You look down the beam on the hub. The tip has to go { $to ->
    [head] towards the head
    [feet] towards the feet
    [patients_left] to the patient’s left
   *[patients_right] to the patient’s right
  }. Where must the notch look?
asked-spread = Contrast at { $level }, { $side ->
    [left] left
   *[right] right
  }. What did it fill?
asked-stop = AP, { $level } { $side ->
    [left] left
   *[right] right
  }. No contrast has been given yet. Stop or go on?
asked-stop-contrast = AP, { $level } { $side ->
    [left] left
   *[right] right
  }. Contrast under live imaging. Stop or go on?
during = While it is injected
later = Seconds later
invert = Bone dark or white

## Answers

turn = { $to ->
    [left] To the patient’s left
    [right] To the patient’s right
    [cephalad] Cephalad
   *[caudad] Caudad
  }
degrees = About { $n }°
part = { $part ->
    [body] Body
    [pedicle] Pedicle
    [pars] Pars interarticularis
    [lamina] Lamina
    [superior_articular_process] Superior articular process
    [inferior_articular_process] Inferior articular process
    [transverse_process] Transverse process
    [ala] Ala
    [median_crest] Median crest
   *[spinous_process] Spinous process
  } of { $level }
view = { $view ->
    [true_ap] True AP
    [oblique] Oblique for the injection
    [lateral] Lateral
   *[none] None of them yet
  }
ap = { $ap ->
    [true_ap] Yes, a true AP
    [spinous_to_left] No: the spinous process stands to the patient’s left
    [spinous_to_right] No: the spinous process stands to the patient’s right
   *[not_squared] No: the end plate is not squared
  }
hour = { $n } o’clock
screen = { $to ->
    [head] Up, to the head
    [feet] Down, to the feet
    [patients_left] To the patient’s left
   *[patients_right] To the patient’s right
  }
pattern = { $pattern ->
    [perineural] Along the root and into the epidural space
    [arterial] An artery
    [venous] A vein
    [mixed] Root and vein
    [intrathecal] The sac
    [subdural] Under the dura
    [intraneural] The root itself
    [intradiscal] The disc
    [facet_joint] The facet joint
    [peritoneal] In front of the column
   *[muscular] Muscle
  }
decide = { $decision ->
    [go_on] Go on
    [stop_medial] Stop: medial of 6 o’clock, and no contrast seen
    [stop_vessel] Stop: it runs into a vessel
   *[stop_sac] Stop: it runs into the sac
  }

## The reason

right = Right.
wrong = Not so. True is: { $answer }.
next = Next
finish = To the result
back = Show the film that was asked
fact-spinous = The spinous process stands { $n } % of the pedicles’ spacing to the patient’s { $way ->
    [left] left
   *[right] right
  } of their middle.
fact-rims = The front rim of the upper end plate stands { $n } mm { $way ->
    [above] above
   *[below] below
  } the back rim.
fact-process = The outline of the process below stands { $n } % of the pedicle’s width to the patient’s { $way ->
    [left] left
   *[right] right
  } of its middle.
fact-midPlate = The outline of the process below stands { $n } % of half the end plate’s width to the patient’s { $way ->
    [left] left
   *[right] right
  } of that plate’s middle.
fact-rimsBelow = The front rim of the upper end plate of the level below stands { $n } mm { $way ->
    [above] above
   *[below] below
  } the back rim.
fact-openings = The front opening of the first sacral foramen stands { $n } mm to the patient’s { $way ->
    [left] left
   *[right] right
  } of the back one.
fact-lateral = The two pedicles stand { $n } mm apart.
fact-tip = The tip stands { $side } mm { $sideWay ->
    [lateral] lateral
   *[medial] medial
  } of the pedicle’s 6 o’clock line and { $down } mm { $downWay ->
    [below] below
   *[above] above
  } the pedicle’s centre.
fact-medial = The tip stands { $n } mm { $way ->
    [medial] medial
   *[lateral] lateral
  } of the pedicle’s 6 o’clock line.
fact-hour = The tip is at { $n } on the clock.
fact-notch = The notch looks { $to ->
    [head] to the head
    [feet] to the feet
    [patients_left] to the patient’s left
   *[patients_right] to the patient’s right
  }.
fact-drifted = Pushed on, the tip goes { $n } mm { $to ->
    [head] to the head
    [feet] to the feet
    [patients_left] to the patient’s left
   *[patients_right] to the patient’s right
  }: away from the notch.
fact-contrast = { $pattern ->
    [perineural] The contrast stays, outlines the root as a paler band and climbs inside the pedicle.
    [arterial] The contrast runs off fast in a thin line and is gone at once.
    [venous] The contrast fills a wider line while it is injected and clears when it stops.
    [intrathecal] The contrast spreads thin and even in the middle and stays.
    [intradiscal] The contrast is a dense bun between the end plates.
    [facet_joint] The contrast is a small dense rim away from the root.
   *[muscular] The contrast shows feathery streaks, away from the root.
  }
fact-needed = It takes { $n }° { $to ->
    [left] to the patient’s left
    [right] to the patient’s right
    [cephalad] cephalad
   *[caudad] caudad
  }.
margin = How clear it was: { $has }; below { $least } it is not asked ({ $unit ->
    [degrees] degrees to the next answer
    [mm] mm
    [of-full-marks] of full marks
    [hours] hours
    [times-its-limit] times the limit
   *[times] times nearer than the next
  }).
caution-spread = A dry aspirate excludes nothing; contrast under live imaging comes before any drug. Local policy and supervision decide.
caution-stop = To go on here means the next step, not the drug. Stop on blood, paraesthesia or doubt. Local policy and supervision decide.
described = The film in words
undescribed = Where the dot is can only be seen: this question has no form in words. Leave it out, and it is not counted.
leaveOut = Leave this one out
keysHelp = Keys: 1 to 4 answer, Enter goes on, B shows the film again that was asked, C the later film of contrast.

## After a round

done = { $right } of { $all } right.
doneNext = Tomorrow brings what was wrong; the rest comes back when it is about to be forgotten.
list = This round
curves = Learning curves
skill = { $skill ->
    [views] Setting up the views
    [parts] Naming the parts
    [needle] Reading and steering the needle
   *[contrast] Reading contrast, stopping in time
  }
kind = { $kind ->
    [way] Which way to turn or tilt
    [amount] By how much
    [part] Which part is this
    [step] Which view is this good for
    [true_ap] Is this a true AP
    [clock] Where is the tip by the clock
    [notch] Which way with this notch
    [spread] What did the contrast fill
   *[stop] Stop or go on
  }
stageOf = stage { $n }
reached = Reached at answer { $n }.
notReached = { $n ->
    [0] Nothing answered yet.
    [one] { $n } answer: too few to say.
   *[other] Not reached in { $n } answers.
  }
standing-acceptable = The last run of answers speaks for a failure rate of { $p0 } % rather than { $p1 } %.
standing-unacceptable = The last run of answers speaks for a failure rate of { $p1 } % rather than { $p0 } %.
standing-none = Too few answers to tell { $p0 } % wrong from { $p1 } % wrong.
chart = { $skill }: cumulative sum of { $n ->
    [one] { $n } answer
   *[other] { $n } answers
  }, { $wrong } wrong. A wrong answer goes up, a right one down.
chartTable = The curve as a table
col-answer = Answer
col-result = Result
col-sum = Sum
col-learning = Towards “reached”
isRight = right
isWrong = wrong
verdict-acceptable = acceptable
verdict-unacceptable = unacceptable
begins = begins again at 0
what-heading = What the curves can show, and what not
what-sum = Each wrong answer moves the line up by { $up }, each right one down by { $down }. When it has fallen by { $h0 } the answers speak for a failure rate of { $p0 } %, when it has risen by { $h1 } for { $p1 } %; each with a chance of error of one in ten. Then it begins again.
what-reached = “Reached” comes from a second sum that asks for proof of competence. Somebody who still fails { $p1 } % is told so within 60 answers with a chance of { $chance } %; who guesses among four, practically never.
what-not = They cannot show whether these are the right questions, how you do at the table, or that a skill stays. The two rates are our choice. Nobody should be judged by them.

## Keeping

keep-heading = Your answers
keep-where = They stay in this browser and nowhere else.
keep-save = Save as a file
keep-load = Add a file
keep-added = { $n ->
    [0] The file holds nothing that was not here.
    [one] { $n } answer added.
   *[other] { $n } answers added.
  }
keep-hand = To hand in your practice, enter the code that your teacher gave you. The receipt holds your answers and which films they were to; your teacher’s page asks each again.
keep-code = Your code
keep-receipt = Save a receipt
keep-noCode = Enter your code first.
keep-noAnswers = There is no answer yet that a receipt could hold.

## In a class: the learner

class-heading = A round for your class
class-lead = { $n } films, the same for everybody. Nothing is told until your teacher turns the round over; nothing is sent.
class-begin = Begin
class-code = Your code
class-codeWhy = Give this code to your teacher: read it out, paste it, or save it as a file. It holds your answers and a number that tells learners apart, no name.
class-codeSoFar = Your code so far ({ $n } of { $all } answered)
class-copy = Copy the code
class-copied = Copied.
class-saveCode = Save as a file
class-badRound = This link names no round: { $why }

## In a class: the teacher

teacher-heading = A round for a class
teacher-lead = Choose a round, show the link or its picture, and take the codes in. Then show question by question what was answered, and turn to what is true. Nothing passes over a server.
teacher-stage = How hard
teacher-stageName = { $n ->
    [0] 1: outlines drawn
    [1] 2: without outlines
    [2] 3: patient turned on the table
    [3] 4: turned, and a curve
    [4] 5: large, little bone mineral
   *[other] 6: all of it, with noise
  }
teacher-count = Films
teacher-seed = Number of the round
teacher-new = Another number
teacher-open = Open the round
teacher-link = The link for the learners
teacher-copy = Copy the link
teacher-picture = The link as a picture code
teacher-codes = Codes
teacher-codesWhy = One to a line, or with commas between. Who hands in again takes the place of their earlier code.
teacher-take = Take them in
teacher-file = From a file
teacher-taken = { $n ->
    [0] No code yet.
    [one] { $n } learner.
   *[other] { $n } learners.
  }
teacher-refused = Not taken in:
teacher-show = On the projector
teacher-turn = Turn to what is true
teacher-previous = Previous
teacher-nextQuestion = Next
teacher-answered = { $n ->
    [one] { $n } answer
   *[other] { $n } answers
  }, { $none } without.
teacher-count-of = { $n ->
    [one] { $n } answer
   *[other] { $n } answers
  }
teacher-true = true
teacher-figures = Figures of the questions
teacher-figuresWhy = Difficulty is the share of right answers. Discrimination is how well an answer here goes with the learner’s other answers, from −1 to 1; with ten learners chance alone makes ±0.6 of it, so read it over several classes.
teacher-csv = Save as a table (CSV)
teacher-col-question = Question
teacher-col-kind = Kind
teacher-col-place = Place
teacher-col-answered = Answers
teacher-col-right = Right
teacher-col-difficulty = Difficulty
teacher-col-discrimination = Discrimination
teacher-all = all
teacher-nothing = –

## Curves of a class

group-heading = Learning curves of a class
group-why = Add the receipts of practice that learners handed in, or files that they saved. A row each; each film of a receipt is asked again. Nothing is kept or sent.
group-add = Add files
group-file = Learner
group-cell = { $n ->
    [0] no answers
    [one] { $n } answer, { $wrong } wrong
   *[other] { $n } answers, { $wrong } wrong
  }
group-reached = reached at { $n }
group-bad = { $name }: { $why }
group-check = Check
group-checking = Asking again: { $n } of { $all } answers.
group-verified = verified
group-altered = altered: { $why }
group-unknown_engine = drawn by version { $why }, not checked
group-plain = saved file, not checked
group-shares = shares { $n ->
    [one] { $n } film
   *[other] { $n } films
  } with { $other }
