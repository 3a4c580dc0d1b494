// An attempt under way in a learning record store's document of state (xAPI 1.0.3, part 3, 2.3), and what else a later session must know.

import { alone } from '../base/other-tabs.js';
import { retrier } from './retry.js';
import { delivery as texts } from '../words/delivery.js';

const STATE_ID = 'downbeam-attempt';
const FORMAT = 1;
const EVERY_MS = 5000;

/**
 * @import { Agent } from './learner.js'
 * @import { RecordStore } from './lrs.js'
 *
 * Whose document it is.
 * @typedef {{ activityId: string, actor: Agent, registration: string | null }} Registered
 *
 * What is in it: the log of an attempt under way, and what else its owner keeps there.
 * @typedef {{ format: number, lines: string[] | null }} Content
 */

/**
 * The path of a document of state of an activity, agent and registration.
 * @param {Registered} of
 * @param {string} stateId
 */
export function statePath({ activityId, actor, registration }, stateId) {
  const query = new URLSearchParams({ stateId, activityId, agent: JSON.stringify(actor) });
  if (registration) query.set('registration', registration);
  return `activities/state?${query}`;
}

/**
 * Reads the document at once. `works` is false where the store has none or it cannot be read; nothing is written then.
 *
 * Another page of the same learner may write it too, here or on another machine: before each writing it is read again, and
 * `merge(own, theirs)` puts into the own content what must not be lost of theirs. Only the last writing of a page that closes has no
 * time for that.
 * @template {Content} [C=Content]
 * @param {RecordStore} store
 * @param {Registered} launch
 * @param {(sentences: string[]) => void} notice
 * @param {(own: C, theirs: C) => void} merge
 */
export async function stateDocument(store, launch, notice, merge = () => {}) {
  const path = statePath(launch, STATE_ID);
  const retry = retrier();
  const text = await store.get(path);
  const found = /** @type {C | null} */ (read(text));
  const damaged = Boolean(text) && found === null;
  const content = found ?? /** @type {C} */ ({ format: FORMAT, lines: null });
  let written = JSON.stringify(content);
  let works = text !== null;
  let last = -Infinity;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;
  let troubled = false;

  /**
   * Writes it. `lastBytes`: how many bytes a page that closes may still send; null while it stays.
   * @param {number | null} lastBytes
   */
  async function write(lastBytes = null) {
    clearTimeout(timer);
    if (!works || JSON.stringify(content) === written) return works;
    last = performance.now();
    return lastBytes === null ? alone(path, merged) : put(lastBytes);
  }

  async function merged() {
    const theirs = /** @type {C | null} */ (read(await store.get(path)));
    if (theirs) merge(content, theirs);
    return put(null);
  }

  /** @param {number | null} lastBytes */
  async function put(lastBytes) {
    const now = JSON.stringify(content);
    const status = await store.put(path, now, lastBytes);
    if (status >= 200 && status < 300) {
      written = now;
      if (troubled) notice([texts.takenAgain]);
      troubled = false;
      retry.stop();
      return true;
    }
    // A store without documents of state answers so to the first one.
    if ([400, 401, 403, 404, 405, 501].includes(status)) {
      works = false;
      notice([texts.noState]);
    } else {
      if (!troubled) notice([texts.notTaken]);
      troubled = true;
      retry.again(() => write());
    }
    return false;
  }

  return {
    works: () => works,
    content,
    damaged,
    write,
    /** Soon, but at most once in five seconds. */
    writeSoon() {
      clearTimeout(timer);
      if (!retry.waiting()) timer = setTimeout(() => write(), Math.max(0, last + EVERY_MS - performance.now()));
    },
  };
}

/**
 * @param {string | null} text
 * @returns {Content | null}
 */
function read(text) {
  try {
    const found = JSON.parse(text ?? 'null');
    const lines = found?.lines;
    const good = found?.format === FORMAT && (lines === null || (Array.isArray(lines) && lines.every((line) => typeof line === 'string')));
    return good ? found : null;
  } catch {
    return null;
  }
}
