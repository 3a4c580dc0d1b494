### An attempt played back on a time line.

open = Play it back
heading = Played back
close = Close
loading = The patient is shaped …
reading = The attempt is read: { $percent } %
play = Play
pause = Pause
earlier = Action before
later = Next action
speed = Speed
times = { $n } ×
line = Time line
lineKeys = Arrow keys go from action to action, Page Up and Page Down ten seconds, Home and End to the ends. Pauses of more than two seconds are cut short.
# Where it stands: $clock is minutes and seconds of the attempt, $what the next messages.
value = { $clock }, action { $n } of { $all }: { $what }
begin = the beginning
# What was done, as the log has it.
did-orient = C-arm to { $oblique }, { $tilt }
did-rotate_image = picture turned to { $deg }°
did-move_table = table moved
did-spot = spot picture
did-fluoroscopy = fluoroscopy, { $n ->
    [one] { $n } pulse
   *[other] { $n } pulses
  }
did-keep = { $view ->
    [true_ap] true AP kept
    [lateral] lateral kept
   *[oblique] oblique kept
  }
did-recall = { $view ->
    [true_ap] back to the true AP
    [lateral] back to the lateral
   *[oblique] back to the oblique
  }
did-mark = target marked
did-choose = another way in chosen
did-place = needle set on the skin
did-angle = hub moved
did-roll = hub turned by { $deg }°
did-advance = needle advanced { $mm } mm
did-withdraw = needle drawn back { $mm } mm
did-remove = needle taken out
did-aspirate = suction on the syringe
did-inject = { $ml } ml of contrast
did-name = spread named
did-point = a part pointed at
did-finish = finished
# What stands in the picture.
arm = C-arm { $oblique }, { $tilt }.
needle = Needle { $mm } mm deep.
noNeedle = No needle yet.
film = The film is drawn for each moment, also where no exposure was taken.
# Where marks were lost.
lost = Where marks were lost
lostNone = No marks were lost in the steps that were done.
lostStep = { $step }, { $marks }: { $why }
lostGate = Does not pass, { $gate }: { $why }
lostHere = Here: { $what }
notMarked = Marks were not computed: { $why }
undone = Not done, so without a place on the line: { $steps }.
# Another attempt at the same case.
beside = Another attempt beside it
besideNote = Such as a teacher’s: its needle is drawn dashed, and both are at their views, mark, needle and contrast together.
besideOff = Take it away
besideNow = The other: C-arm { $oblique }, { $tilt }; { $depth }
besideDepth = needle { $mm } mm deep.
besideNone = no needle.
besideOther = That attempt is of another patient, level or side; one at the same case can be laid beside this one.
bad = It cannot be played back ({ $why }).
tooLarge = the file is too large
notJson = the file is not JSON
