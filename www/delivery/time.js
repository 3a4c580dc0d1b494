// A length of time as the standards write it.

/**
 * SCORM 1.2's CMITimespan, `HHHH:MM:SS.SS`: two to four digits of hours.
 * @param {number} seconds
 */
export function timespan(seconds) {
  const hundredths = Math.min(Math.round(checked(seconds) * 100), 9999 * 360_000 + 359_999);
  /** @param {number} n */
  const two = (n) => String(n).padStart(2, '0');
  const [h, m, s, c] = [Math.floor(hundredths / 360_000), Math.floor(hundredths / 6000) % 60, Math.floor(hundredths / 100) % 60, hundredths % 100];
  return `${two(h)}:${two(m)}:${two(s)}.${two(c)}`;
}

/**
 * ISO 8601, as SCORM 2004 and xAPI want it, to a hundredth of a second: `PT2M13.5S`.
 * @param {number} seconds
 */
export function duration(seconds) {
  const hundredths = Math.round(checked(seconds) * 100);
  const [h, m, s] = [Math.floor(hundredths / 360_000), Math.floor(hundredths / 6000) % 60, (hundredths % 6000) / 100];
  return `PT${h ? `${h}H` : ''}${m ? `${m}M` : ''}${s || (!h && !m) ? `${s}S` : ''}`;
}

/** @param {number} seconds */
const checked = (seconds) => (Number.isFinite(seconds) && seconds > 0 ? seconds : 0);
