// What the rest of the page knows of the injection. All else of it is loaded after the first picture, or at once for who asks; until then
// there is no attempt, nothing of it in the picture and nothing to say.

import { late } from '../base/late.js';

/**
 * @import { Injection } from './injection.js'
 *
 * @typedef {Injection & { here: () => boolean, bring: () => Promise<void> }} InjectionOnDemand
 */

/**
 * `make(module)` makes the injection of `injection.js`, whose handle this then is; `whole()` adds the engine's part for it; `touch()` asks for
 * a frame.
 * @param {(module: typeof import('./injection.js')) => Injection} make
 * @param {() => Promise<void>} whole
 * @param {() => void} touch
 */
export function injectionOnDemand(make, whole, touch) {
  /** @type {Promise<void> | null} */
  let coming = null;
  let come = false;
  const nothing = () => null;
  // Until it has come this much of it is asked for, and answers that there is none.
  const handle = /** @type {InjectionOnDemand} */ (/** @type {unknown} */ ({
    attempt: {
      on: () => false, inLesson: () => false, flowing: () => false, hasLast: () => false, tick: () => 0, revision: () => 0,
      report: nothing, seen: nothing, score: nothing, trace: nothing, patientReady: nothing, settled: nothing, exposed: nothing, forget: nothing,
    },
    does: { hint: nothing },
    said: nothing, dimension: nothing, refresh: nothing, inPicture: nothing, inGantry: nothing, marks: nothing, words: nothing, restart: nothing,
    mayTell: () => true, marked: () => false, aiming: () => false, settled: () => false,
    inWords: () => '',
    field_mm: () => 0,
    /** Whether it is there. */
    here: () => come,
    /** Brings it: once, and again by the next who asks if it did not come. */
    bring() {
      coming ??= Promise.all([late(() => import('./injection.js'), new URL('./injection.js', import.meta.url)), whole()]).then(
        ([module]) => {
          const { attempt, ...rest } = make(module);
          Object.assign(handle.attempt, attempt);
          Object.assign(handle, rest);
          come = true;
          touch();
        },
        (error) => {
          coming = null;
          throw error;
        },
      );
      return coming;
    },
  }));
  return handle;
}
