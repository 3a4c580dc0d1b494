### Through the beam: the bones in 3D as the source sees them.

name = Through the beam
hint = Hold it to see the bones in 3D from the source, with rays through end plate, pedicle and tip. Keep holding and drag, or use the arrow keys, to look from beside the beam. A short press leaves it on; Escape ends it.
front = front rim
back = back rim
pedicle = pedicle
tip = tip
# The whole said to who cannot see it: $tip is the next one, or nothing; $squared is a value of the checks.
sentence = Bones of { $level } and its neighbours in 3D, as the source sees them, with rays through both rims of the upper end plate and the pedicle. { $squared }. { $tip }
apart = The ray through the tip passes { $mm } mm from the ray through the middle of the pedicle.
swung = The eye stands { $right }° to the picture’s { $side ->
    [left] left
   *[right] right
  } of the beam and { $up }° { $way ->
    [down] below
   *[up] above
  } it.
ended = Only the film is left.
failed = The bones could not be drawn ({ $why }); the film is as it was.
