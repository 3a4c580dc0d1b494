// What a learner has done so far: best marks by lesson, and the logs of attempts that are not finished. All of it in the browser's storage,
// which may throw or be empty; a file carries it from one browser to another.

import { store, stored } from '../storage.js';

const DONE = 'downbeam.done';
const OPEN = 'downbeam.open.';
const KIND = 'downbeam progress';
const MOST_TRIES = 1_000_000;

let done = read(DONE) ?? {};
if (typeof done !== 'object' || Array.isArray(done)) done = {};

function read(key) {
  try {
    return JSON.parse(stored(key));
  } catch {
    return null;
  }
}

const write = (key, value) => store(key, value === null ? null : JSON.stringify(value));

const share = (x) => typeof x === 'number' && x >= 0 && x <= 1;
const isDone = (entry) => typeof entry === 'object' && entry !== null && share(entry.best) && typeof entry.passed === 'boolean' && Number.isInteger(entry.tries) && entry.tries >= 0 && entry.tries <= MOST_TRIES;
const isHash = (text) => /^[0-9a-f]{64}$/.test(text);
const isLog = (lines) => Array.isArray(lines) && lines.length <= 7200 && lines.every((line) => typeof line === 'string' && line.length <= 120);

/** Best marks for a lesson by its hash: `{best, passed, tries}` or null. */
export const doneOf = (sha256) => (isDone(done[sha256]) ? done[sha256] : null);

/** Notes an attempt that was finished. Returns false if the browser will not keep it. */
export function noteDone(sha256, { score, passed }) {
  const was = doneOf(sha256) ?? { best: 0, passed: false, tries: 0 };
  done[sha256] = { best: Math.max(was.best, score), passed: was.passed || passed, tries: was.tries + 1 };
  return write(DONE, done);
}

/** The log of an attempt that was not finished, or null. */
export function unfinished(sha256, learner) {
  const lines = read(`${OPEN}${sha256}.${learner}`);
  return isLog(lines) && lines.length > 0 ? lines : null;
}

/** Whether an attempt at a lesson was begun and not finished, by any learner of this browser. */
export function begun(sha256) {
  try {
    return Object.keys(localStorage).some((key) => key.startsWith(`${OPEN}${sha256}.`) && isLog(read(key)));
  } catch {
    return false;
  }
}

/** Keeps a log, or forgets it (null). Returns false if the browser will not. */
export function keepUnfinished(sha256, learner, lines) {
  return write(`${OPEN}${sha256}.${learner}`, lines);
}

/** Everything, as an object for a file. */
export function exported() {
  const open = {};
  try {
    for (const key of Object.keys(localStorage)) {
      const lines = key.startsWith(OPEN) ? read(key) : null;
      if (isLog(lines)) open[key.slice(OPEN.length)] = lines;
    }
  } catch {
    // Without storage there is nothing unfinished to carry over.
  }
  return { kind: KIND, format: 1, done: Object.fromEntries(Object.entries(done).filter(([, entry]) => isDone(entry))), open };
}

/** Takes in such an object, the better marks of both winning; returns how many lessons it held, or null if it is no such file. */
export function takeIn(given) {
  if (given?.kind !== KIND || given.format !== 1 || typeof given.done !== 'object' || given.done === null) return null;
  const entries = Object.entries(given.done).filter(([hash, entry]) => isHash(hash) && isDone(entry));
  for (const [hash, { best, passed, tries }] of entries) {
    const was = doneOf(hash) ?? { best: 0, passed: false, tries: 0 };
    done[hash] = { best: Math.max(best, was.best), passed: passed || was.passed, tries: Math.max(tries, was.tries) };
  }
  write(DONE, done);
  for (const [key, lines] of Object.entries(given.open ?? {})) {
    if (isHash(key.slice(0, 64)) && isLog(lines) && read(OPEN + key) === null) write(OPEN + key, lines);
  }
  return entries.length;
}
