// Where progress and results go. Sentences in texts/…/delivery.ftl.

import { pageSayer } from './language.js';
import { delivery as english } from '../pkg/texts/en/delivery.js';

/** @import { Value } from './sentences.js' */

const say = pageSayer('delivery', english);

export const delivery = say.tree({
  ofHundred: (/** @type {number} */ n) => say('ofHundred', { n }),
  noLesson: (/** @type {Value} */ status) => say(status ? 'noLessonStatus' : 'noLesson', { status }),
  notOpened: (/** @type {Value} */ standard) => say('notOpened', { standard }),
  resumedPart: (/** @type {number} */ n) => say('resumedPart', { n }),
  resumedOf: (/** @type {number} */ n, /** @type {Value} */ missing) => say('resumedOf', { n, missing }),
  refusedValue: (/** @type {string} */ name, /** @type {string} */ why) => say(why ? 'refusedValueWhy' : 'refusedValue', { name, why }),
  refusedStatement: (/** @type {Value} */ status) => say('refusedStatement', { status }),
  tooLong: (/** @type {Value} */ most, /** @type {Value} */ kept, /** @type {number} */ all) => say('tooLong', { most, kept, all }),
  receiptTooLong: (/** @type {Value} */ most) => say('receiptTooLong', { most }),
  otherMark: (/** @type {Value} */ mark, /** @type {boolean} */ passed) => say('otherMark', { mark, passed: passed ? 'yes' : 'no' }),
  launchUsed: (/** @type {string} */ why) => say(why ? 'launchUsedWhy' : 'launchUsed', { why }),
  badHost: (/** @type {Value} */ found) => say('badHost', { found }),
});
