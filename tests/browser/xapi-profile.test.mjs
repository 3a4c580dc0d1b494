// Statements as they are sent, against the profile that describes them: its templates and pattern by the procedure of the xAPI Profiles
// specification 1.0 (ADL, "Communication and Processing", 5.1 and 5.2), places in a statement by jsonpath-plus (npm, MIT). The profile itself:
// as JSON-LD by jsonld (npm, BSD-3-Clause) with the specification's own context (xapi-profiles-context.jsonld, from adlnet/xapi-profiles,
// Apache-2.0).

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { after, before, test } from 'node:test';
import jsonld from 'jsonld';
import { JSONPath } from 'jsonpath-plus';
import { cmi5Host } from './cmi5-host.mjs';
import { bodyOf, connected, lessonSite, origin, resultOf } from './hosts.mjs';

const read = async (path) => JSON.parse(await readFile(new URL(path, import.meta.url), 'utf8'));
const profile = await read('../../www/delivery/xapi-profile.jsonld');
const VERSION = profile.versions[0].id;
const CORS = { 'Access-Control-Allow-Origin': '*', 'Access-Control-Allow-Headers': '*', 'Access-Control-Allow-Methods': 'GET,PUT,POST' };

let browser;
let site;
let attempt;
/** Statements of each session, as they arrived. */
const sessions = {};

before(async () => {
  ({ attempt, browser, site } = await lessonSite([
    ['/lesson/lesson.json', async () => ({ body: '{}' })],
    ['/lesson/', async (_, form) => connected(form === 'xapi' ? null : form)],
  ]));
  await cmi5Sessions();
  await plainSessions();
});
after(async () => (await browser.close(), await site.close()));

/** Opens a lesson, hands in results, and leaves as a learner does. */
async function session(form, query, results) {
  const page = await browser.newPage();
  await page.goto(`${site.address}/lesson/${form}?${query}`);
  await page.waitForSelector('html[data-connected]');
  for (const result of results) await page.evaluate((r) => delivery.finish(r), result);
  await page.goto('about:blank');
  await page.waitForTimeout(400);
  await page.close();
}

async function cmi5Sessions() {
  const host = await cmi5Host();
  const run = async (name, ...results) => {
    await session('cmi5', host.launched(), results);
    sessions[name] = host.session;
  };
  try {
    await run('cmi5, looked at');
    await run('cmi5, not passed', resultOf(attempt, { score: 0.5, passed: false, complete: false }));
    await run('cmi5, passed', resultOf(attempt));
    host.launch.launchMode = 'Review';
    await run('cmi5, review', resultOf(attempt));
    assert.deepEqual(host.broken, []);
  } finally {
    await host.close();
  }
}

async function plainSessions() {
  const statements = [];
  const store = await origin([['/', async (request, rest) => {
    if (request.method === 'OPTIONS') return { headers: CORS };
    if (rest.startsWith('activities/state')) return { status: request.method === 'PUT' ? 204 : 404, headers: CORS };
    const body = await bodyOf(request);
    const boundary = /boundary="([^"]+)"/.exec(request.headers['content-type'])?.[1];
    statements.push(...[].concat(JSON.parse(boundary ? body.split(`--${boundary}`)[1].trim().split('\r\n\r\n')[1] : body)));
    return { headers: { 'Content-Type': 'application/json', ...CORS }, body: '[]' };
  }]]);
  const query = new URLSearchParams({ endpoint: `${store.address}/`, auth: 'Basic x', actor: '{"mbox":"mailto:a@example.org"}', activity_id: 'https://course.example.org/l4' });
  try {
    await session('xapi', query, [resultOf(attempt, { score: 0.4, passed: false, complete: false }), resultOf(attempt)]);
    sessions['launch, both'] = statements;
  } finally {
    await store.close();
  }
}

/** Whether a statement is one of a template: its determining properties. */
function isOf(statement, template) {
  const types = (list) => [].concat(list ?? []).map((a) => a.definition?.type);
  return (!template.verb || statement.verb.id === template.verb) && (!template.objectActivityType || statement.object.definition?.type === template.objectActivityType)
    && (template.contextCategoryActivityType ?? []).every((type) => types(statement.context?.contextActivities?.category).includes(type))
    && (template.attachmentUsageType ?? []).every((type) => (statement.attachments ?? []).some((a) => a.usageType === type));
}

/** What a statement does otherwise than a rule asks (communication 5.1, `follows_rule`). */
function broken(statement, rule) {
  const values = JSONPath({ path: rule.location, json: statement, wrap: true }) ?? [];
  const found = [];
  if (rule.presence === 'included' && values.length === 0) found.push('is missing');
  if (rule.presence === 'excluded') return values.length > 0 ? ['must not be there'] : [];
  if (rule.presence === 'recommended' && values.length === 0) return [];
  const has = (list, value) => list.some((one) => JSON.stringify(one) === JSON.stringify(value));
  if (rule.any && !values.some((value) => has(rule.any, value))) found.push(`has none of ${rule.any}`);
  if (rule.all && !values.every((value) => has(rule.all, value))) found.push(`has others than ${rule.all}`);
  if (rule.none && values.some((value) => has(rule.none, value))) found.push(`has one of ${rule.none}`);
  return found;
}

/** The templates that a statement is of, and all that it breaks of them. */
function judged(statement) {
  const templates = profile.templates.filter((template) => isOf(statement, template));
  return { ids: templates.map(({ id }) => id), wrong: templates.flatMap((t) => t.rules.flatMap((rule) => broken(statement, rule).map((what) => `${t.id}: ${rule.location} ${what}`))) };
}

/** Matches template ids, a list a statement, against a pattern; gives what is left, or null (communication 5.2). */
function matched(id, statements) {
  const pattern = profile.patterns.find((p) => p.id === id);
  if (!pattern) return statements[0]?.includes(id) ? statements.slice(1) : null;
  if (pattern.sequence) return pattern.sequence.reduce((rest, one) => rest && matched(one, rest), statements);
  if (pattern.alternates) return pattern.alternates.map((one) => matched(one, statements)).find((rest) => rest !== null) ?? null;
  if (pattern.optional) return matched(pattern.optional, statements) ?? statements;
  let rest = statements;
  for (let next = matched(pattern.zeroOrMore, rest); next !== null; next = matched(pattern.zeroOrMore, rest)) rest = next;
  return rest;
}

test('every statement sent is of a template and keeps to its rules', () => {
  const verbs = new Set();
  for (const [name, statements] of Object.entries(sessions)) {
    assert.ok(statements.length >= 2, name);
    for (const statement of statements) {
      const { ids, wrong } = judged(statement);
      assert.ok(ids.length > 0, `${name}: ${statement.verb.id} has no template`);
      assert.deepEqual(wrong, [], name);
      verbs.add(...ids.slice(0, 1));
    }
  }
  assert.deepEqual([...verbs].sort(), ['completed', 'failed', 'initialized', 'passed', 'terminated'].map((verb) => `${VERSION}:${verb}`));
  assert.equal(sessions['launch, both'].filter((s) => judged(s).ids.length === 2).length, 2, 'a result of a plain launch is of a further template');
  assert.ok(sessions['cmi5, passed'].some((s) => s.attachments), 'one with its receipt was looked at');
});

test('the statements of a session follow one another as the pattern says', () => {
  const primary = profile.patterns.find((p) => p.primary).id;
  const follows = (statements) => matched(primary, [...statements].sort((a, b) => a.timestamp.localeCompare(b.timestamp)).map((s) => judged(s).ids))?.length === 0;
  for (const [name, statements] of Object.entries(sessions)) assert.ok(follows(statements), name);
  const passed = sessions['cmi5, passed'];
  assert.ok(!follows(passed.slice(1)), 'without its first statement');
  assert.ok(!follows([...passed, { ...passed[1], timestamp: '2100-01-01T00:00:00Z' }]), 'a result after the end');
});

test('a statement that is not as described is found out', () => {
  const good = sessions['cmi5, passed'].find((s) => s.verb.id.endsWith('/passed'));
  const changed = (change) => {
    const copy = structuredClone(good);
    change(copy);
    return judged(copy).wrong.join('; ');
  };
  assert.equal(changed(() => {}), '');
  assert.match(changed((s) => delete s.result.score), /scaled is missing/);
  assert.match(changed((s) => (s.result.success = false)), /success has others/);
  assert.match(changed((s) => delete s.result.extensions['urn:downbeam:step-scores']), /step-scores'\] is missing/);
  assert.match(changed((s) => delete s.result.duration), /duration is missing/);
  assert.match(changed((s) => (s.attachments[0].usageType = 'urn:other')), /usageType has others/);
  assert.match(changed((s) => (s.context.contextActivities.category = [])), /category\[\*\]\.id is missing/);
  assert.match(changed((s) => (s.verb.id = s.verb.id.replace('passed', 'initialized'))), /result must not be there/);
  assert.deepEqual(judged({ ...good, verb: { id: 'http://adlnet.gov/expapi/verbs/experienced' } }).ids, []);
});

test('the marks by step that are sent keep to the schema of their concept, which knows the steps of the receipt', async () => {
  const concept = profile.concepts.find(({ id }) => id === 'urn:downbeam:step-scores');
  const { propertyNames, additionalProperties } = JSON.parse(concept.inlineSchema);
  const receipt = await read('../../www/lessons/receipt.schema.json');
  assert.deepEqual(propertyNames.enum, Object.keys(receipt.$defs.Claim.properties.steps.properties).sort());
  const sent = Object.values(sessions).flat().flatMap((s) => Object.entries(s.result?.extensions?.['urn:downbeam:step-scores'] ?? {}));
  assert.ok(sent.some(([, score]) => score === null) && sent.some(([, score]) => score > 0));
  for (const [id, score] of sent) {
    assert.ok(propertyNames.enum.includes(id), id);
    assert.ok(score === null || (score >= additionalProperties.minimum && score <= additionalProperties.maximum));
  }
});

test('as JSON-LD nothing of the profile is lost or without a name', async () => {
  const context = await read('xapi-profiles-context.jsonld');
  const documentLoader = async (url) => {
    assert.equal(url, 'https://w3id.org/xapi/profiles/context');
    return { document: context, documentUrl: url };
  };
  // `safe`: a property or type that the context does not know is an error.
  const [whole] = await jsonld.expand(profile, { documentLoader, safe: true });
  assert.equal(whole['@id'], profile.id);
  await assert.rejects(jsonld.expand({ ...profile, colour: 'blue' }, { documentLoader, safe: true }));
  const all = [...profile.concepts, ...profile.templates, ...profile.patterns];
  assert.equal(new Set(all.map(({ id }) => id)).size, all.length, 'names are used once');
  for (const one of all) assert.equal(one.inScheme, VERSION);
  // Members that the specification requires (structure, 7 to 9).
  for (const one of [...profile.concepts, ...profile.templates, ...profile.patterns.filter((p) => p.primary)]) assert.ok(one.prefLabel.en && one.definition.en, one.id);
  const known = new Set(all.map(({ id }) => id));
  for (const p of profile.patterns) {
    const members = ['sequence', 'alternates', 'optional', 'zeroOrMore', 'oneOrMore'].filter((key) => p[key]);
    assert.equal(members.length, 1, p.id);
    for (const one of [].concat(p[members[0]])) assert.ok(known.has(one), one);
  }
});
