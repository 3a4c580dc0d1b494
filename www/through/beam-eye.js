// The eye at the source: the beam's own pinhole, from the engine's numbers, and the same eye swung about the isocentre to look from beside the beam.

/**
 * @import { Eye } from './surface.js'
 *
 * The beam in the frame of the meshes, mm: source, direction to the receptor, the picture's axes, isocentre, and half the field on the receptor.
 * @typedef {{ source: number[], d: number[], right: number[], up: number[], sid_mm: number, sod_mm: number, half_mm: number, isocentre: number[] }} Beam
 *
 * How far the eye is swung: to the picture's right and up, degrees.
 * @typedef {{ right_deg: number, up_deg: number }} Swing
 */

/** @type {Swing} */
export const STRAIGHT = { right_deg: 0, up_deg: 0 };
/** So far it can be swung: beyond, one would look from the feet or the side, which the drawings of the C-arm show. A choice, no source. */
export const MOST_DEG = 60;

/**
 * The beam of the engine's `filmView`.
 * @param {Float32Array} view
 * @returns {Beam}
 */
export function beamOf(view) {
  const three = (/** @type {number} */ i) => [...view.subarray(3 * i, 3 * i + 3)];
  const [source, d, right, up] = [0, 1, 2, 3].map(three);
  const [sid_mm, sod_mm, half_mm] = view.subarray(12, 15);
  return { source, d, right, up, sid_mm, sod_mm, half_mm, isocentre: source.map((x, k) => x + sod_mm * d[k]) };
}

const mix = (/** @type {number[]} */ a, /** @type {number} */ s, /** @type {number[]} */ b, /** @type {number} */ t) => a.map((x, k) => s * x + t * b[k]);

/**
 * The eye. Straight, it stands in the source and sees what the film shows where the film shows it; `magnification` as the film's.
 * @param {Beam} beam
 * @param {Swing} swing
 * @param {number} [magnification]
 * @returns {Eye}
 */
export function eyeOf(beam, swing, magnification = 1) {
  const [a, b] = [swing.right_deg, swing.up_deg].map((deg) => (deg * Math.PI) / 180);
  // To the right about what is up, then up about what is then right.
  const right = mix(beam.right, Math.cos(a), beam.d, Math.sin(a));
  const level = mix(beam.d, Math.cos(a), beam.right, -Math.sin(a));
  const ahead = mix(level, Math.cos(b), beam.up, -Math.sin(b));
  const up = mix(beam.up, Math.cos(b), level, Math.sin(b));
  const eye = mix(beam.isocentre, 1, ahead, -beam.sod_mm);
  return { eye, ahead, right, up, wide: (2 * beam.half_mm) / (beam.sid_mm * magnification), about_mm: beam.sod_mm };
}

/**
 * A swing within what is allowed.
 * @param {Swing} swing
 * @returns {Swing}
 */
export function within({ right_deg, up_deg }) {
  const held = (/** @type {number} */ deg) => Math.min(MOST_DEG, Math.max(-MOST_DEG, deg));
  return { right_deg: held(right_deg), up_deg: held(up_deg) };
}
