// What a learner has done so far: best marks by lesson, and the logs of attempts that are not finished. All of it in the browser's storage,
// which may throw or be empty; a file carries it from one browser to another.
//
// Several pages may be open at once. So what has been done is read again before each writing, under a lock, and an attempt under way lies
// under a key of its own page: none writes over another's. A page that is closed leaves its attempt to the next one that asks.

import { alone } from './other-tabs.js';
import { store, stored } from './storage.js';
import { uuid } from './uuid.js';

const DONE = 'downbeam.done';
/** Attempts under way: those of a page, and those that came out of a file or from before pages had keys of their own. */
const ATTEMPT = 'downbeam.attempt.';
const OPEN = 'downbeam.open.';
/** A page holds this lock, with its name after it, as long as it is open. */
const PAGE_LOCK = 'downbeam.page.';
const KIND = 'downbeam progress';
const MOST_TRIES = 1_000_000;

/**
 * What is kept under a key, whatever it is.
 * @param {string} key
 * @returns {unknown}
 */
function read(key) {
  try {
    return JSON.parse(stored(key) ?? 'null');
  } catch {
    return null;
  }
}

/**
 * @param {string} key
 * @param {unknown} value null to forget it
 */
const write = (key, value) => store(key, value === null ? null : JSON.stringify(value));

/**
 * What has been done of a lesson.
 * @typedef {{ best: number, passed: boolean, tries: number }} Done
 *
 * An attempt under way: its key in the storage, the page that it belongs to, and whose it is.
 * @typedef {{ key: string, page: string | null, of: string, at_ms: number, lines: string[] }} UnderWay
 */

/** @type {(x: unknown) => boolean} */
const share = (x) => typeof x === 'number' && x >= 0 && x <= 1;
/**
 * @param {unknown} entry
 * @returns {entry is Done}
 */
function isDone(entry) {
  if (typeof entry !== 'object' || entry === null) return false;
  const { best, passed, tries } = /** @type {Partial<Done>} */ (entry);
  return share(best) && typeof passed === 'boolean' && tries !== undefined && Number.isInteger(tries) && tries >= 0 && tries <= MOST_TRIES;
}
/** @type {(text: string) => boolean} */
const isHash = (text) => /^[0-9a-f]{64}$/.test(text);
/**
 * @param {unknown} lines
 * @returns {lines is string[]}
 */
const isLog = (lines) => Array.isArray(lines) && lines.length <= 7200 && lines.every((line) => typeof line === 'string' && line.length <= 120);

/** What has been done, and what has been done in this page, where the browser keeps nothing. */
/** @type {Record<string, unknown>} */
let doneHere = {};
function allDone() {
  const found = read(DONE);
  return typeof found === 'object' && found !== null && !Array.isArray(found) ? /** @type {Record<string, unknown>} */ (found) : doneHere;
}

/**
 * Best marks for a lesson by its hash, or null.
 * @param {string} sha256
 */
export function doneOf(sha256) {
  const entry = allDone()[sha256];
  return isDone(entry) ? entry : null;
}

/**
 * The better of two entries, either of which may be missing.
 * @param {unknown} a
 * @param {unknown} b
 */
function better(a, b) {
  if (!isDone(a) || !isDone(b)) return isDone(a) ? a : b;
  return { best: Math.max(a.best, b.best), passed: a.passed || b.passed, tries: Math.max(a.tries, b.tries) };
}

// Storage reaches another page a moment late, lock or not: what this page has done and the other's writing lacks is put back.
globalThis.addEventListener?.('storage', ({ key }) => {
  if (key !== DONE || Object.keys(doneHere).length === 0) return;
  const mine = doneHere;
  changeDone((done) => {
    for (const [hash, entry] of Object.entries(mine)) done[hash] = better(done[hash], entry);
  });
});

/**
 * Does something to what has been done, while no other page does. Returns false if the browser will not keep it.
 * @param {(done: Record<string, unknown>) => void} change
 */
function changeDone(change) {
  return alone(DONE, () => {
    doneHere = { ...allDone() };
    const before = JSON.stringify(doneHere);
    change(doneHere);
    return JSON.stringify(doneHere) === before || write(DONE, doneHere);
  });
}

/**
 * Notes an attempt that was finished. Gives false if the browser will not keep it.
 * @param {string} sha256
 * @param {{ score: number, passed: boolean }} result
 */
export function noteDone(sha256, { score, passed }) {
  return changeDone((done) => {
    const entry = done[sha256];
    const was = isDone(entry) ? entry : { best: 0, passed: false, tries: 0 };
    done[sha256] = { best: Math.max(was.best, score), passed: was.passed || passed, tries: was.tries + 1 };
  });
}

/**
 * This page's name among those that are open.
 * @type {string | null}
 */
let page = null;
function pageName() {
  if (page === null) {
    page = uuid();
    // Held until the page is gone; where there are no locks, every other page counts as closed.
    navigator.locks?.request(PAGE_LOCK + page, () => new Promise(() => {})).catch(() => {});
  }
  return page;
}

/** Names of the pages that are open, as far as the browser says. */
async function openPages() {
  try {
    const { held } = await navigator.locks.query();
    return new Set((held ?? []).flatMap(({ name }) => (name?.startsWith(PAGE_LOCK) ? [name.slice(PAGE_LOCK.length)] : [])));
  } catch {
    return new Set();
  }
}

function keys() {
  try {
    return Object.keys(localStorage);
  } catch {
    return [];
  }
}

/** Attempts under way, the newest first; `of` is the lesson's hash, a point, and the learner's code. */
function attempts() {
  /** @type {UnderWay[]} */
  const found = [];
  for (const key of keys()) {
    if (key.startsWith(OPEN)) {
      const lines = read(key);
      if (isLog(lines)) found.push({ key, page: null, of: key.slice(OPEN.length), at_ms: 0, lines });
    } else if (key.startsWith(ATTEMPT)) {
      const kept = /** @type {{ lines?: unknown, at_ms?: unknown } | null} */ (read(key));
      const [, owner, of] = /^([^.]+)\.(.*)$/s.exec(key.slice(ATTEMPT.length)) ?? [];
      if (of && kept && isLog(kept.lines)) found.push({ key, page: owner, of, at_ms: Number(kept.at_ms) || 0, lines: kept.lines });
    }
  }
  return found.filter(({ lines }) => lines.length > 0).sort((a, b) => b.at_ms - a.at_ms);
}

/** The key of the attempt that was offered last, by lesson and learner: going on with it or beginning anew, this page takes its place. */
/** @type {Map<string, string>} */
const offered = new Map();

/**
 * The log of an attempt that was not finished, or null; of several the newest. Those of pages that are still open are theirs.
 * @param {string} sha256
 * @param {string} learner
 */
export async function unfinished(sha256, learner) {
  const of = `${sha256}.${learner}`;
  const open = await openPages();
  /** @param {UnderWay} one */
  const own = (one) => one.page === pageName();
  const found = attempts().find((one) => one.of === of && (own(one) || one.page === null || !open.has(one.page)));
  offered.delete(of);
  if (found && !own(found)) offered.set(of, found.key);
  return found?.lines ?? null;
}

/**
 * Whether an attempt at a lesson was begun and not finished, by any learner of this browser.
 * @param {string} sha256
 */
export const begun = (sha256) => attempts().some(({ of }) => of.startsWith(`${sha256}.`));

/**
 * Keeps a log, or forgets it (null). Returns false if the browser will not.
 * @param {string} sha256
 * @param {string} learner
 * @param {string[] | null} lines
 */
export function keepUnfinished(sha256, learner, lines) {
  const of = `${sha256}.${learner}`;
  const kept = write(`${ATTEMPT}${pageName()}.${of}`, lines && { at_ms: Date.now(), lines });
  const offeredKey = offered.get(of);
  if (kept && offeredKey !== undefined) {
    write(offeredKey, null);
    offered.delete(of);
  }
  return kept;
}

/** Everything, as an object for a file; of several attempts of one lesson and learner the newest. */
export function exported() {
  /** @type {Record<string, string[]>} */
  const open = {};
  for (const { of, lines } of attempts()) open[of] ??= lines;
  return { kind: KIND, format: 1, done: Object.fromEntries(Object.entries(allDone()).filter(([, entry]) => isDone(entry))), open };
}

/**
 * Takes in such an object, the better marks of both winning; returns how many lessons it held, or null if it is no such file.
 * @param {unknown} file
 */
export async function takeIn(file) {
  const given = /** @type {{ kind?: unknown, format?: unknown, done?: unknown, open?: Record<string, unknown> } | null} */ (file);
  if (given?.kind !== KIND || given.format !== 1 || typeof given.done !== 'object' || given.done === null) return null;
  const entries = Object.entries(given.done).flatMap(([hash, entry]) => (isHash(hash) && isDone(entry) ? [{ hash, ...entry }] : []));
  await changeDone((done) => {
    for (const { hash, best, passed, tries } of entries) done[hash] = better(done[hash], { best, passed, tries });
  });
  const here = new Set(attempts().map(({ of }) => of));
  for (const [of, lines] of Object.entries(given.open ?? {})) {
    if (isHash(of.slice(0, 64)) && isLog(lines) && !here.has(of)) write(OPEN + of, lines);
  }
  return entries.length;
}
