// What the page does with pictures besides showing the present one: compare, go back, take away. Loaded after the first picture.

import { comparison } from './compare.js';
import { exporting } from '../export/export.js';
import { viewHistory } from './history.js';

/** `patient` from `shaping`, `needle` from `injection`, `record` from `exposureRecord`; `act`: `notice(sentences)`, `said(sentence)`. */
export function keepsakes(app, patient, needle, record, act) {
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
