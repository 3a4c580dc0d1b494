// Angles and lengths are kept to a tenth, as the log keeps them: every rounding to it is this one.

/**
 * Where the C-arm stands: oblique > 0 to the patient's left, tilt > 0 cephalad.
 * @typedef {{ oblique_deg: number, tilt_deg: number }} Angles
 */

/**
 * To the nearest tenth.
 * @param {number} value
 */
export const tenth = (value) => Math.round(value * 10) / 10;
