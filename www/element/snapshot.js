// What events tell: the state and the checks of the view, as a plain object of its own.

import { criteriaOf, viewOf } from '../views/criterion-rows.js';

const TOLD = ['patient', 'level', 'side', 'view', 'oblique', 'tilt', 'rotation'];

/** A `DownbeamState` (see interface.js). */
export function stateOf(state, report, settled) {
  const view = viewOf(report, state.view);
  const shown = Boolean(state.ownView);
  const score = view?.score ?? null;
  return {
    ...Object.fromEntries(TOLD.map((key) => [key, state[key]])),
    score,
    reached: score === 1 && !shown,
    shown,
    settled,
    criteria: view ? criteriaOf(report, view).map(({ id, name, value, unit, score: marks, sentence }) => ({ id, name, value, unit, score: marks, sentence })) : [],
  };
}
