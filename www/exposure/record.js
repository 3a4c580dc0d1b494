// The exposures of this case: taking one, the last one taken, and what all of them have cost, as the engine says.

import { exposurePanel } from './exposure.js';
import { byId, say } from '../base/dom.js';
import { shownIn } from '../film/picture.js';
import { reason } from '../engine/room.js';
import { texts } from '../words/texts.js';

/** What of the state says where a picture was taken. */
const PLACE = ['patient', 'level', 'side', 'oblique', 'tilt', 'rotation', 'tableX', 'tableZ'];

/** Sets up the panel and keeps the record. `patient` is from `shaping`; `act`: `words()` after a change, `fail(sentence)`, `tick()`
 * of the attempt, `exposed()`, `marks()` over the picture. */
export function exposureRecord(app, images, patient, act) {
  let taken = null;
  let dose = null;
  let number = 0;
  const file = () => ({ caution: texts.caution, ...app.room.doseDicom() });
  const panel = exposurePanel(app, { take, release, reset, record: file });

  /** One spot picture or a few pulses more. Returns whether there was a picture. */
  function take(kind, pulses) {
    const { room, state } = app;
    if (!patient.ready()) return false;
    const next = { ...Object.fromEntries(PLACE.map((key) => [key, state[key]])), ...state.beam, kind, number: number + 1 };
    try {
      patient.aim();
      app.report = room.report();
      images.expose(room, { ...state.beam, kind }, pulses, state, next, act.tick());
      taken = { ...next, dog: app.report.dog, report: app.report };
      number += 1;
      dose = room.dose();
      act.exposed();
      images.mark(room, state, shownIn(state, app.report, taken), act.marks());
    } catch (error) {
      act.fail(texts.loading.failedRun(reason(error)));
      return false;
    }
    act.words();
    if (kind === 'spot') say(byId('status'), texts.exposure.said(taken, dose));
    return true;
  }

  /** The pedal is up: the last picture stays. */
  function release() {
    if (!app.room || !taken) return;
    app.room.release();
    act.words();
    say(byId('status'), texts.exposure.said(taken, dose));
  }

  function reset() {
    if (!app.room) return;
    app.room.resetDose();
    dose = app.room.dose();
    act.words();
    say(byId('status'), texts.exposure.wasReset);
  }

  return {
    /** The last exposure (where it was taken, with what, its number, its dog, the engine's report of it), or null. */
    taken: () => taken,
    /** Whether the beam is on. */
    on: panel.on,
    /** Lifts the pedal. */
    stop: panel.stop,
    /** Shows the panel for the state. */
    update: () => panel.update(app.state, dose, patient.ready()),
    /** Another patient or start: no picture yet, and nothing spent. */
    begin() {
      panel.stop();
      taken = null;
      app.room?.resetDose();
      dose = app.room?.dose() ?? null;
    },
    /** The engine has come. */
    connect: () => (dose = app.room.dose()),
    /** The engine is gone. */
    forget() {
      taken = dose = null;
      panel.stop();
    },
  };
}
