// Where progress and results go. Sentences in texts/…/delivery.ftl.

import { pageSayer } from './language.js';
import { delivery as english } from '../pkg/texts/en/delivery.js';

const say = pageSayer('delivery', english);

export const delivery = say.tree({
  ofHundred: (n) => say('ofHundred', { n }),
  noLesson: (status) => say(status ? 'noLessonStatus' : 'noLesson', { status }),
  notOpened: (standard) => say('notOpened', { standard }),
  resumedPart: (n) => say('resumedPart', { n }),
  resumedOf: (n, missing) => say('resumedOf', { n, missing }),
  refusedValue: (name, why) => say(why ? 'refusedValueWhy' : 'refusedValue', { name, why }),
  refusedStatement: (status) => say('refusedStatement', { status }),
  tooLong: (most, kept, all) => say('tooLong', { most, kept, all }),
  receiptTooLong: (most) => say('receiptTooLong', { most }),
  otherMark: (mark, passed) => say('otherMark', { mark, passed: passed ? 'yes' : 'no' }),
  launchUsed: (why) => say(why ? 'launchUsedWhy' : 'launchUsed', { why }),
  badHost: (found) => say('badHost', { found }),
});
