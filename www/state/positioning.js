// Of what and from where a picture is taken: who lies on the table, what is aimed at, and where C-arm and table stand. One value with
// one comparison for all who ask whether a picture, a step or a patient is still the same.

import { tenth } from '../base/tenth.js';

/**
 * @import { Angles } from '../base/tenth.js'
 * @import { Orientation, Target } from '../pkg/values.js'
 *
 * A patient: a name may stand for many, by seed and by what is changed (JSON, or nothing).
 * @typedef {{ patient: string, seed: number | null, changed: string }} PatientChoice
 *
 * All to a tenth; rotation of the picture > 0 clockwise. The table's x moves the patient to its own left, y up, z to the head.
 * @typedef {Angles & { rotation_deg: number, table_x_mm: number, table_y_mm: number, table_z_mm: number }} Place
 *
 * @typedef {PatientChoice & Target & Place} Positioning
 */

/** @type {readonly (keyof PatientChoice)[]} */
export const PATIENT = ['patient', 'seed', 'changed'];
/** @type {readonly (keyof Target)[]} */
export const TARGET = ['level', 'side'];
/** @type {readonly (keyof Place)[]} */
export const PLACE = ['oblique_deg', 'tilt_deg', 'rotation_deg', 'table_x_mm', 'table_y_mm', 'table_z_mm'];
/** @type {readonly (keyof Positioning)[]} */
export const POSITIONING = [...PATIENT, ...TARGET, ...PLACE];
/**
 * What decides the picture: whom the beam goes through, and from where. The side that is aimed at changes nothing in it.
 * @type {readonly (keyof Positioning)[]}
 */
export const BEAM = [...PATIENT, 'level', ...PLACE];

/**
 * Those fields of a value, and nothing else of it.
 * @template {object} T
 * @template {keyof T} K
 * @param {T} from
 * @param {readonly K[]} keys
 * @returns {Pick<T, K>}
 */
export function only(from, keys) {
  return /** @type {Pick<T, K>} */ (Object.fromEntries(keys.map((key) => [key, from[key]])));
}

/**
 * Where the C-arm stands for an orientation of the engine's, to a tenth of a degree as the controls have it.
 * @param {Orientation} of
 */
export const placeOf = ({ oblique, tilt }) => ({ oblique_deg: tenth(oblique), tilt_deg: tenth(tilt) });

/**
 * Whether the C-arm stands nearer to a lateral than to an AP: heights are seen there, and what lies across is not.
 * @param {Pick<Place, 'oblique_deg'>} place
 */
export const isSideways = ({ oblique_deg }) => Math.abs(oblique_deg) > 45;

/**
 * The positioning that a state says.
 * @param {Positioning} from
 */
export const positioningOf = (from) => only(from, POSITIONING);

/**
 * Whether two give the same picture.
 * @param {Positioning} a
 * @param {Positioning} b
 */
export const sameBeam = (a, b) => BEAM.every((key) => a[key] === b[key]);

/**
 * What else changes with a patch (`createStore`): where one of `keys` does, the learner's own view is no longer what was left for the best one.
 * @template {{ ownView: unknown }} S
 * @param {readonly (keyof S)[]} keys
 * @returns {(state: S, changed: readonly (keyof S)[], patch: Partial<S>) => Partial<S>}
 */
export const endsOwnView = (keys) => (_, changed, patch) =>
  'ownView' in patch || !changed.some((key) => keys.includes(key)) ? {} : /** @type {Partial<S>} */ ({ ownView: null });

/**
 * A patient as `attemptTrace` or `drawn` has it, with what is changed as an object, or not at all.
 * @param {{ patient: string, seed?: number | null, changed?: Record<string, number> | null }} given
 * @returns {PatientChoice}
 */
export const choiceOf = ({ patient, seed, changed }) => ({ patient, seed: seed ?? null, changed: changed && Object.keys(changed).length > 0 ? JSON.stringify(changed) : '' });

/**
 * Fields as a text, to be kept and held against another.
 * @template {object} T
 * @param {T} from
 * @param {readonly (keyof T)[]} keys
 */
export const keyOf = (from, keys) => keys.map((key) => String(from[key] ?? '')).join();
