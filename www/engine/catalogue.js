// What the page offers before the engine has said what it has: the same levels and ranges, and no patient to choose yet.
// The browser checks hold this table against the engine's own.

/** @import { BeamChoices, Level, PatientEntry, Ranges } from '../pkg/values.js' */

/** @type {{ levels: Level[], patients: PatientEntry[], range: Ranges, beam: BeamChoices }} */
export const FIRST_CATALOGUE = {
  levels: ['L1', 'L2', 'L3', 'L4', 'L5', 'S1'],
  patients: [{ name: 'average', sentence: '' }],
  range: { oblique_deg: [-110, 110], tilt_deg: [-50, 50], rotation_deg: [-180, 180], table_mm: [-150, 150], middle_mm: 8 },
  beam: { pulses_per_s: [1, 2, 4, 8, 15, 30], magnification: [1, 1.4, 2], open: [0.2, 1] },
};

/**
 * The level whose superior articular process is looked for under the target's pedicle.
 * @param {Level} level
 */
export function levelBelow(level) {
  const { levels } = FIRST_CATALOGUE;
  return levels[levels.indexOf(level) + 1] ?? level;
}
