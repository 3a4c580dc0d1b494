// Receipts out of files and folders: one a file, or one a line. What a file may hold the engine says (`class::receipt_text`), as it does for
// `downbeam grade`: the same files give the same rows.

import { teach } from '../words/teach.js';

/** Longest receipt, bytes (`class::receipt::MOST_BYTES`); a byte more is read, so that the engine says that it is too long. */
const MOST_BYTES = 512 * 1024;
/** Of a plain text so much is looked at, bytes (`class::receipt_text::GLANCE_BYTES`). */
const GLANCE_BYTES = 256;
const NEWLINE = 10;

/** Where a file lies: its path in the folder that was chosen, else its name. */
export const placeOf = ({ file, path }) => path || file.webkitRelativePath || file.name;

/** The files of a choice: `{file, path}`, `path` being empty for a file that was chosen by itself. */
export const chosen = (files) => files.map((file) => ({ file, path: file.webkitRelativePath }));

/** The files of a drop, folders with all below them. Must be called while the drop is being handled. */
export async function dropped(transfer) {
  const items = [...transfer.items].filter((item) => item.kind === 'file');
  const entries = items.map((item) => ({ entry: item.webkitGetAsEntry?.(), file: item.getAsFile() }));
  const found = [];
  for (const { entry, file } of entries) {
    if (entry?.isDirectory) await below(entry, found);
    else if (file) found.push({ file, path: '' });
  }
  return found;
}

async function below(folder, found) {
  const reader = folder.createReader();
  for (;;) {
    // A call gives a hundred or so at a time, and none when there are no more.
    const entries = await new Promise((resolve, reject) => reader.readEntries(resolve, reject)).catch(() => []);
    if (entries.length === 0) return;
    for (const entry of entries) {
      if (entry.isDirectory) await below(entry, found);
      else found.push({ file: await new Promise((resolve, reject) => entry.file(resolve, reject)).catch(() => null), path: entry.fullPath.replace(/^\//, ''), name: entry.name });
    }
  }
}

/** Parts those that may hold receipts from the others; `kinds` is the engine's `ClassRoom`. Files of folders come in the order of their paths, after those chosen by themselves. */
export async function sorted(given, kinds) {
  const alone = given.filter((g) => !g.path);
  const ofFolders = given.filter((g) => g.path).sort((a, b) => byPath(a.path, b.path));
  const taken = [...alone];
  const leftOut = [];
  for (const one of ofFolders) {
    // What cannot be opened is taken, so that it gets a row that says so.
    const beginning = one.file ? await bytesOf(one.file.slice(0, GLANCE_BYTES)).catch(() => null) : null;
    if (kinds.mayHold(one.path, beginning ?? BRACE)) taken.push(one);
    else leftOut.push(one.path);
  }
  return { taken, leftOut };
}

/** The order of paths, folder by folder, by code points. */
function byPath(a, b) {
  const [left, right] = [a.split('/'), b.split('/')];
  for (let i = 0; i < Math.min(left.length, right.length); i++) {
    if (left[i] !== right[i]) return byCodePoint(left[i], right[i]);
  }
  return left.length - right.length;
}

function byCodePoint(a, b) {
  const [left, right] = [[...a], [...b]];
  for (let i = 0; i < Math.min(left.length, right.length); i++) {
    if (left[i] !== right[i]) return left[i].codePointAt(0) - right[i].codePointAt(0);
  }
  return left.length - right.length;
}

const BRACE = Uint8Array.of(123);
const NOTHING = new Uint8Array();
const bytesOf = async (blob) => new Uint8Array(await blob.arrayBuffer());

/** Every receipt of a file: `{line, text}` or `{line, why}`; `line` is undefined where the file is one receipt. */
export async function* receiptsIn({ file }, kinds) {
  let line;
  try {
    if (!file) throw new Error('not found');
    if (!kinds.isLines(file.name, NOTHING) && !kinds.isLines(file.name, await firstLine(file))) {
      yield asText(undefined, await bytesOf(file.slice(0, MOST_BYTES + 1)));
      return;
    }
    line = 1;
    for await (const bytes of lines(file)) {
      // A line of blanks counts and holds nothing.
      if (!isBlank(bytes)) yield asText(line, bytes);
      line += 1;
    }
  } catch {
    // Moved, renamed, or not to be opened: the browser's own words say no more.
    yield { line, why: teach.check.gone };
  }
}

const isBlank = (bytes) => bytes.every((b) => b === 32 || (b >= 9 && b <= 13 && b !== 11));

/** The first line with anything in it. */
async function firstLine(file) {
  for await (const bytes of lines(file)) if (!isBlank(bytes)) return bytes;
  return NOTHING;
}

function asText(line, bytes) {
  try {
    // The engine knows a byte order mark itself.
    return { line, text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return { line, why: teach.check.notText };
  }
}

/** The lines of a file with their ends, each cut a byte past the longest receipt. */
async function* lines(file) {
  const reader = file.stream().getReader();
  let parts = [];
  let length = 0;
  const keep = (part) => {
    const room = MOST_BYTES + 1 - length;
    if (room > 0) parts.push(part.subarray(0, room));
    length += Math.min(part.length, Math.max(room, 0));
  };
  const whole = () => {
    const bytes = new Uint8Array(length);
    let at = 0;
    for (const part of parts) {
      bytes.set(part, at);
      at += part.length;
    }
    parts = [];
    length = 0;
    return bytes;
  };
  try {
    for (;;) {
      const { value, done } = await reader.read();
      if (done) break;
      let from = 0;
      for (let end = value.indexOf(NEWLINE); end >= 0; end = value.indexOf(NEWLINE, from)) {
        keep(value.subarray(from, end + 1));
        from = end + 1;
        yield whole();
      }
      keep(value.subarray(from));
    }
    if (length > 0) yield whole();
  } finally {
    reader.cancel().catch(() => {});
  }
}
