// The exposures of this case: taking one, the last one taken, and what all of them have cost, as the engine says.

import { exposurePanel } from './exposure.js';
import { byId, say } from '../base/dom.js';
import { shownIn } from '../film/picture.js';
import { PATIENT, positioningOf } from '../state/positioning.js';
import { reason } from '../engine/room.js';
import { texts } from '../words/texts.js';

/**
 * @import { Shaping } from '../engine/shaping.js'
 * @import { Exposure, Marks, picture } from '../film/picture.js'
 * @import { BeamSettings, DoseReadout } from '../pkg/values.js'
 * @import { App } from '../state/page-state.js'
 *
 * @typedef {ReturnType<typeof exposureRecord>} Record
 */

/**
 * Sets up the panel and keeps the record. `patient` is from `shaping`; `act`: `words()` after a change, `fail(sentence)`, `tick()`
 * of the attempt, `exposed()`, `marks()` over the picture.
 * @param {App} app
 * @param {ReturnType<typeof picture>} images
 * @param {Shaping} patient
 * @param {{ words: () => void, fail: (sentence: string) => void, tick: () => number | undefined, exposed: () => void, marks: () => Marks | null }} act
 */
export function exposureRecord(app, images, patient, act) {
  /** @type {Exposure | null} */
  let exposure = null;
  /** @type {DoseReadout | null} */
  let dose = null;
  let number = 0;
  const panel = exposurePanel(app, { take, release, reset, record: file });

  function file() {
    if (!app.room) throw new Error('there is no engine');
    return { caution: texts.caution, ...app.room.doseDicom() };
  }

  /**
   * One spot picture or a few pulses more. Returns whether there was a picture.
   * @param {BeamSettings['kind']} kind
   * @param {number} pulses
   */
  function take(kind, pulses) {
    const { room, state } = app;
    if (!room || !patient.ready()) return false;
    const next = { ...positioningOf(state), ...state.beam, kind, number: number + 1 };
    try {
      patient.aim();
      app.report = room.report();
      images.expose(room, { ...state.beam, kind }, pulses, state, next, act.tick());
      exposure = { ...next, dog: app.report.dog, report: app.report };
      number += 1;
      dose = room.dose();
      act.exposed();
      images.mark(room, state, shownIn(state, app.report, exposure), act.marks());
    } catch (error) {
      act.fail(texts.loading.failedRun(reason(error)));
      return false;
    }
    act.words();
    if (kind === 'spot') if (dose) say(byId('status'), texts.exposure.said(exposure, dose));
    return true;
  }

  /** The pedal is up: the last picture stays. */
  function release() {
    if (!app.room || !exposure) return;
    app.room.release();
    act.words();
    if (dose) say(byId('status'), texts.exposure.said(exposure, dose));
  }

  function reset() {
    if (!app.room) return;
    app.room.resetDose();
    dose = app.room.dose();
    act.words();
    say(byId('status'), texts.exposure.wasReset);
  }

  /** Another patient or start: no picture yet, and nothing spent. */
  function begin() {
    panel.stop();
    exposure = null;
    app.room?.resetDose();
    dose = app.room?.dose() ?? null;
  }

  app.subscribe([...PATIENT, 'start', 'lesson'], begin);
  app.subscribe(['byExposure'], panel.stop);

  return {
    /** The last exposure (where it was taken, with what, its number, its dog, the engine's report of it), or null. */
    exposure: () => exposure,
    /** Whether the beam is on. */
    on: panel.on,
    /** Shows the panel for the state. */
    update: () => panel.update(app.state, dose, patient.ready()),
    begin,
    /** The engine has come. */
    connect: () => void (dose = app.room?.dose() ?? null),
    /** The engine is gone. */
    forget() {
      exposure = dose = null;
      panel.stop();
    },
  };
}
