// This page in a frame of a page that named its origin: `player.html?host=https://course.example.org`. Messages go to that origin and no
// other, and only its messages, from the window around, are heard. The messages are described in README, "In a page of your own".
//
// In a sandbox without `allow-same-origin` this page's own origin is opaque and storage throws. Messages work all the same; progress is
// kept if the page around keeps it, else not, and `keepsProgress` says so.

import { storageWorks } from '../base/storage.js';
import { uuid } from '../base/uuid.js';
import { delivery as texts } from '../words/delivery.js';
import { Trouble } from './trouble.js';

const VERSION = 1;
/** How long the page around has to answer `ready` with a `start`, and a result with `taken`. */
const START_MS = 1500;
const ANSWER_MS = 5000;
const MOST_LINES = 7200;

/**
 * @import { Delivery, DeliveryActs } from './choose.js'
 *
 * Whose attempt it is: the lesson's digest and the learner's code.
 * @typedef {{ sha256: string, learner: string }} Whose
 *
 * What the page around says at the beginning, as far as it fits.
 * @typedef {{ lesson: string | null, learner: string | null, lines: string[] | null, of: Whose | null, keeps: boolean }} Start
 *
 * What becomes of a result.
 * @typedef {{ accepted: boolean, said: string | null }} Outcome
 */

/**
 * The origin that the address names: null when none is named. Throws one sentence when it is no origin.
 * @param {URLSearchParams} query
 */
export function hostOf(query) {
  const named = query.get('host');
  if (named === null) return null;
  let origin = 'null';
  try {
    origin = new URL(named).origin;
  } catch {
    // Said below.
  }
  if (origin === 'null' || origin !== named) throw new Trouble(texts.badHost(named.slice(0, 80)));
  return origin;
}

/**
 * A Delivery to the page around. `local` is the Delivery that keeps progress here, as far as storage works.
 * @param {DeliveryActs} act
 * @param {string} host
 * @param {Delivery} local
 * @returns {Promise<Delivery>}
 */
export async function connect({ notice, lesson = null }, host, local) {
  const around = globalThis.parent;
  /**
   * Results whose answer is awaited, by id.
   * @type {Map<string, (answer: Outcome) => void>}
   */
  const waiting = new Map();
  let begin = () => {};
  /** @type {Start | null} */
  let start = null;

  const post = (/** @type {string} */ type, /** @type {object} */ more = {}) => {
    try {
      around.postMessage({ source: 'downbeam', v: VERSION, type, ...more }, host);
    } catch {
      notice([texts.noMessage]);
    }
  };

  const started = /** @type {Promise<void>} */ (new Promise((ready) => {
    begin = ready;
    setTimeout(ready, START_MS);
  }));
  addEventListener('message', (event) => {
    if (event.source !== around || event.origin !== host) return;
    const { data } = event;
    if (data?.source !== 'downbeam-host' || data.v !== VERSION) return;
    if (data.type === 'start') {
      start = startOf(data);
      begin();
    } else if (data.type === 'taken') {
      waiting.get(data.id)?.({ accepted: data.accepted !== false, said: typeof data.said === 'string' ? data.said.slice(0, 300) : null });
    }
  });
  tellSize(post);
  post('ready');
  await started;
  const given = /** @type {Start | null} */ (start);
  const hostKeeps = given?.keeps ?? false;
  const keepsProgress = hostKeeps || storageWorks();
  if (!keepsProgress) notice([texts.notKept]);
  let kept = given?.lines ?? null;
  /** Whose attempt `kept` is: lesson and learner; null when the page around did not say. */
  let of = given?.of ?? null;
  /** @type {Whose | null} */
  let at = null;

  return {
    name: 'frame',
    lesson: given?.lesson ?? lesson,
    learner: given?.learner ?? null,
    keepsProgress,
    opened(lesson) {
      at = { sha256: lesson.sha256, learner: lesson.learner };
      local.opened?.(lesson);
    },
    async resume() {
      if (!hostKeeps) return local.resume();
      const theirs = of !== null && at !== null && (of.sha256 !== at.sha256 || of.learner !== at.learner);
      return theirs ? null : kept;
    },
    keep(lines) {
      kept = lines;
      of = at;
      if (!hostKeeps) local.keep(lines);
      post('progress', { of, lines });
    },
    async finish(result) {
      const id = uuid();
      /** @type {Promise<Outcome>} */
      const answer = new Promise((done) => {
        waiting.set(id, done);
        setTimeout(() => done({ accepted: false, said: texts.notConfirmed }), ANSWER_MS);
      });
      post('result', { id, of: at, result });
      const said = await answer;
      waiting.delete(id);
      // Until the page around has confirmed the result, the attempt that gives it is kept.
      if (said.accepted) kept = null;
      if (!hostKeeps && said.accepted) await local.finish(result);
      return said;
    },
    leave() {
      local.leave();
    },
  };
}

/**
 * What the page around says at the beginning; what does not fit is left out.
 * @param {Record<string, any>} said
 * @returns {Start}
 */
function startOf({ lesson, learner, lines, of, keeps }) {
  const text = (/** @type {unknown} */ value, /** @type {number} */ most) => (typeof value === 'string' && value.length <= most ? value : null);
  const log = Array.isArray(lines) && lines.length > 0 && lines.length <= MOST_LINES && lines.every((line) => typeof line === 'string');
  return { lesson: text(lesson, 100_000), learner: text(learner, 64), lines: log ? lines : null, of: typeof of?.sha256 === 'string' ? of : null, keeps: keeps === true };
}

/**
 * Tells the height of the content whenever it changes, so that the frame can fit it.
 * @param {(type: string, more: object) => void} post
 */
function tellSize(post) {
  let last = 0;
  const tell = () => {
    const height = Math.ceil(document.body.getBoundingClientRect().bottom + scrollY);
    if (height !== last) post('size', { height: (last = height) });
  };
  if (globalThis.ResizeObserver) new ResizeObserver(tell).observe(document.body);
  tell();
}
