// An attempt under way in a learning record store's document of state (xAPI 1.0.3, part 3, 2.3), and what else a later session must know.

import { retrier } from './retry.js';
import { delivery as texts } from '../words/delivery.js';

const STATE_ID = 'downbeam-attempt';
const FORMAT = 1;
const EVERY_MS = 5000;

/** The path of a document of state of an activity, agent and registration. */
export function statePath({ activityId, actor, registration }, stateId) {
  const query = new URLSearchParams({ stateId, activityId, agent: JSON.stringify(actor) });
  if (registration) query.set('registration', registration);
  return `activities/state?${query}`;
}

/** Reads the document at once. `works` is false where the store has none or it cannot be read; nothing is written then. */
export async function stateDocument(store, launch, notice) {
  const path = statePath(launch, STATE_ID);
  const retry = retrier();
  const text = await store.get(path);
  let content = read(text);
  const damaged = Boolean(text) && content === null;
  content ??= { format: FORMAT, lines: null };
  let written = JSON.stringify(content);
  let works = text !== null;
  let last = -Infinity;
  let timer = 0;
  let troubled = false;

  async function write(keepalive = false) {
    clearTimeout(timer);
    const now = JSON.stringify(content);
    if (!works || now === written) return works;
    last = performance.now();
    const status = await store.put(path, now, keepalive);
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
      if (!retry.waiting()) timer = setTimeout(write, Math.max(0, last + EVERY_MS - performance.now()));
    },
  };
}

function read(text) {
  try {
    const found = JSON.parse(text);
    const lines = found.lines;
    const good = found.format === FORMAT && (lines === null || (Array.isArray(lines) && lines.every((line) => typeof line === 'string')));
    return good ? found : null;
  } catch {
    return null;
  }
}
