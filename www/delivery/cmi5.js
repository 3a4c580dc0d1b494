// cmi5 (AICC, 2016, "Quartz"; sections in brackets). A session is: token [8.2], launch data [10], `initialized`, at most one verdict,
// `completed` once, `terminated` last [9.3]. A registration takes one `passed` and one `completed`, and no `failed` after `passed`: so a
// failed result is held back until the page closes, since the learner may still do better.

import { codeOfAgent } from './learner.js';
import { recordStore } from './lrs.js';
import { pause } from './retry.js';
import { statePath, stateDocument } from './state-document.js';
import { attachment, scoreOf, statement, stepScores } from './statement.js';
import { duration } from './time.js';
import { delivery as texts } from '../words/delivery.js';

const CATEGORY = 'https://w3id.org/xapi/cmi5/context/categories/';
const MASTERY = 'https://w3id.org/xapi/cmi5/context/extensions/masteryscore';
const TRIES_MS = [0, 1000, 3000];

/** The launch parameters [8.1], or null when the address has none. Throws when they are broken. */
export function launchOf(query) {
  const [endpoint, fetchUrl, actor, registration, activityId] = ['endpoint', 'fetch', 'actor', 'registration', 'activityId'].map((name) => query.get(name));
  if (!endpoint || !fetchUrl) return null;
  if (!actor || !activityId || !registration) throw new Error(texts.launchIncomplete);
  return { endpoint: new URL(endpoint, location.href).href, fetchUrl: new URL(fetchUrl, location.href).href, actor: JSON.parse(actor), registration, activityId };
}

/** A Delivery to the platform that launched this page. Throws one sentence when the launch cannot be used. */
export async function connect({ notice, lesson = null }, launch) {
  const store = recordStore({ endpoint: launch.endpoint, authorization: `Basic ${await token(launch.fetchUrl)}`, notice });
  const data = await launchData(store, launch);
  const began = performance.now();
  const seconds = () => (performance.now() - began) / 1000;
  const mastery = typeof data.masteryScore === 'number' ? data.masteryScore : null;
  const recording = (data.launchMode ?? 'Normal') === 'Normal';
  const state = await stateDocument(store, launch, notice);
  /** What this session has sent, whether or not the answer is there yet. */
  let completing = false;
  let verdict = null;
  let ended = false;

  addEventListener('pagehide', end);
  addEventListener('pageshow', (event) => event.persisted && notice([texts.sessionOver]));
  // The platform decides what to do with a session whose first statement it refuses; the learner is told.
  store.send([defined('initialized')]).then(({ taken, status }) => taken || notice([texts.refusedStatement(status)]));

  /** A "cmi5 defined" statement [9.6]: the platform's context whole, our categories added. */
  function defined(verb, result, extensions) {
    const template = structuredClone(data.contextTemplate ?? {});
    const decides = result && ('success' in result || 'completion' in result);
    const ours = [{ id: `${CATEGORY}cmi5` }, ...(decides ? [{ id: `${CATEGORY}moveon` }] : [])];
    const theirs = [].concat(template.contextActivities?.category ?? []);
    const category = [...theirs.filter(({ id }) => !ours.some((own) => own.id === id)), ...ours];
    const context = { ...template, registration: launch.registration, contextActivities: { ...template.contextActivities, category } };
    if (extensions) context.extensions = { ...template.extensions, ...extensions };
    return statement(verb, { actor: launch.actor, activity: { objectType: 'Activity', id: launch.activityId }, context, result });
  }

  /** `passed` or `failed`. */
  function judged({ verb, score, seconds: spent, steps }) {
    const result = { success: verb === 'passed', score: scoreOf(score), duration: duration(spent), extensions: stepScores(steps) };
    return defined(verb, result, mastery === null ? undefined : { [MASTERY]: mastery });
  }

  function end() {
    if (ended) return;
    ended = true;
    if (recording) state.write(true);
    const held = !verdict && !state.content.passed ? state.content.held : null;
    store.lastWords([...(held ? [judged(held)] : []), defined('terminated', { duration: duration(seconds()) })]);
  }

  return {
    name: 'cmi5',
    lesson,
    learner: codeOfAgent(launch.actor),
    keepsProgress: recording && state.works(),
    async resume() {
      if (!state.works()) notice([texts.notRead]);
      if (state.damaged) notice([texts.resumedNone]);
      return state.content.lines?.length ? state.content.lines : null;
    },
    keep(lines) {
      if (ended || !recording) return;
      state.content.lines = lines;
      state.writeSoon();
    },
    async finish(result) {
      if (ended) return { accepted: false, said: texts.sessionOver };
      if (!recording) return { accepted: false, said: texts.review };
      const passed = mastery === null ? result.passed : scoreOf(result.score).scaled >= mastery;
      const { content } = state;
      content.lines = null;
      const sending = [];
      if (result.complete && !content.completed && !completing) {
        completing = true;
        sending.push(await sent([defined('completed', { completion: true, duration: duration(result.seconds) })], null, { completed: true }));
      }
      const already = content.passed || verdict !== null;
      if (passed && !already) {
        const spoken = judged({ ...result, verb: 'passed' });
        const file = await attachment(result.receipt);
        verdict = 'passed';
        sending.push(await sent([file ? { ...spoken, attachments: [file] } : spoken], file && result.receipt, { passed: true, held: null }));
      } else if (!passed && !already && !(content.held?.score > result.score)) {
        content.held = { verb: 'failed', score: result.score, seconds: result.seconds, steps: result.steps.map(({ id, score }) => ({ id, score })) };
      }
      const stored = await state.write();
      const bad = sending.find(({ taken }) => !taken);
      if (bad) return { accepted: false, said: bad.status === 0 ? texts.pending : texts.refusedStatement(bad.status) };
      if (already) return { accepted: false, said: texts.earlierBetter };
      if (!passed) return { accepted: stored, said: stored ? texts.heldBack : texts.heldHere };
      return { accepted: true, said: passed === result.passed ? null : texts.otherMark(Math.round(mastery * 1e4) / 100, passed) };
    },
    leave() {
      if (!ended && recording) state.write(true);
    },
  };

  /** Waits some seconds for the answer; a statement that is still under way stays in the queue. `known`: what a later session must know of it. */
  async function sent(statements, receipt, known) {
    const answer = store.send(statements, receipt);
    answer.then(({ taken }) => {
      if (!taken) return;
      Object.assign(state.content, known);
      if (!ended) state.writeSoon();
    });
    return Promise.race([answer, pause(6000).then(() => ({ taken: false, status: 0 }))]);
  }
}

/** The session's token. A launch address works once: opened again, it is refused. */
async function token(url) {
  for (const wait of TRIES_MS) {
    await pause(wait);
    let answer;
    try {
      answer = await (await fetch(url, { method: 'POST', credentials: 'omit' })).json();
    } catch {
      continue;
    }
    if (typeof answer?.['auth-token'] === 'string') return answer['auth-token'];
    throw new Error(texts.launchUsed(String(answer?.['error-text'] ?? '')));
  }
  throw new Error(texts.noToken);
}

async function launchData(store, launch) {
  for (const wait of TRIES_MS) {
    await pause(wait);
    const text = await store.get(statePath(launch, 'LMS.LaunchData'));
    try {
      const data = JSON.parse(text);
      // The profile must have been asked for [11.0]; nothing in it changes what is shown here.
      await store.get(`agents/profile?${new URLSearchParams({ agent: JSON.stringify(launch.actor), profileId: 'cmi5LearnerPreferences' })}`);
      if (typeof data === 'object' && data !== null) return data;
    } catch {
      // Tried again.
    }
  }
  throw new Error(texts.noLaunchData);
}
