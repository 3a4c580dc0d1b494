// What the page does with pictures besides showing the present one: compare, go back, take away. Loaded after the first picture.

import { comparison } from './compare.js';
import { exporting } from '../export/export.js';
import { viewHistory } from './history.js';

/**
 * @import { Shaping } from '../engine/shaping.js'
 * @import { Record } from '../exposure/record.js'
 * @import { Marks, NeedleInPicture } from '../film/picture.js'
 * @import { AttemptKeeper } from '../injection/attempt.js'
 * @import { App } from '../state/page-state.js'
 *
 * What the injection shows of itself.
 * @typedef {{ attempt: AttemptKeeper, inPicture: () => NeedleInPicture | null, marks: () => Marks | null }} Needle
 *
 * @typedef {{ notice: (sentences: string[]) => void, said: (sentence: string) => void }} Acts
 */

/**
 * Sets them up. `patient` from `shaping`, `needle` from `injection`.
 * @param {App} app
 * @param {Shaping} patient
 * @param {Needle} needle
 * @param {Record} record
 * @param {Acts} act
 */
export function viewTools(app, patient, needle, record, act) {
  const compare = comparison(app, patient, needle);
  const history = viewHistory(app, patient, needle, record, act);
  const files = exporting(app, patient, needle, record, act);
  return {
    /** After each frame. */
    after() {
      compare.after();
      history.after();
      files.after();
    },
    /** The learner has stopped turning. */
    settled: () => history.settled(),
  };
}
