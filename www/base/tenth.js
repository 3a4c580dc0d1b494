// Angles and lengths are kept to a tenth, as the log keeps them: every rounding to it is this one.

/**
 * To the nearest tenth.
 * @param {number} value
 */
export const tenth = (value) => Math.round(value * 10) / 10;
