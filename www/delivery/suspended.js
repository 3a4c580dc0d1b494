// What is kept in a host's one field of text: an attempt under way (packed log), the receipt of the last finished one, or both.
// Both: the log first, a blank, then the receipt, which is JSON and so begins with a brace.

import { pack, unpack } from './packed.js';

/**
 * The text for a field of `most` characters. The receipt is already handed in, so it has the first right to the room; then as much of
 * the log as fits. `receiptKept` and `lines` (how many) say what is in it.
 * @param {{ receipt?: string | null, lines?: string[] | null }} what
 * @param {number} most
 */
export function suspended({ receipt, lines }, most) {
  const slim = receipt ? compact(receipt) : '';
  const receiptKept = slim !== '' && slim.length <= most;
  const log = lines?.length ? pack(lines, most - (receiptKept ? slim.length + 1 : 0)) : { text: '', lines: 0 };
  return { text: [log.text, receiptKept ? slim : ''].filter(Boolean).join(' '), receiptKept, lines: log.lines };
}

/**
 * What is in such a text: `lines` null when there is no attempt under way; `whole` false when some of it is lost.
 * @param {string} text
 */
export function resumed(text) {
  const given = text.trim();
  const brace = given.indexOf('{');
  const log = (brace < 0 ? given : given.slice(0, brace)).trim();
  const receipt = brace < 0 ? null : given.slice(brace);
  if (!log) return { lines: null, receipt, whole: true };
  const found = unpack(log);
  return { lines: found?.lines.length ? found.lines : null, receipt, whole: found?.whole ?? false };
}

/**
 * JSON without its layout and in ASCII: some hosts count bytes. Numbers keep their very digits.
 * @param {string} json
 */
export function compact(json) {
  return json
    .replace(/("(?:[^"\\]|\\.)*")|\s+/g, (_, text) => text ?? '')
    .replace(/[\u007f-\uffff]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);
}
