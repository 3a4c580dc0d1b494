// What comparison, history, saved pictures and the printed result say: loaded with them, after the first picture. Sentences in
// texts/…/keepsake.ftl.

import { tenth } from '../base/tenth.js';
import { keepsake as english } from '../pkg/texts/en/keepsake.js';
import { pageSayer } from './language.js';
import { view } from './view-page.js';

const say = pageSayer('keepsake', english);

const angles = (s) => ({ oblique: view.oblique.words(s.oblique_deg), tilt: view.tilt.words(s.tilt_deg) });
const where = (s) => say('where', angles(s));
/** A turn to the tenth of a degree, without its direction. */
const size = (deg) => Math.abs(tenth(deg));
const direction = (deg, more, less) => (deg > 0 ? more : deg < 0 ? less : 'none');

const table = say.tree({
  compare: {
    angles: (s) => say('compare-angles', angles(s)),
    shareOwn: (percent) => say('compare-shareOwn', { percent }),
    picture: (own, best) => say('compare-picture', { own: where(own), best: where(best) }),
    /** `by` is how far the best view is off, in degrees: not both 0. */
    differs: (by) =>
      say('compare-differs', {
        side: direction(by.oblique_deg, 'left', 'right'),
        way: direction(by.tilt_deg, 'cephalad', 'caudad'),
        oblique: size(by.oblique_deg),
        tilt: size(by.tilt_deg),
      }),
  },
  history: {
    item: where,
    back: (s) => say('history-back', { where: where(s) }),
  },
  picture: {
    about: (s, patient) => say('picture-about', { place: view.place(s), patient, where: where(s) }),
    scale: (mm) => say('picture-scale', { n: mm }),
    failed: (why) => say('picture-failed', { why }),
  },
});

export const compare = table.compare;
export const history = table.history;
export const picture = table.picture;
