// A platform that launches cmi5: token, launch data, documents of state, statements. It refuses what the specification (AICC, cmi5, 2016;
// sections in brackets) forbids, and says why in `broken`.

import { bodyOf, origin } from './hosts.mjs';

const VERB = 'http://adlnet.gov/expapi/verbs/';
const CATEGORY = 'https://w3id.org/xapi/cmi5/context/categories/';
const CORS = { 'Access-Control-Allow-Origin': '*', 'Access-Control-Allow-Headers': '*', 'Access-Control-Allow-Methods': 'GET,PUT,POST' };

export const ACTOR = { objectType: 'Agent', account: { homePage: 'https://lms.example.org', name: 'learner-42' } };
export const REGISTRATION = '5f1c3a5e-8b53-4b53-9a63-3d0f5a1d2c11';

/**
 * Starts one, for one activity. `down` makes it fail: 'statements', 'all'; `attachments: false` refuses those; `slow_ms` is how long its answers to statements take, which it
 * has by then; `lost: true` takes none in and never answers, as a broken proxy does.
 */
export async function cmi5Host(activity = 'https://lms.example.org/au/1') {
  const host = { statements: [], session: [], documents: new Map(), broken: [], receipts: [], down: null, attachments: true, slow_ms: 0, lost: false, launch: { launchMode: 'Normal', masteryScore: 0.75, moveOn: 'Passed' } };
  let tokens = 0;
  let fetched = true;

  const contextTemplate = () => ({
    contextActivities: { grouping: [{ id: 'urn:downbeam:lesson:few-pictures:0' }] },
    extensions: { 'https://w3id.org/xapi/cmi5/context/extensions/sessionid': `s${tokens}` },
  });

  async function answer(request, rest) {
    if (request.method === 'OPTIONS') return { headers: CORS };
    if (host.down === 'all' || (host.down === 'statements' && rest === 'lrs/statements')) return { status: 503, headers: CORS };
    const json = (value, status = 200) => ({ status, headers: { 'Content-Type': 'application/json', ...CORS }, body: JSON.stringify(value) });
    if (rest === 'fetch') {
      if (request.method !== 'POST') return json({}, 405);
      if (fetched) return json({ 'error-code': '1', 'error-text': 'Already in use' });
      fetched = true;
      return json({ 'auth-token': `token${tokens}` });
    }
    if (request.headers.authorization !== `Basic token${tokens}`) return json({}, 401);
    if (!request.headers['x-experience-api-version']) return json({}, 400);
    const query = new URL(request.url, 'http://x').searchParams;
    if (rest === 'lrs/activities/state') {
      const id = query.get('stateId');
      const right = query.get('activityId') === activity && query.get('agent') === JSON.stringify(ACTOR) && query.get('registration') === REGISTRATION;
      if (!right) return json({}, 400);
      if (request.method === 'PUT') return host.documents.set(id, await bodyOf(request)), { status: 204, headers: CORS };
      if (id === 'LMS.LaunchData') return json({ ...host.launch, contextTemplate: contextTemplate() });
      return host.documents.has(id) ? { headers: { 'Content-Type': 'application/json', ...CORS }, body: host.documents.get(id) } : json({}, 404);
    }
    if (rest === 'lrs/agents/profile') return json({}, 404);
    if (rest === 'lrs/statements' && request.method === 'GET') {
      const found = host.statements.find((s) => s.id === query.get('statementId'));
      return found ? json(found) : json({}, 404);
    }
    if (rest !== 'lrs/statements' || request.method !== 'POST') return json({}, 404);
    const body = await bodyOf(request);
    if (host.lost) return new Promise(() => {});
    const boundary = /boundary="([^"]+)"/.exec(request.headers['content-type'])?.[1];
    if (boundary && !host.attachments) return json({}, 400);
    const parts = boundary ? body.split(`--${boundary}`).slice(1, -1).map((part) => part.trim().split('\r\n\r\n')) : [['', body]];
    if (boundary) host.receipts.push({ head: parts[1][0], body: parts[1].slice(1).join('\r\n\r\n') });
    const statements = [].concat(JSON.parse(parts[0][1]));
    for (const statement of statements) take(statement);
    if (host.slow_ms > 0) await new Promise((done) => setTimeout(done, host.slow_ms));
    return json(statements.map(({ id }) => id));
  }

  function take(statement) {
    if (host.statements.some(({ id }) => id === statement.id)) return;
    const verb = statement.verb.id.replace(VERB, '');
    const said = (rule) => host.broken.push(`${verb}: ${rule}`);
    const session = host.session.map((s) => s.verb.id.replace(VERB, ''));
    const registration = host.statements.map((s) => s.verb.id.replace(VERB, ''));
    const { result = {}, context } = statement;
    if (session.length === 0 && verb !== 'initialized') said('initialized is first [9.3]');
    if (session.includes('terminated')) said('terminated is last [9.3]');
    if (session.includes(verb)) said('a verb once a session [9.3]');
    if (['passed', 'failed'].includes(verb) && session.some((v) => ['passed', 'failed'].includes(v))) said('one verdict a session [9.3]');
    if (['passed', 'completed'].includes(verb) && registration.includes(verb)) said('once a registration [9.3]');
    if (verb === 'failed' && registration.includes('passed')) said('no failed after passed [9.3]');
    if (host.session.some((s) => s.timestamp >= statement.timestamp)) said('in the order of time stamps [9.3]');
    if (statement.object.id !== activity) said('the launch’s activity [9.4]');
    if (JSON.stringify(statement.actor) !== JSON.stringify(ACTOR)) said('the launch’s actor [9.2]');
    if ('score' in result && !['passed', 'failed'].includes(verb)) said('score in a verdict only [9.5.1]');
    if ('score' in result && !Number.isInteger(result.score.raw)) said('raw score is whole [9.5.1]');
    if ('score' in result && result.score.scaled >= host.launch.masteryScore !== (verb === 'passed')) said('score on its side of the mastery score [9.3.4, 9.3.5]');
    if (result.success !== { passed: true, failed: false }[verb]) said('success [9.5.2]');
    if (result.completion !== { completed: true }[verb]) said('completion [9.5.3]');
    if (['completed', 'passed', 'failed', 'terminated'].includes(verb) && !/^PT/.test(result.duration ?? '')) said('duration [9.5.4]');
    const categories = (context.contextActivities.category ?? []).map(({ id }) => id.replace(CATEGORY, ''));
    if (!categories.includes('cmi5')) said('cmi5 category [9.6.2.1]');
    if (categories.includes('moveon') !== ('success' in result || 'completion' in result)) said('moveon category [9.6.2.2]');
    if (context.registration !== REGISTRATION) said('registration [9.6.1]');
    if (JSON.stringify(context.contextActivities.grouping) !== JSON.stringify(contextTemplate().contextActivities.grouping)) said('context template [9.6.2]');
    if (context.extensions['https://w3id.org/xapi/cmi5/context/extensions/sessionid'] !== `s${tokens}`) said('session id [9.6.3.1]');
    if (['passed', 'failed'].includes(verb) !== ('https://w3id.org/xapi/cmi5/context/extensions/masteryscore' in context.extensions)) said('mastery score [9.6.3.2]');
    if (host.launch.launchMode !== 'Normal' && !['initialized', 'terminated'].includes(verb)) said('only the first and the last in this mode [10.2.2]');
    host.session.push(statement);
    host.statements.push(statement);
  }

  const server = await origin([['/', answer]]);
  /** The query of a new launch. */
  host.launched = () => {
    tokens += 1;
    fetched = false;
    host.session = [];
    return new URLSearchParams({ endpoint: `${server.address}/lrs/`, fetch: `${server.address}/fetch`, actor: JSON.stringify(ACTOR), registration: REGISTRATION, activityId: activity });
  };
  host.token = () => `token${tokens}`;
  host.verbs = () => host.session.map((s) => s.verb.id.replace(VERB, ''));
  host.close = server.close;
  return host;
}
