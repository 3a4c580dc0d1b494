// cmi5 (AICC, 2016, "Quartz"; sections in brackets). A session is: token [8.2], launch data [10], `initialized`, at most one verdict,
// `completed` once, `terminated` last [9.3]. A registration takes one `passed` and one `completed`, and no `failed` after `passed`: so a
// failed result is held back until the page closes, since the learner may still do better.

import { actorOf, codeOfAgent } from './learner.js';
import { LAST_WORDS_BYTES, recordStore, withReceipt } from './lrs.js';
import { otherTabs } from '../base/other-tabs.js';
import { uuid } from '../base/uuid.js';
import { pause } from './retry.js';
import { statePath, stateDocument } from './state-document.js';
import { PROFILE, attachment, scoreOf, statement, stepScores } from './statement.js';
import { duration } from './time.js';
import { Trouble, sentence } from './trouble.js';
import { delivery as texts } from '../words/delivery.js';

const CATEGORY = 'https://w3id.org/xapi/cmi5/context/categories/';
const MASTERY = 'https://w3id.org/xapi/cmi5/context/extensions/masteryscore';
const TRIES_MS = [0, 1000, 3000];

/**
 * @import { Delivery, DeliveryActs, Result } from './choose.js'
 * @import { Agent } from './learner.js'
 * @import { Answer, RecordStore, Statement } from './lrs.js'
 * @import { Content } from './state-document.js'
 *
 * @typedef {{ endpoint: string, fetchUrl: string, actor: Agent, registration: string, activityId: string }} Launch
 *
 * The launch data [10], as far as it is used here; none of it may be trusted to be there.
 * @typedef {{ masteryScore?: number, launchMode?: string, contextTemplate?: Record<string, any> }} LaunchData
 *
 * A result as it is kept until it is taken: under the id that its statement has.
 * @typedef {{ id: string, score: number, seconds: number, steps: { id: string, score: number | null }[] }} Held
 *
 * What sessions of this registration keep: what the platform has taken, what was handed in and is not known to be taken, and a failed result
 * that is held back.
 * @typedef {Content & {
 *   completed?: boolean, passed?: boolean, held?: Held | null,
 *   due?: { completed: { id: string, seconds: number } | null, passed: (Held & { receipt: string }) | null } | null,
 * }} Kept
 */

const VERBS = /** @type {const} */ (['completed', 'passed']);

/**
 * The launch parameters [8.1], or null when the address has none. Throws when they are broken.
 * @param {URLSearchParams} query
 * @returns {Launch | null}
 */
export function launchOf(query) {
  const [endpoint, fetchUrl, actor, registration, activityId] = ['endpoint', 'fetch', 'actor', 'registration', 'activityId'].map((name) => query.get(name));
  if (!endpoint || !fetchUrl) return null;
  if (!actor || !activityId || !registration) throw new Trouble(texts.launchIncomplete);
  return { endpoint: new URL(endpoint, location.href).href, fetchUrl: new URL(fetchUrl, location.href).href, actor: actorOf(actor), registration, activityId };
}

/**
 * A Delivery to the platform that launched this page. Throws one sentence when the launch cannot be used.
 * @param {DeliveryActs} act
 * @param {Launch} launch
 * @returns {Promise<Delivery & { earlier: Promise<void> | null }>}
 */
export async function connect({ notice, lesson = null }, launch) {
  const store = recordStore({ endpoint: launch.endpoint, authorization: `Basic ${await token(launch.fetchUrl)}`, notice });
  const data = await launchData(store, launch);
  const began = performance.now();
  const seconds = () => (performance.now() - began) / 1000;
  const mastery = typeof data.masteryScore === 'number' ? data.masteryScore : null;
  const recording = (data.launchMode ?? 'Normal') === 'Normal';
  /** Whether this session has changed anything: an attempt that it only looked at may have gone on elsewhere. */
  let touched = false;
  const state = await stateDocument(store, launch, notice, (/** @type {Kept} */ own, theirs) => {
    merge(own, theirs);
    if (!touched) own.lines = theirs.lines;
  });
  const { content } = state;
  const tabs = otherTabs(`downbeam.cmi5.${launch.registration}.${launch.activityId}`, (/** @type {Partial<Kept>} */ theirs) => merge(content, theirs));
  let ended = false;

  addEventListener('pagehide', end);
  addEventListener('pageshow', (event) => event.persisted && notice([texts.sessionOver]));
  // The platform decides what to do with a session whose first statement it refuses; the learner is told.
  store.send([defined('initialized')]).then(({ accepted, status }) => accepted || notice([texts.refusedStatement(status)]));
  const earlier = recording ? handInEarlier().catch((error) => notice([sentence(error)])) : null;

  /**
   * A "cmi5 defined" statement [9.6]: the platform's context whole, our categories added.
   * @param {string} verb
   * @param {object} [result]
   * @param {Record<string, unknown>} [extensions]
   * @returns {Statement}
   */
  function defined(verb, result, extensions) {
    const template = structuredClone(data.contextTemplate ?? {});
    const decides = result && ('success' in result || 'completion' in result);
    const ours = [{ id: `${CATEGORY}cmi5` }, ...(decides ? [{ id: `${CATEGORY}moveon` }] : []), PROFILE];
    const theirs = /** @type {{ id: string }[]} */ ([template.contextActivities?.category ?? []].flat());
    const category = [...theirs.filter(({ id }) => !ours.some((own) => own.id === id)), ...ours];
    /** @type {Record<string, any>} */
    const context = { ...template, registration: launch.registration, contextActivities: { ...template.contextActivities, category } };
    if (extensions) context.extensions = { ...template.extensions, ...extensions };
    return statement(verb, { actor: launch.actor, activity: { objectType: 'Activity', id: launch.activityId }, context, result });
  }

  /**
   * `passed` or `failed`.
   * @param {'passed' | 'failed'} verb
   * @param {Held} result
   */
  function judged(verb, { id, score, seconds: spent, steps }) {
    const result = { success: verb === 'passed', score: scoreOf(score), duration: duration(spent), extensions: stepScores(steps) };
    return { ...defined(verb, result, mastery === null ? undefined : { [MASTERY]: mastery }), id };
  }

  /** @param {{ id: string, seconds: number }} result */
  function completed({ id, seconds: spent }) {
    return { ...defined('completed', { completion: true, duration: duration(spent) }), id };
  }

  /** What is handed in and not known to be taken, as statements; `passed` with its receipt. */
  function unconfirmed() {
    const { due } = content;
    return [...(due?.completed ? [completed(due.completed)] : []), ...(due?.passed ? [withReceipt(judged('passed', due.passed), due.passed.receipt)] : [])];
  }

  function end() {
    if (ended) return;
    ended = true;
    const held = content.passed || content.due?.passed ? null : content.held;
    const result = recording ? [...unconfirmed(), ...(held ? [judged('failed', held)] : [])] : [];
    const used = store.lastWords([...result, defined('terminated', { duration: duration(seconds()) })]);
    if (recording && touched) state.write(LAST_WORDS_BYTES - used);
  }

  /**
   * What an earlier session handed in and never heard to be taken. Each statement has the id that it had then, so that one which did
   * arrive is not stored twice; and each goes by itself, since a store may refuse a whole request for one statement that it has.
   */
  async function handInEarlier() {
    if (content.held && (await store.has(content.held.id))) content.held = null;
    const { due } = content;
    if (!due) return;
    const answers = [];
    if (due.completed) answers.push(handIn([completed(due.completed)]));
    if (due.passed) answers.push(handIn([judged('passed', due.passed)], due.passed.receipt));
    const all = await Promise.all(answers);
    if (all.every(({ accepted }) => accepted)) notice([texts.handedInLate]);
  }

  return {
    name: 'cmi5',
    lesson,
    learner: codeOfAgent(launch.actor),
    keepsProgress: recording && state.works(),
    async resume() {
      if (!state.works()) notice([texts.notRead]);
      if (state.damaged) notice([texts.resumedNone]);
      return content.lines?.length ? content.lines : null;
    },
    keep(lines) {
      if (ended || !recording) return;
      touched = true;
      content.lines = lines;
      state.writeSoon();
    },
    async finish(result) {
      if (ended) return { accepted: false, said: texts.sessionOver };
      if (!recording) return { accepted: false, said: texts.review };
      touched = true;
      const passed = mastery === null ? result.passed : scoreOf(result.score).scaled >= mastery;
      const already = Boolean(content.passed || content.due?.passed);
      const spoken = note(result, passed, already);
      const [stored, bad] = await Promise.all([state.write(), spoken.length === 0 ? null : inTime(handIn(spoken, passed && !already ? result.receipt : null))]);
      if (bad && !bad.accepted) return { accepted: false, said: bad.status === 0 ? texts.pending : texts.refusedStatement(bad.status) };
      if (already || (!passed && content.passed)) return { accepted: false, said: texts.earlierBetter };
      if (!passed) return { accepted: stored, said: stored ? texts.heldBack : texts.heldHere };
      return { accepted: true, said: passed === result.passed ? null : texts.otherMark(Math.round((mastery ?? 0) * 1e4) / 100, passed) };
    },
    leave: end,
    /** What an earlier session left unsaid has been said, or could not be. */
    earlier,
  };

  /**
   * Puts a result down before anything is sent, in place of the attempt under way: it stays in the state until the platform has taken
   * it. Returns what is to be said at once.
   * @param {Result} result
   * @param {boolean} passed
   * @param {boolean} already whether a pass was handed in before
   */
  function note(result, passed, already) {
    const own = { id: uuid(), score: result.score, seconds: result.seconds, steps: result.steps.map(({ id, score }) => ({ id, score })) };
    /** @type {Statement[]} */
    const spoken = [];
    content.lines = null;
    content.due ??= { completed: null, passed: null };
    if (result.complete && !content.completed && !content.due.completed) {
      content.due.completed = { id: uuid(), seconds: result.seconds };
      spoken.push(completed(content.due.completed));
    }
    if (passed && !already) {
      content.due.passed = { ...own, receipt: result.receipt };
      spoken.push(judged('passed', own));
    } else if (!passed && !already && !(content.held && content.held.score >= result.score)) {
      content.held = own;
    }
    if (!content.due.completed && !content.due.passed) content.due = null;
    return spoken;
  }

  /**
   * Sends statements of a result, the receipt with `passed`; what was taken is due no longer.
   * @param {Statement[]} statements
   * @param {string | null} receipt
   */
  async function handIn(statements, receipt = null) {
    const file = receipt && (await attachment(receipt));
    const whole = file ? statements.map((one) => (one.result?.success ? { ...one, attachments: [file] } : one)) : statements;
    const answer = await store.send(whole, file ? receipt : null);
    if (answer.accepted) {
      touched = true;
      confirmed(content, statements.map(({ id }) => id));
      tabs.tell({ completed: content.completed, passed: content.passed });
      if (!ended) state.writeSoon();
    }
    return answer;
  }
}

/** The answer, if it comes within some seconds; what is still under way stays in the queue. */
const inTime = (/** @type {Promise<Answer>} */ answer) => Promise.race([answer, pause(6000).then(() => ({ accepted: false, status: 0 }))]);

/**
 * The platform has statements of these ids.
 * @param {Kept} content
 * @param {string[]} ids
 */
function confirmed(content, ids) {
  for (const verb of VERBS) {
    const due = content.due?.[verb];
    if (!content.due || !due || !ids.includes(due.id)) continue;
    content[verb] = true;
    content.due[verb] = null;
  }
  settle(content);
}

/**
 * Leaves out what is over.
 * @param {Kept} content
 */
function settle(content) {
  for (const verb of VERBS) if (content[verb] && content.due?.[verb]) content.due[verb] = null;
  if (content.due && !content.due.completed && !content.due.passed) content.due = null;
  if (content.passed) content.held = null;
}

/**
 * What another session has reached: taken is taken, the better result stays, and an attempt is not forgotten for none.
 * @param {Kept} own
 * @param {Partial<Kept>} theirs
 */
function merge(own, theirs) {
  for (const verb of VERBS) {
    if (theirs[verb]) own[verb] = true;
    if (theirs.due?.[verb] && !own.due?.[verb] && !own[verb]) own.due = { completed: null, passed: null, ...own.due, [verb]: theirs.due[verb] };
  }
  if (theirs.held && !(own.held && own.held.score >= theirs.held.score)) own.held = theirs.held;
  settle(own);
}

/**
 * The session's token. A launch address works once: opened again, it is refused.
 * @param {string} url
 * @returns {Promise<string>}
 */
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
    throw new Trouble(texts.launchUsed(String(answer?.['error-text'] ?? '')));
  }
  throw new Trouble(texts.noToken);
}

/**
 * @param {RecordStore} store
 * @param {Launch} launch
 * @returns {Promise<LaunchData>}
 */
async function launchData(store, launch) {
  for (const wait of TRIES_MS) {
    await pause(wait);
    const text = await store.get(statePath(launch, 'LMS.LaunchData'));
    try {
      const data = JSON.parse(text ?? 'null');
      // The profile must have been asked for [11.0]; nothing in it changes what is shown here.
      await store.get(`agents/profile?${new URLSearchParams({ agent: JSON.stringify(launch.actor), profileId: 'cmi5LearnerPreferences' })}`);
      if (typeof data === 'object' && data !== null) return data;
    } catch {
      // Tried again.
    }
  }
  throw new Trouble(texts.noLaunchData);
}
