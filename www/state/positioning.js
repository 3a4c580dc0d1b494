// Of what and from where a picture is taken: who lies on the table, what is aimed at, and where C-arm and table stand. One value with
// one comparison for all who ask whether a picture, a step or a patient is still the same.

/**
 * @import { Level, Side } from '../pkg/values.js'
 *
 * A patient: a name may stand for many, by seed and by what is changed (JSON, or nothing).
 * @typedef {{ patient: string, seed: number | null, changed: string }} PatientChoice
 *
 * @typedef {{ level: Level, side: Side }} Target
 *
 * Angles in degrees, to a tenth: oblique > 0 to the patient's left, tilt > 0 cephalad, rotation of the picture > 0 clockwise. The table in
 * mm: X moves the patient to its own left, Z to the head.
 * @typedef {{ oblique: number, tilt: number, rotation: number, tableX: number, tableZ: number }} Place
 *
 * @typedef {PatientChoice & Target & Place} Positioning
 */

/** @type {readonly (keyof PatientChoice)[]} */
export const PATIENT = ['patient', 'seed', 'changed'];
/** @type {readonly (keyof Target)[]} */
export const TARGET = ['level', 'side'];
/** @type {readonly (keyof Place)[]} */
export const PLACE = ['oblique', 'tilt', 'rotation', 'tableX', 'tableZ'];
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
 * Fields as a text, to be kept and held against another.
 * @template {object} T
 * @param {T} from
 * @param {readonly (keyof T)[]} keys
 */
export const keyOf = (from, keys) => keys.map((key) => String(from[key] ?? '')).join();
