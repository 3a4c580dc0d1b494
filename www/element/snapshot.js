// What events tell: the state and the checks of the view, as a plain object of its own.

import { only } from '../state/positioning.js';
import { criteriaOf, viewOf } from '../views/criterion-rows.js';

const FIELDS = /** @type {const} */ (['patient', 'level', 'side', 'view']);

/**
 * @import { Report } from '../pkg/values.js'
 *
 * What an element's state says of its view.
 * @typedef {{ patient: string, level: string, side: string, view: string, oblique_deg: number, tilt_deg: number, rotation_deg: number, ownView: object | null }} ViewState
 */

/**
 * A `DownbeamState` (see interface.js).
 * @param {ViewState} state
 * @param {Report | null} report
 * @param {boolean} settled
 */
export function stateOf(state, report, settled) {
  const view = viewOf(report, state.view);
  const shown = Boolean(state.ownView);
  const score = view?.score ?? null;
  return {
    ...only(state, FIELDS),
    oblique: state.oblique_deg,
    tilt: state.tilt_deg,
    rotation: state.rotation_deg,
    score,
    reached: score === 1 && !shown,
    shown,
    settled,
    criteria: report && view ? criteriaOf(report, view).map(({ id, name, value, unit, score: marks, sentence }) => ({ id, name, value, unit, score: marks, sentence })) : [],
  };
}
