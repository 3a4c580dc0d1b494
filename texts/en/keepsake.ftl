### Comparing with the best view, going back, taking away.

compare-open = Compare with the best view
compare-close = Close the comparison
compare-closeShort = Close
compare-slider = Divider between your view and the best view
compare-own = Your view
compare-best = Best view
compare-same = Your view and the best view stand at the same angles.

history-name = Views so far
history-none = Each view that you stop at is kept here as a small picture, the last twelve of them.
history-list = Views so far, oldest first
history-now = now
history-end-undo = There is no earlier view.
history-end-redo = There is no later view.

picture-png = Save picture (PNG)
picture-svg = Save outlines (SVG)
picture-print = Print the result
picture-credit = Downbeam, teaching model, not for clinical use
picture-desc = Computed outlines of a teaching model, mm on the detector: not for planning or guiding a procedure.
picture-noEngine = There is no picture to save: the engine is not there.
picture-noPicture = There is no picture to save yet: take an exposure first.
picture-hidden = The outlines cannot be saved while this lesson keeps them back or asks for them; finish it first.
picture-notChecked = This view has not been checked.
