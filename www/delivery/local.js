// The page's own delivery: progress in the browser's storage, the result as a file that the learner hands in.

import { keepUnfinished, noteDone, unfinished } from '../base/progress.js';
import { lesson as t } from '../words/lesson.js';

/**
 * @import { Delivery } from './choose.js'
 */

/**
 * See `choose.js` for what a delivery is.
 * @param {{ notice: (sentences: string[]) => void }} act
 * @returns {Promise<Delivery>}
 */
export async function connect({ notice }) {
  let at = { sha256: '', learner: '' };
  let said = false;
  /** @param {boolean} ok */
  const kept = (ok) => {
    if (ok || said) return;
    said = true;
    notice([t.notKept]);
  };
  return {
    name: 'page',
    lesson: null,
    learner: null,
    keepsProgress: true,
    opened(lesson) {
      at = lesson;
    },
    resume: () => unfinished(at.sha256, at.learner),
    keep: (lines) => kept(keepUnfinished(at.sha256, at.learner, lines)),
    async finish({ score, passed }) {
      const { sha256, learner } = at;
      // First what was reached, then the attempt is forgotten.
      kept(await noteDone(sha256, { score, passed }));
      keepUnfinished(sha256, learner, null);
      return { accepted: true, said: null };
    },
    leave() {},
  };
}
