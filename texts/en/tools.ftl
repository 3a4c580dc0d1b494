### Comparing with the best view, going back, taking away.

# Where the C-arm stands: said in other sentences as $where. $oblique and $tilt are said as “12° to the patient’s left”, “no tilt”.
where = oblique { $oblique }, tilt { $tilt }

## The learner’s own view beside the best one

compare-open = Compare with the best view
compare-close = Close the comparison
compare-closeShort = Close
compare-slider = Divider between your view and the best view
compare-own = Your view
compare-best = Best view
compare-angles = { $oblique }, { $tilt }
compare-shareOwn = your view on the left { $percent } % of the picture, the best view on the rest
# $own and $best are where the C-arm stands.
compare-picture = Two views in one film. On the left your view, { $own }; on the right the best view, { $best }.
compare-same = Your view and the best view stand at the same angles.
# How far the C-arm turns to a side of the patient, and how far it tilts.
compare-differs = { $side ->
    [left] { $way ->
        [cephalad] The best view is { $oblique }° further to the patient’s left and { $tilt }° more cephalad than yours.
        [caudad] The best view is { $oblique }° further to the patient’s left and { $tilt }° more caudad than yours.
       *[none] The best view is { $oblique }° further to the patient’s left than yours.
      }
    [right] { $way ->
        [cephalad] The best view is { $oblique }° further to the patient’s right and { $tilt }° more cephalad than yours.
        [caudad] The best view is { $oblique }° further to the patient’s right and { $tilt }° more caudad than yours.
       *[none] The best view is { $oblique }° further to the patient’s right than yours.
      }
   *[none] { $way ->
        [cephalad] The best view is { $tilt }° more cephalad than yours.
       *[caudad] The best view is { $tilt }° more caudad than yours.
      }
  }

## The views so far

history-name = Views so far
history-none = Each view that you stop at is kept here as a small picture, the last twelve of them.
history-list = Views so far, oldest first
history-now = now
history-back = Back at { $where }.
history-end-undo = There is no earlier view.
history-end-redo = There is no later view.

## Saved pictures and the printed result

picture-png = Save picture (PNG)
picture-svg = Save outlines (SVG)
picture-print = Print the result
picture-credit = Downbeam, teaching model, not for clinical use
# $place is a level and a side: “L4 left”.
picture-about = { $place }, patient “{ $patient }”, { $where }
picture-desc = Computed outlines of a teaching model, mm on the detector: not for planning or guiding a procedure.
picture-scale = { $n } mm on the detector
picture-noEngine = There is no picture to save: the engine is not there.
picture-noPicture = There is no picture to save yet: take an exposure first.
picture-hidden = The outlines cannot be saved while this lesson keeps them back or asks for them; finish it first.
# $why is a reason, without a full stop.
picture-failed = The picture could not be saved: { $why }.
picture-notChecked = This view has not been checked.
