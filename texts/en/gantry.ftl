### Drawings joined with the picture.

show = What the drawings show
whole = C-arm
near = Bones
hint = Drag a drawing to turn the C-arm; keys: the sliders Oblique and Tilt. Touch a bone’s line, here or in the picture, to light it in both.
hintTurn = Drag a drawing to turn the C-arm; keys: the sliders Oblique and Tilt.
find = Part to light
none = none
# A part of a bone, with its level and, where it has one, its side: as it stands in a list, and inside a sentence.
name = { $side ->
    [left] Left { $part } of { $level }
    [right] Right { $part } of { $level }
   *[none] { $Part } of { $level }
  }
lit = { $name } is lit in the picture and in the drawings.
notInPicture = { $name } is lit in the drawings; no line of it is in the picture.
noOutlines = { $name } is lit in the drawings; switch the outlines on to see it in the picture.
litHere = { $side ->
    [left] The left { $part } of { $level } is lit.
    [right] The right { $part } of { $level } is lit.
   *[none] The { $part } of { $level } is lit.
  }
unlit = No part is lit.
ray = A line runs from the source through the target to the dot where it lands on the receptor.
needle = The needle is drawn as it lies.
near_feet = Bones of { $level }, from the feet
near_side = Bones of { $level }, from the right
# $from is fromFeet or fromSide.
describeNear = Outlines of { $level } and its neighbours, { $from }, 13 cm across.
centralRay = The central ray comes from the source below; the receptor is { $oblique } and { $tilt }.
fromFeet = seen from the feet, patient’s left on the left, back up
fromSide = seen from the patient’s right, head on the right, back up
noPicture = No ray is drawn: there is no picture from here yet.

## The table, and what stops a turn.

table-name = Move the table
table-left = Left
table-right = Right
table-head = To the head
table-feet = To the feet
table-by = Move the table 5 mm:
table-isocentre = target at the isocentre
# The table has been moved by so much.
table-across = { $way ->
    [left] { $mm } mm left
   *[right] { $mm } mm right
  }
table-along = { $way ->
    [head] { $mm } mm to the head
   *[feet] { $mm } mm to the feet
  }
table-up = Up
table-down = Down
# Along, across and in height, so much of the way, mm.
table-height = { $way ->
    [up] { $mm } mm up
   *[down] { $mm } mm down
  }
table-asItStood = as it stood at the start
table-putBack = Put it back
table-stands = Table: { $where }.
table-to = { $way ->
    [down] Table down { $mm } mm
    [up] Table up { $mm } mm
    [left] Table left { $mm } mm
    [right] Table right { $mm } mm
    [head] Table { $mm } mm to the head
   *[feet] Table { $mm } mm to the feet
  }
# What would hit what; $way: the move of the table that makes room.
hit-receptor-patient = Stopped: the receptor would hit the patient; { $way }.
hit-receptor-table = Stopped: the receptor would hit the table; { $way }.
hit-source-patient = Stopped: the source would hit the patient; { $way }.
hit-source-table = Stopped: the source would hit the table; { $way }.
hit-way = { $way ->
    [down] move the table { $mm } mm down first
    [up] move the table { $mm } mm up first
    [left] move the table { $mm } mm to the left first
    [right] move the table { $mm } mm to the right first
    [head] move the table { $mm } mm to the head first
    [feet] move the table { $mm } mm to the feet first
   *[none] turn another way
  }
