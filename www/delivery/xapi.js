// A plain xAPI launch: `endpoint`, `auth`, `actor`, `activity_id` and `registration` in the address (common practice, no standard). Unlike
// cmi5 it sets no order and takes every result. `auth` can be read in the address: it should be short-lived.

import { actorOf, codeOfAgent } from './learner.js';
import { LAST_WORDS_BYTES, recordStore, withReceipt } from './lrs.js';
import { pause } from './retry.js';
import { stateDocument } from './state-document.js';
import { ACTIVITY_TYPE, PROFILE, attachment, scoreOf, statement, stepScores } from './statement.js';
import { duration } from './time.js';
import { Trouble } from './trouble.js';
import { delivery as texts } from '../words/delivery.js';

/**
 * @import { Delivery, DeliveryActs } from './choose.js'
 * @import { Agent } from './learner.js'
 * @import { Statement } from './lrs.js'
 *
 * @typedef {{ endpoint: string, auth: string, actor: Agent, registration: string | null, activityId: string }} Launch
 *
 * An agent as some launchers write it: name and account as lists, an account with the names of an older form.
 * @typedef {Record<string, any>} LooseAgent
 */

/**
 * The launch parameters, or null when the address has none. Throws when they are broken.
 * @param {URLSearchParams} query
 * @returns {Launch | null}
 */
export function launchOf(query) {
  const [endpoint, auth, actor, registration, activityId] = ['endpoint', 'auth', 'actor', 'registration', 'activity_id'].map((name) => query.get(name));
  if (!endpoint || !auth) return null;
  if (!actor || !activityId) throw new Trouble(texts.launchIncomplete);
  return { endpoint: new URL(endpoint, location.href).href, auth, actor: singleAgent(actorOf(actor)), registration, activityId };
}

/**
 * Some launchers write name and account as lists.
 * @param {LooseAgent} agent
 * @returns {Agent}
 */
function singleAgent(agent) {
  const first = (/** @type {any} */ value) => (Array.isArray(value) ? value[0] : value);
  /** @type {LooseAgent} */
  const single = { objectType: 'Agent', ...agent, name: first(agent.name), mbox: first(agent.mbox), account: first(agent.account) };
  if (single.account?.accountName) single.account = { homePage: single.account.accountServiceHomePage, name: single.account.accountName };
  return JSON.parse(JSON.stringify(single));
}

/**
 * A Delivery to the store that the address names.
 * @param {DeliveryActs} act
 * @param {Launch} launch
 * @returns {Promise<Delivery>}
 */
export async function connect({ notice, lesson = null }, launch) {
  const store = recordStore({ endpoint: launch.endpoint, authorization: launch.auth, notice });
  const began = performance.now();
  const state = await stateDocument(store, launch, notice, (own, theirs) => {
    if (!touched) own.lines = theirs.lines;
  });
  let ended = false;
  /** @type {string | null} */
  let name = null;
  /** Whether this page has changed anything: an attempt that it only looked at may have gone on elsewhere. */
  let touched = false;
  /**
   * What is handed in and not taken yet.
   * @type {Statement[]}
   */
  let waiting = [];

  const say = (/** @type {string} */ verb, /** @type {object | undefined} */ result = undefined) =>
    statement(verb, {
      actor: launch.actor,
      activity: { objectType: 'Activity', id: launch.activityId, definition: { type: ACTIVITY_TYPE, ...(name ? { name: { en: name } } : {}) } },
      context: { ...(launch.registration ? { registration: launch.registration } : {}), contextActivities: { category: [PROFILE] } },
      result,
    });

  store.send([say('initialized')]).then(({ accepted, status }) => accepted || notice([texts.refusedStatement(status)]));
  addEventListener('pagehide', end);
  addEventListener('pageshow', (event) => event.persisted && location.reload());

  function end() {
    if (ended) return;
    ended = true;
    const used = store.lastWords([...waiting, say('terminated', { duration: duration((performance.now() - began) / 1000) })]);
    if (touched) state.write(LAST_WORDS_BYTES - used);
  }

  return {
    name: 'xapi',
    lesson,
    learner: codeOfAgent(launch.actor),
    keepsProgress: state.works(),
    async resume() {
      if (state.damaged) notice([texts.resumedNone]);
      return state.content.lines?.length ? state.content.lines : null;
    },
    keep(lines) {
      if (ended) return;
      touched = true;
      state.content.lines = lines;
      state.writeSoon();
    },
    async finish(result) {
      if (ended) return { accepted: false, said: texts.sessionOver };
      name = result.title;
      touched = true;
      // The attempt stays in the state until its result has been taken.
      state.content.lines = result.lines;
      const spent = duration(result.seconds);
      const spoken = say(result.passed ? 'passed' : 'failed', {
        success: result.passed, completion: result.complete, score: scoreOf(result.score), duration: spent, extensions: stepScores(result.steps),
      });
      const more = result.complete ? [say('completed', { completion: true, duration: spent })] : [];
      waiting = [...waiting, withReceipt(spoken, result.receipt), ...more];
      const file = await attachment(result.receipt);
      const sent = ended ? Promise.resolve({ accepted: false, status: 0 }) : store.send([file ? { ...spoken, attachments: [file] } : spoken, ...more], file ? result.receipt : null);
      sent.then(({ accepted }) => {
        if (!accepted) return;
        waiting = waiting.filter(({ id }) => id !== spoken.id && !more.some((one) => one.id === id));
        if (state.content.lines === result.lines) state.content.lines = null;
        if (!ended) state.write();
      });
      const answer = await Promise.race([sent, pause(6000).then(() => ({ accepted: false, status: 0 }))]);
      return answer.accepted ? { accepted: true, said: null } : { accepted: false, said: answer.status ? texts.refusedStatement(answer.status) : texts.pending };
    },
    leave: end,
  };
}
