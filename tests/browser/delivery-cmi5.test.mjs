// Lessons launched by cmi5, against a platform of our own that holds the order rules of the specification, and plain xAPI launches.
// The shape of every statement: @learninglocker/xapi-validation (npm, MIT). That the platform is no easier than another client expects:
// @xapi/cmi5 (npm, MIT) goes through it too.

import assert from 'node:assert/strict';
import { createRequire } from 'node:module';
import { createHash } from 'node:crypto';
import { after, afterEach, before, beforeEach, test } from 'node:test';
import { cmi5Host } from './cmi5-host.mjs';
import { bodyOf, connected, html, lessonSite, MODULES, origin, recorded, resultOf } from './hosts.mjs';

const { default: validate } = createRequire(import.meta.url)('@learninglocker/xapi-validation');

let browser;
let site;
let attempt;
let host;
before(async () => {
  ({ attempt, browser, site } = await lessonSite([
    ['/lesson/lesson.json', async () => ({ body: '{}' })],
    ['/lesson/', async (_, form) => connected(form === 'xapi' ? null : form)],
    ['/client/', `${MODULES}@xapi/cmi5/dist/`],
    ['/other', async () => html('<script src="/client/Cmi5.umd.js"></script>')],
  ]));
});
after(async () => (await browser.close(), await site.close()));
beforeEach(async () => (host = await cmi5Host()));
afterEach(async () => {
  assert.deepEqual(host.broken, []);
  for (const statement of host.statements) assert.deepEqual(wrong(statement), []);
  await host.close();
});

/** What the outside library finds wrong with a statement. */
const wrong = (statement) => validate(statement).map((warning) => JSON.stringify(warning));

async function opened(query, form = 'cmi5') {
  const page = await browser.newPage();
  await page.goto(`${site.address}/lesson/${form}?${query}`);
  await page.waitForSelector('html[data-connected]');
  return {
    page,
    keep: (lines) => page.evaluate((l) => delivery.keep(l), lines),
    finish: (result) => page.evaluate((r) => delivery.finish(r), result),
    resume: () => page.evaluate(() => delivery.resume()),
    notices: () => page.evaluate(() => notices),
    /** Goes away as a learner does, and gives the last request its time. */
    async leave() {
      await page.goto('about:blank');
      await page.waitForTimeout(300);
      await page.close();
    },
  };
}

test('an attempt is left, comes back in the next session, and is passed with its receipt', async () => {
  const first = await opened(host.launched());
  assert.ok(await first.page.evaluate(() => delivery.keepsProgress));
  await first.keep(attempt.slice(0, 50));
  await first.leave();
  assert.deepEqual(host.verbs(), ['initialized', 'terminated']);
  const second = await opened(host.launched());
  assert.deepEqual(await second.resume(), attempt.slice(0, 50));
  const result = resultOf(attempt);
  assert.deepEqual(await second.finish(result), { accepted: true, said: null });
  assert.deepEqual(host.verbs(), ['initialized', 'completed', 'passed']);
  assert.equal(host.receipts[0].body, result.receipt);
  const [{ sha2, length }] = host.session[2].attachments;
  assert.equal(sha2, createHash('sha256').update(result.receipt).digest('hex'));
  assert.equal(length, Buffer.byteLength(result.receipt));
  assert.ok(host.receipts[0].head.includes(`X-Experience-API-Hash: ${sha2}`));
  assert.deepEqual(host.session[2].result.score, { scaled: 0.85, raw: 85, min: 0, max: 100 });
  // Better still, but the platform takes one verdict.
  assert.ok(!(await second.finish(resultOf(attempt, { score: 0.95 }))).accepted);
  await second.leave();
  const third = await opened(host.launched());
  assert.equal(await third.resume(), null);
  assert.match((await third.finish(resultOf(attempt, { score: 0.2, passed: false }))).said, /keeps your earlier result/);
  await third.leave();
  assert.deepEqual(host.verbs(), ['initialized', 'terminated']);
});

test('not passed is held back until the page is left, and the better try counts', async () => {
  const { finish, leave } = await opened(host.launched());
  const { accepted, said } = await finish(resultOf(attempt, { score: 0.5, passed: false, complete: false }));
  assert.ok(accepted);
  assert.match(said, /when you leave/);
  await finish(resultOf(attempt, { score: 0.3, passed: false, complete: false }));
  assert.deepEqual(host.verbs(), ['initialized']);
  await leave();
  assert.deepEqual(host.verbs(), ['initialized', 'failed', 'terminated']);
  assert.equal(host.session[1].result.score.scaled, 0.5);
});

test('the platform’s mastery score decides, and the learner is told where it differs', async () => {
  host.launch.masteryScore = 0.9;
  const { finish, leave } = await opened(host.launched());
  assert.match((await finish(resultOf(attempt))).said, /handed in as not passed/);
  await leave();
  assert.deepEqual(host.verbs(), ['initialized', 'completed', 'failed', 'terminated']);
});

test('opened to look at only, nothing is recorded', async () => {
  host.launch.launchMode = 'Review';
  const { finish, keep, leave } = await opened(host.launched());
  await keep(attempt);
  assert.match((await finish(resultOf(attempt))).said, /to look at only/);
  await leave();
  assert.deepEqual(host.verbs(), ['initialized', 'terminated']);
  assert.equal(host.documents.size, 0);
});

test('a platform that is lost in between gets everything in order when it is back', async () => {
  const { page, finish, notices, leave } = await opened(host.launched());
  host.down = 'statements';
  const handed = finish(resultOf(attempt));
  await page.waitForFunction(() => notices.some((said) => /does not answer/.test(said)));
  host.down = null;
  assert.ok((await handed).accepted);
  assert.match((await notices()).at(-1), /has taken everything/);
  await finish(resultOf(attempt, { score: 0.95 }));
  assert.deepEqual(host.verbs(), ['initialized', 'completed', 'passed'], 'each once');
  await leave();
});

test('what was still waiting when the page closed is in its last request', async () => {
  const { page, keep, leave, finish } = await opened(host.launched());
  host.down = 'all';
  await keep(attempt.slice(0, 5));
  void finish(resultOf(attempt)).catch(() => {});
  await page.waitForFunction(() => notices.some((said) => /does not answer/.test(said)));
  host.down = null;
  await leave();
  assert.equal(host.verbs()[0], 'initialized');
  assert.ok(host.verbs().includes('completed'));
  assert.equal(host.verbs().at(-1), 'terminated');
});

test('a store that answers after 3 s, and a page that is closed 0.7 s after the pass: the pass is there', async () => {
  const { page, finish, leave } = await opened(host.launched());
  host.slow_ms = 3000;
  void finish(resultOf(attempt)).catch(() => {});
  await page.waitForTimeout(700);
  await leave();
  assert.deepEqual(host.verbs(), ['initialized', 'completed', 'passed', 'terminated']);
  host.slow_ms = 0;
  const next = await opened(host.launched());
  await next.page.evaluate(() => delivery.earlier);
  assert.equal(await next.resume(), null);
  await next.leave();
  assert.deepEqual(host.verbs(), ['initialized', 'terminated'], 'and is not told again');
  assert.equal(host.statements.filter((s) => s.verb.id.endsWith('/passed')).length, 1);
});

test('closed while the store is unreachable, even to the last request: the next session hands it in', async () => {
  const first = await opened(host.launched());
  await first.keep(attempt.slice(0, 60));
  host.lost = true;
  const result = resultOf(attempt);
  void first.finish(result).catch(() => {});
  await first.page.waitForTimeout(700);
  await first.leave();
  assert.deepEqual(host.verbs(), ['initialized']);
  host.lost = false;
  const second = await opened(host.launched());
  await second.page.waitForFunction(() => notices.some((said) => /has been handed in now/.test(said)));
  assert.deepEqual(host.verbs(), ['initialized', 'completed', 'passed']);
  assert.equal(host.receipts.at(-1).body, result.receipt, 'with its receipt');
  await second.leave();
  const third = await opened(host.launched());
  await third.page.evaluate(() => delivery.earlier);
  await third.leave();
  assert.deepEqual(host.verbs(), ['initialized', 'terminated']);
});

test('closed at the moment of the pass, before anything is sent', async () => {
  const { page, leave } = await opened(host.launched());
  await page.evaluate((r) => (void delivery.finish(r), (location.href = 'about:blank'), null), resultOf(attempt));
  await page.waitForTimeout(300);
  await leave();
  assert.deepEqual(host.verbs(), ['initialized', 'completed', 'passed', 'terminated']);
});

test('two tabs of one learner: a fail in one does not follow the pass of the other, nor does a look erase an attempt', async () => {
  const context = await browser.newContext();
  const tab = async () => {
    const page = await context.newPage();
    await page.goto(`${site.address}/lesson/cmi5?${host.launched()}`);
    await page.waitForSelector('html[data-connected]');
    return page;
  };
  const one = await tab();
  // The platform admits the token of the latest launch only: both tabs share it here.
  const two = await context.newPage();
  await two.route('**/fetch', (route) => route.fulfill({ json: { 'auth-token': host.token() }, headers: { 'Access-Control-Allow-Origin': '*' } }));
  await two.goto(one.url());
  await two.waitForSelector('html[data-connected]');
  await one.evaluate((r) => delivery.finish(r), resultOf(attempt));
  const said = await two.evaluate((r) => delivery.finish(r), resultOf(attempt, { score: 0.3, passed: false }));
  assert.deepEqual(said, { accepted: false, said: 'The learning platform keeps your earlier result.' });
  await two.goto('about:blank');
  await two.waitForTimeout(300);
  assert.deepEqual(host.verbs().filter((v) => ['passed', 'failed'].includes(v)), ['passed']);
  assert.ok(JSON.parse(host.documents.get('downbeam-attempt')).passed);
  await context.close();
  // Two `initialized` with one token is this test's doing, not the page's.
  host.broken.length = 0;
});

test('a platform that takes no attachments gets the receipt in the statement', async () => {
  host.attachments = false;
  const { finish, leave } = await opened(host.launched());
  const result = resultOf(attempt);
  assert.ok((await finish(result)).accepted);
  assert.equal(host.session.at(-1).result.extensions['urn:downbeam:receipt'], result.receipt);
  await leave();
});

test('a launch that was used before, or is broken, leaves a page that works by itself', async () => {
  const query = host.launched();
  await (await opened(query)).leave();
  for (const [bad, sentence] of [[query, /does not admit this launch \(Already in use\)/], [new URLSearchParams({ ...Object.fromEntries(query), actor: '{' }), /./], [new URLSearchParams({ endpoint: 'http://127.0.0.1:9/', fetch: 'http://127.0.0.1:9/' }), /incomplete/]]) {
    const { page, notices } = await opened(bad);
    assert.equal(await page.evaluate(() => delivery.name), 'page');
    assert.match((await notices()).join(' '), sentence);
    await page.close();
  }
});

test('another client goes through the same platform', async () => {
  const page = await browser.newPage();
  await page.goto(`${site.address}/other?${host.launched()}`);
  await page.evaluate(async () => {
    const Cmi5 = globalThis.Cmi5.default ?? globalThis.Cmi5;
    const client = new Cmi5();
    await client.initialize();
    await client.complete();
    await client.pass({ scaled: 0.9, raw: 90, min: 0, max: 100 });
    await client.terminate();
  });
  assert.deepEqual(host.verbs(), ['initialized', 'completed', 'passed', 'terminated']);
  await page.close();
  // Statements of that client are its own affair.
  host.statements = [];
});

test('plain xAPI: every result is told, and a store without documents of state is no obstacle', async () => {
  const statements = [];
  const CORS = { 'Access-Control-Allow-Origin': '*', 'Access-Control-Allow-Headers': '*', 'Access-Control-Allow-Methods': 'GET,PUT,POST' };
  const store = await origin([['/', async (request, rest) => {
    if (request.method === 'OPTIONS') return { headers: CORS };
    if (rest !== 'statements' || request.headers.authorization !== 'Basic dGVzdA==') return { status: 404, headers: CORS };
    const body = await bodyOf(request);
    if (!request.headers['content-type'].startsWith('application/json')) return { status: 415, headers: CORS };
    statements.push(...[].concat(JSON.parse(body)));
    return { headers: CORS, body: '[]' };
  }]]);
  const query = new URLSearchParams({ endpoint: store.address, auth: 'Basic dGVzdA==', actor: JSON.stringify({ name: ['L'], account: [{ accountServiceHomePage: 'https://a.example', accountName: 'x' }] }), activity_id: 'https://course.example.org/l4' });
  const { page, finish, keep, notices, leave } = await opened(query, 'xapi');
  assert.equal(await page.evaluate(() => delivery.name), 'xapi');
  await keep(attempt);
  await page.waitForFunction(() => notices.some((said) => /keeps no attempt under way/.test(said)));
  assert.ok((await finish(resultOf(attempt, { score: 0.4, passed: false }))).accepted);
  assert.ok((await finish(resultOf(attempt))).accepted);
  await leave();
  assert.deepEqual(statements.map((s) => s.verb.display.en), ['initialized', 'failed', 'completed', 'passed', 'completed', 'terminated']);
  for (const statement of statements) assert.deepEqual(wrong(statement), []);
  assert.deepEqual(statements[0].actor.account, { homePage: 'https://a.example', name: 'x' });
  await store.close();
});
