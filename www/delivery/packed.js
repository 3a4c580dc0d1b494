// The log of an attempt in few characters, for places that give little room (SCORM 1.2: 4,096).
//
// `db1.<lines>.<FNV-1a of the lines>.<base64>`. A line is `tick name word…` (src/procedure/log_line.rs); as bytes: the ticks since the
// line before (varint), action and number of words in one byte, then a varint a word: a whole number (zigzag, even), or a text from
// a list that grows as it goes (odd). Whatever does not look like that is kept as it is. A third of the text, and any beginning of
// it can still be read, so that a host that cuts it short loses the end only.

/** In the order of their numbers; new ones only at the end. */
const ACTIONS = [
  'orient', 'rotate_image', 'move_table', 'spot', 'fluoroscopy', 'keep', 'recall', 'mark', 'choose', 'place',
  'angle', 'roll', 'advance', 'withdraw', 'remove', 'aspirate', 'inject', 'name', 'point', 'finish',
];
const FORMAT = 'db1';
const AS_IT_IS = 31;
const MOST_WORDS = 7;
/** Far inside what a varint of five bytes and the bit arithmetic here hold. */
const LARGEST = 2 ** 28;
const WHOLE = /^(?:0|-?[1-9]\d{0,8})$/;

/**
 * Packs lines. With `most`, as many of the first ones as fit that many characters; `lines` says how many.
 * @param {string[]} lines
 * @param {number} most
 */
export function pack(lines, most = Infinity) {
  const { bytes, ends } = bytesOf(lines);
  /** @param {number} n */
  const length = (n) => head(lines, n).length + 4 * Math.ceil((n ? ends[n - 1] : 0) / 3);
  let n = lines.length;
  if (length(n) > most) {
    let low = 0;
    while (low < n) {
      const middle = (low + n + 1) >> 1;
      if (length(middle) <= most) low = middle;
      else n = middle - 1;
    }
  }
  if (length(n) > most) return { text: '', lines: 0 };
  return { text: head(lines, n) + base64(bytes.slice(0, n ? ends[n - 1] : 0)), lines: n };
}

/**
 * The lines of a packed text, and whether they are all there and right; null when the text is no packed log.
 * @param {string} text
 */
export function unpack(text) {
  const [format, count, sum, code, more] = String(text).trim().split('.');
  if (format !== FORMAT || code === undefined || more !== undefined) return null;
  /** @type {string[]} */
  const lines = [];
  try {
    readInto(lines, fromBase64(code));
  } catch {
    // Cut short or damaged: what came before is still good.
  }
  return { lines, whole: String(lines.length) === count && fnv(lines.join('\n')) === sum };
}

/** @type {(lines: string[], n: number) => string} */
const head = (lines, n) => `${FORMAT}.${n}.${fnv(lines.slice(0, n).join('\n'))}.`;

/**
 * FNV-1a, 32 bits, over UTF-16 units, hexadecimal: a checksum, nothing more.
 * @param {string} text
 */
export function fnv(text) {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return (h >>> 0).toString(16).padStart(8, '0');
}

/** @param {string[]} lines */
function bytesOf(lines) {
  /** @type {number[]} */
  const bytes = [];
  /** @type {number[]} */
  const ends = [];
  /** @type {Map<string, number>} */
  const known = new Map();
  let last = 0;
  /** @param {number} n */
  const varint = (n) => {
    for (; n > 127; n >>>= 7) bytes.push((n & 127) | 128);
    bytes.push(n);
  };
  /** @param {string} word */
  const text = (word) => {
    const coded = new TextEncoder().encode(word);
    varint(coded.length);
    for (const byte of coded) bytes.push(byte);
  };
  for (const line of lines) {
    const [tick, name, ...words] = line.split(' ');
    const action = ACTIONS.indexOf(name);
    const fits = isWhole(tick) && Number(tick) >= last && action >= 0 && words.length <= MOST_WORDS;
    varint(fits ? Number(tick) - last : 0);
    if (fits) {
      last = Number(tick);
      bytes.push(action | (words.length << 5));
      for (const word of words) {
        if (isWhole(word)) {
          const n = Number(word);
          varint((n < 0 ? -2 * n - 1 : 2 * n) * 2);
          continue;
        }
        const number = known.get(word);
        if (number !== undefined) {
          varint(number * 2 + 1);
        } else {
          varint(1);
          text(word);
          known.set(word, known.size + 1);
        }
      }
    } else {
      bytes.push(AS_IT_IS);
      text(line);
    }
    ends.push(bytes.length);
  }
  return { bytes, ends };
}

/** @param {string} word */
const isWhole = (word) => WHOLE.test(word) && Math.abs(Number(word)) < LARGEST;

/**
 * @param {string[]} lines
 * @param {number[]} bytes
 */
function readInto(lines, bytes) {
  let at = 0;
  let last = 0;
  /** @type {string[]} */
  const words = [];
  const byte = () => {
    if (at >= bytes.length) throw new Error('cut short');
    return bytes[at++];
  };
  const varint = () => {
    let n = 0;
    for (let shift = 0; shift < 35; shift += 7) {
      const b = byte();
      n += (b & 127) * 2 ** shift;
      if (b < 128) return n;
    }
    throw new Error('no number');
  };
  const text = () => {
    const length = varint();
    if (at + length > bytes.length) throw new Error('cut short');
    return new TextDecoder('utf-8', { fatal: true }).decode(Uint8Array.from(bytes.slice(at, (at += length))));
  };
  const word = () => {
    const n = varint();
    if (n % 2 === 0) return String(n % 4 === 2 ? -(n + 2) / 4 : n / 4);
    if (n === 1) words.push(text());
    const found = words[n === 1 ? words.length - 1 : (n - 1) / 2 - 1];
    if (found === undefined) throw new Error('no such word');
    return found;
  };
  while (at < bytes.length) {
    const ticks = varint();
    const first = byte();
    if ((first & 31) === AS_IT_IS) {
      lines.push(text());
      continue;
    }
    const name = ACTIONS[first & 31];
    if (!name) throw new Error('no such action');
    const line = [String(last + ticks), name];
    for (let i = first >> 5; i > 0; i -= 1) line.push(word());
    last += ticks;
    lines.push(line.join(' '));
  }
}

/** @param {number[]} bytes */
function base64(bytes) {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}

/**
 * As far as it is base64: a text that was cut may end inside a group of four.
 * @param {string} code
 */
function fromBase64(code) {
  const clean = /^[A-Za-z0-9+/]*/.exec(code)?.[0] ?? '';
  const whole = clean.length % 4 === 1 ? clean.slice(0, -1) : clean;
  return Array.from(atob(whole), (c) => c.charCodeAt(0));
}
