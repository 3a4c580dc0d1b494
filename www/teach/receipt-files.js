// Receipts out of files and folders: one a file, or one a line. What a file may hold the engine says (`class::receipt_text`), as it does for
// `downbeam grade`: the same files give the same rows.

import { teach } from '../words/teach.js';

/** Longest receipt, bytes (`class::receipt::MOST_BYTES`); a byte more is read, so that the engine says that it is too long. */
const MOST_BYTES = 512 * 1024;
/** Of a plain text so much is looked at, bytes (`class::receipt_text::GLANCE_BYTES`). */
const GLANCE_BYTES = 256;
const NEWLINE = 10;

/**
 * @import { ClassRoom } from '../pkg/lessons.js'
 *
 * A file that was given: its path in the folder that was chosen, empty for one that was chosen by itself. A file of a folder that cannot be
 * opened is null.
 * @typedef {{ file: File | null, path: string }} Given
 *
 * A receipt of a file, or why there is none; `line` is undefined where the file is one receipt.
 * @typedef {{ line: number | undefined, text: string, why?: undefined } | { line: number | undefined, text?: undefined, why: string }} Found
 *
 * What the engine says of a file by its name and beginning.
 * @typedef {Pick<typeof ClassRoom, 'mayHold' | 'isLines'>} Kinds
 */

/**
 * Where a file lies: its path in the folder that was chosen, else its name.
 * @param {Given} of
 */
export const placeOf = ({ file, path }) => path || file?.webkitRelativePath || file?.name || '';

/**
 * The files of a choice.
 * @type {(files: File[]) => Given[]}
 */
export const chosen = (files) => files.map((file) => ({ file, path: file.webkitRelativePath }));

/**
 * The files of a drop, folders with all below them. Must be called while the drop is being handled.
 * @param {DataTransfer} transfer
 */
export async function dropped(transfer) {
  const items = [...transfer.items].filter((item) => item.kind === 'file');
  const entries = items.map((item) => ({ entry: item.webkitGetAsEntry?.(), file: item.getAsFile() }));
  /** @type {Given[]} */
  const found = [];
  for (const { entry, file } of entries) {
    if (isFolder(entry)) await below(entry, found);
    else if (file) found.push({ file, path: '' });
  }
  return found;
}

/**
 * @param {FileSystemEntry | null | undefined} entry
 * @returns {entry is FileSystemDirectoryEntry}
 */
const isFolder = (entry) => entry?.isDirectory === true;

/**
 * The file of an entry, or null where it cannot be opened.
 * @param {FileSystemEntry} entry
 * @returns {Promise<File | null>}
 */
const fileOf = (entry) => new Promise((/** @type {(file: File) => void} */ resolve, reject) => /** @type {FileSystemFileEntry} */ (entry).file(resolve, reject)).catch(() => null);

/**
 * @param {FileSystemDirectoryEntry} folder
 * @param {Given[]} found
 */
async function below(folder, found) {
  const reader = folder.createReader();
  for (;;) {
    // A call gives a hundred or so at a time, and none when there are no more.
    const entries = await new Promise((/** @type {(entries: FileSystemEntry[]) => void} */ resolve, reject) => reader.readEntries(resolve, reject)).catch(() => []);
    if (entries.length === 0) return;
    for (const entry of entries) {
      if (isFolder(entry)) await below(entry, found);
      else found.push({ file: await fileOf(entry), path: entry.fullPath.replace(/^\//, '') });
    }
  }
}

/**
 * Parts those that may hold receipts from the others. Files of folders come in the order of their paths, after those chosen by themselves.
 * @param {Given[]} given
 * @param {Kinds} kinds
 */
export async function sorted(given, kinds) {
  const alone = given.filter((g) => !g.path);
  const ofFolders = given.filter((g) => g.path).sort((a, b) => byPath(a.path, b.path));
  const used = [...alone];
  /** @type {string[]} */
  const leftOut = [];
  for (const one of ofFolders) {
    // What cannot be opened is used, so that it gets a row that says so.
    const beginning = one.file ? await bytesOf(one.file.slice(0, GLANCE_BYTES)).catch(() => null) : null;
    if (kinds.mayHold(one.path, beginning ?? BRACE)) used.push(one);
    else leftOut.push(one.path);
  }
  return { used, leftOut };
}

/**
 * The order of paths, folder by folder, by code points.
 * @param {string} a
 * @param {string} b
 */
function byPath(a, b) {
  const [left, right] = [a.split('/'), b.split('/')];
  for (let i = 0; i < Math.min(left.length, right.length); i++) {
    if (left[i] !== right[i]) return byCodePoint(left[i], right[i]);
  }
  return left.length - right.length;
}

/**
 * @param {string} a
 * @param {string} b
 */
function byCodePoint(a, b) {
  const [left, right] = [[...a], [...b]];
  for (let i = 0; i < Math.min(left.length, right.length); i++) {
    if (left[i] !== right[i]) return (left[i].codePointAt(0) ?? 0) - (right[i].codePointAt(0) ?? 0);
  }
  return left.length - right.length;
}

const BRACE = Uint8Array.of(123);
const NOTHING = new Uint8Array();
const bytesOf = async (/** @type {Blob} */ blob) => new Uint8Array(await blob.arrayBuffer());

/**
 * Every receipt of a file.
 * @param {Given} of
 * @param {Kinds} kinds
 * @returns {AsyncGenerator<Found>}
 */
export async function* receiptsIn({ file }, kinds) {
  /** @type {number | undefined} */
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

const isBlank = (/** @type {Uint8Array} */ bytes) => bytes.every((b) => b === 32 || (b >= 9 && b <= 13 && b !== 11));

/**
 * The first line with anything in it.
 * @param {File} file
 */
async function firstLine(file) {
  for await (const bytes of lines(file)) if (!isBlank(bytes)) return bytes;
  return NOTHING;
}

/**
 * @param {number | undefined} line
 * @param {Uint8Array} bytes
 * @returns {Found}
 */
function asText(line, bytes) {
  try {
    // The engine knows a byte order mark itself.
    return { line, text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return { line, why: teach.check.notText };
  }
}

/**
 * The lines of a file with their ends, each cut a byte past the longest receipt.
 * @param {File} file
 * @returns {AsyncGenerator<Uint8Array>}
 */
async function* lines(file) {
  const reader = file.stream().getReader();
  /** @type {Uint8Array[]} */
  let parts = [];
  let length = 0;
  const keep = (/** @type {Uint8Array} */ part) => {
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
