### Drawings joined with the picture.

show = What the drawings show
whole = C-arm
near = Bones
hint = Drag a drawing to turn the C-arm; keys: the sliders Oblique and Tilt. Touch a bone’s line, here or in the picture, to light it in both.
hintTurn = Drag a drawing to turn the C-arm; keys: the sliders Oblique and Tilt.
find = Part to light
none = none
unlit = No part is lit.
ray = A line runs from the source through the target to the dot where it lands on the receptor.
needle = The needle is drawn as it lies.
fromFeet = seen from the feet, patient’s left on the left, back up
fromSide = seen from the patient’s right, head on the right, back up
noPicture = No ray is drawn: there is no picture from here yet.
