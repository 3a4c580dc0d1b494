// The English sentences of comparison, history, saved pictures and the printed result. Loaded with them, after the first picture.

import { isZero, short, view } from './en-view.js';

const where = (s) => `oblique ${view.oblique.words(s.oblique)}, tilt ${view.tilt.words(s.tilt)}`;

export const compare = {
  open: 'Compare with the best view',
  close: 'Close the comparison',
  closeShort: 'Close',
  slider: 'Divider between your view and the best view',
  own: 'Your view',
  best: 'Best view',
  angles: (s) => `${view.oblique.words(s.oblique)}, ${view.tilt.words(s.tilt)}`,
  shareOwn: (percent) => `your view on the left ${percent} % of the picture, the best view on the rest`,
  picture: (own, best) => `Two views in one film. On the left your view, ${where(own)}; on the right the best view, ${where(best)}.`,
  same: 'Your view and the best view stand at the same angles.',
  differs: (by) => `The best view is ${[by.oblique && `${short(by.oblique)} further to the patient’s ${by.oblique > 0 ? 'left' : 'right'}`, by.tilt && `${short(by.tilt)} more ${by.tilt > 0 ? 'cephalad' : 'caudad'}`].filter(Boolean).join(' and ')} than yours.`,
};

export const history = {
  name: 'Views so far',
  none: 'Each view that you stop at is kept here as a small picture, the last twelve of them.',
  list: 'Views so far, oldest first',
  now: 'now',
  item: (s) => where(s),
  back: (s) => `Back at ${where(s)}.`,
  end: { undo: 'There is no earlier view.', redo: 'There is no later view.' },
};

export const picture = {
  png: 'Save picture (PNG)',
  svg: 'Save outlines (SVG)',
  print: 'Print the result',
  credit: 'Downbeam, teaching model, not for clinical use',
  about: (s, patient) => `${s.level} ${s.side}, patient “${patient}”, ${where(s)}`,
  desc: 'Computed outlines of a teaching model, mm on the detector: not for planning or guiding a procedure.',
  scale: (mm) => `${mm} mm on the detector`,
  noEngine: 'There is no picture to save: the engine is not there.',
  noPicture: 'There is no picture to save yet: take an exposure first.',
  hidden: 'The outlines cannot be saved while this lesson keeps them back or asks for them; finish it first.',
  failed: (why) => `The picture could not be saved: ${why}.`,
  notChecked: 'This view has not been checked.',
};

/** Whether two angles are read as the same. */
export const alike = isZero;
