// A start number gives a start position: away from every view to be found, the same for the same number everywhere.

/**
 * A well mixed 32-bit hash (the finaliser of MurmurHash3, public domain), as a number in [0, 1).
 * @param {number} n
 */
function mixed(n) {
  let h = n >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return ((h ^ (h >>> 16)) >>> 0) / 2 ** 32;
}

/**
 * Whole degrees: 8 to 22 off straight above, and 7 to 16 of tilt, to either side.
 * @param {number} number of the start
 */
export function startPosition(number) {
  /** @param {number} salt */
  const draw = (salt) => mixed(number * 4 + salt + 0x9e3779b9);
  /** @param {number} salt */
  const sign = (salt) => (draw(salt) < 0.5 ? -1 : 1);
  return {
    oblique_deg: sign(0) * Math.round(8 + 14 * draw(1)),
    tilt_deg: sign(2) * Math.round(7 + 9 * draw(3)),
  };
}

/**
 * A new start number, 1 to 9999, other than the last one.
 * @param {number} last
 */
export function newStart(last) {
  const next = 1 + Math.floor(Math.random() * 9999);
  return next === last ? (next % 9999) + 1 : next;
}
