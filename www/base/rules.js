// What may stand in an address or an attribute: rules that read a text into a value, or `undefined` where it does not fit. What
// they allow is said by `allowed(rule)` of the texts.

/**
 * A rule: what kind of value it reads, and how. `undefined` where a text does not fit.
 * @template [V=string | number | boolean]
 * @typedef {{ kind: string, read: (text: string) => V | undefined, values?: readonly string[], low?: number, high?: number, whole?: boolean }} Rule
 */

/**
 * One of these words, in capitals or not.
 * @param {readonly string[]} values
 * @returns {Rule<string>}
 */
export const oneOf = (values) => ({
  kind: 'word',
  values,
  read: (text) => values.find((v) => v.toLowerCase() === text.toLowerCase()),
});

/**
 * A number within limits.
 * @param {number} low
 * @param {number} high
 * @param {boolean} [whole]
 * @returns {Rule<number>}
 */
export const between = (low, high, whole = false) => ({
  kind: 'number',
  low,
  high,
  whole,
  read: (text) => {
    const n = Number(text);
    const fits = text.trim() !== '' && Number.isFinite(n) && n >= low && n <= high && (!whole || Number.isInteger(n));
    return fits ? n : undefined;
  },
});

/**
 * `on` or `off`.
 * @type {Rule<boolean>}
 */
export const onOff = { kind: 'onOff', values: ['on', 'off'], read: (text) => new Map([['on', true], ['off', false]]).get(text.toLowerCase()) };

/**
 * At most 40 characters of what was found, for a sentence about it: on one line, and no half of a character.
 * @param {string} text
 */
export const clip = (text) => {
  const line = text.replace(/\p{Cc}/gu, ' ');
  return line.length > 40 ? `${[...line.slice(0, 80)].slice(0, 40).join('')}…` : line;
};
