// What comparison, history, saved pictures and the printed result say: loaded with them, after the first picture. Sentences in
// texts/…/tools.ftl.

import { tenth } from '../base/tenth.js';
import { tools as english } from '../pkg/texts/en/tools.js';
import { pageSayer } from './language.js';
import { view } from './view-page.js';

/**
 * @import { Target } from '../pkg/values.js'
 * @import { Angles } from '../base/tenth.js'
 */

const say = pageSayer('tools', english);

const angles = (/** @type {Angles} */ s) => ({ oblique: view.oblique.words(s.oblique_deg), tilt: view.tilt.words(s.tilt_deg) });
const where = (/** @type {Angles} */ s) => say('where', angles(s));
/** A turn to the tenth of a degree, without its direction. */
const size = (/** @type {number} */ deg) => Math.abs(tenth(deg));
const direction = (/** @type {number} */ deg, /** @type {string} */ more, /** @type {string} */ less) => (deg > 0 ? more : deg < 0 ? less : 'none');

const table = say.tree({
  compare: {
    angles: (/** @type {Angles} */ s) => say('compare-angles', angles(s)),
    shareOwn: (/** @type {number} */ percent) => say('compare-shareOwn', { percent }),
    picture: (/** @type {Angles} */ own, /** @type {Angles} */ best) => say('compare-picture', { own: where(own), best: where(best) }),
    /** `by` is how far the best view is off, in degrees: not both 0. */
    differs: (/** @type {Angles} */ by) =>
      say('compare-differs', {
        side: direction(by.oblique_deg, 'left', 'right'),
        way: direction(by.tilt_deg, 'cephalad', 'caudad'),
        oblique: size(by.oblique_deg),
        tilt: size(by.tilt_deg),
      }),
  },
  history: {
    item: where,
    back: (/** @type {Angles} */ s) => say('history-back', { where: where(s) }),
  },
  picture: {
    about: (/** @type {Target & Angles} */ s, /** @type {string} */ patient) => say('picture-about', { place: view.place(s), patient, where: where(s) }),
    scale: (/** @type {number} */ mm) => say('picture-scale', { n: mm }),
    failed: (/** @type {string} */ why) => say('picture-failed', { why }),
  },
});

export const compare = table.compare;
export const history = table.history;
export const picture = table.picture;
