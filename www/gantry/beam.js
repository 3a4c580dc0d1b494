// The rays in the drawings, in the patient's frame about the target's centre, mm.

import { RECEPTOR_MM, SOURCE_MM, directions, plus } from './drawing.js';

/**
 * @import { Place } from '../state/positioning.js'
 * @import { Point } from './drawing.js'
 */

/**
 * Source, isocentre and the central ray's end for a C-arm that stands as `state` says, and, for a point that is aimed at, where the ray
 * through it lands on the receptor. The table has moved the patient, so in the patient's frame the C-arm stands the other way.
 * @param {Place} state
 * @param {Point | null} aim
 */
export function raysOf(state, aim) {
  const { receptor: d } = directions(state.oblique_deg, state.tilt_deg);
  const isocentre = [-state.table_x_mm, -state.table_y_mm, -state.table_z_mm];
  const source = plus(isocentre, -SOURCE_MM, d);
  const end = plus(isocentre, RECEPTOR_MM, d);
  if (!aim) return { isocentre, source, end, landing: null };
  const ray = plus(aim, -1, source);
  const deep = ray[0] * d[0] + ray[1] * d[1] + ray[2] * d[2];
  return { isocentre, source, end, landing: plus(source, (SOURCE_MM + RECEPTOR_MM) / deep, ray) };
}
