// What may stand in an address or an attribute: rules that read a text into a value, or `undefined` where it does not fit. What
// they allow is said by `allowed(rule)` of the texts.

/** One of these words, in capitals or not. */
export const oneOf = (values) => ({
  kind: 'word',
  values,
  read: (text) => values.find((v) => v.toLowerCase() === text.toLowerCase()),
});

/** A number within limits. */
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

/** `on` or `off`. */
export const onOff = { kind: 'onOff', values: ['on', 'off'], read: (text) => ({ on: true, off: false })[text.toLowerCase()] };

/** At most 40 characters of what was found, for a sentence about it. */
export const clip = (text) => (text.length > 40 ? `${text.slice(0, 40)}…` : text);
