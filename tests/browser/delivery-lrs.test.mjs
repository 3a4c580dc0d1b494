// A plain xAPI launch against a learning record store that is not ours: Ralph (PyPI: ralph-malph, MIT), which keeps statements, and neither
// attachments nor documents of state; by itself, behind a slow and behind a broken proxy. `tests/run` installs it into tests/.venv-lrs.

import assert from 'node:assert/strict';
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer as createProxy, request as ask } from 'node:http';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { after, before, test } from 'node:test';
import { launch } from './harness.mjs';
import { connected, origin, recorded, resultOf, WWW } from './hosts.mjs';

const TESTS = fileURLToPath(new URL('../', import.meta.url));
const BIN = process.env.LRS_BIN ?? join(TESTS, '.venv-lrs', 'bin');
const AUTH = `Basic ${Buffer.from('lesson:secret').toString('base64')}`;

let browser;
let site;
let store;
let folder;
let address;

before(async () => {
  browser = await launch();
  site = await origin([['/www/', WWW], ['/lesson', async () => connected(null)]]);
  folder = mkdtempSync(join(tmpdir(), 'downbeam-lrs-'));
  mkdirSync(join(folder, 'data', 'course'), { recursive: true });
  const env = {
    ...process.env,
    RALPH_AUTH_FILE: join(folder, 'auth.json'),
    RALPH_HISTORY_FILE: join(folder, 'history.json'),
    RALPH_RUNSERVER_BACKEND: 'fs',
    RALPH_BACKENDS__LRS__FS__DEFAULT_DIRECTORY_PATH: join(folder, 'data'),
    RALPH_BACKENDS__LRS__FS__DEFAULT_LRS_FILE: 'statements.jsonl',
    RALPH_RUNSERVER_CORS_ALLOW_ORIGINS: JSON.stringify([site.address]),
  };
  execFileSync(join(BIN, 'ralph'), ['auth', '-u', 'lesson', '-p', 'secret', '-s', 'all', '-M', 'mailto:lesson@example.org', '-t', 'course', '-w'], { env, stdio: 'ignore' });
  const port = await freePort();
  store = spawn(join(BIN, 'uvicorn'), ['--app-dir', join(TESTS, 'lrs'), 'append_store:app', '--host', '127.0.0.1', '--port', String(port), '--log-level', 'error'], { env, cwd: folder, stdio: 'ignore' });
  address = `http://127.0.0.1:${port}/xAPI`;
  for (let tries = 0; tries < 240 && !(await there()); tries += 1) await new Promise((done) => setTimeout(done, 250));
});

after(async () => {
  store?.kill();
  if (store && store.exitCode === null) await once(store, 'exit');
  await browser.close();
  await site.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A port that nothing listens on. */
async function freePort() {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address();
  probe.close();
  await once(probe, 'close');
  return port;
}

const there = () => statements().then(() => true, () => false);

async function statements() {
  const response = await fetch(`${address}/statements?ascending=true`, { headers: { Authorization: AUTH, 'X-Experience-API-Version': '1.0.3' } });
  assert.ok(response.ok, `answer ${response.status}`);
  return (await response.json()).statements;
}

/** The store behind a proxy that answers after so long, and drops so many requests before one comes through: with an error, or without a word. */
async function proxied({ slow_ms = 0, drops = 0 }) {
  let left = drops;
  const server = createProxy(async (request, response) => {
    const parts = [];
    for await (const part of request) parts.push(part);
    if (request.method !== 'OPTIONS' && left > 0) {
      left -= 1;
      return void (left % 2 ? request.socket.destroy() : response.writeHead(503).end());
    }
    await new Promise((done) => setTimeout(done, slow_ms));
    const { hostname, port } = new URL(address);
    const passed = ask({ hostname, port, path: request.url, method: request.method, headers: request.headers }, (answer) => {
      response.writeHead(answer.statusCode, answer.headers);
      answer.pipe(response);
    });
    passed.on('error', () => response.destroy());
    passed.end(Buffer.concat(parts));
  });
  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  return { endpoint: `http://127.0.0.1:${server.address().port}/xAPI`, dropped: () => drops - left, close: () => new Promise((done) => (server.closeAllConnections(), server.close(done))) };
}

/** The page of a lesson, launched for a learner of its own at an address of the store. */
async function launched(name, endpoint) {
  const actor = { account: { homePage: 'https://course.example.org', name } };
  const query = new URLSearchParams({ endpoint, auth: AUTH, actor: JSON.stringify(actor), activity_id: 'https://course.example.org/l4' });
  const page = await browser.newPage();
  await page.goto(`${site.address}/lesson?${query}`);
  await page.waitForSelector('html[data-connected=xapi]');
  return page;
}

/** What the store has of a learner, once it has as much. */
async function keptOf(name, verbs) {
  for (let tries = 0; tries < 120; tries += 1) {
    const own = (await statements()).filter((s) => s.actor.account?.name === name);
    if (own.length >= verbs.length) return own;
    await new Promise((done) => setTimeout(done, 250));
  }
  return (await statements()).filter((s) => s.actor.account?.name === name);
}
const verbsOf = (kept) => kept.map((s) => s.verb.display.en).sort();

test('a record store keeps what a lesson tells, with the receipt in the statement', async () => {
  const lines = await recorded('few-pictures-fixed');
  const actor = { account: { homePage: 'https://course.example.org', name: 'learner-42' } };
  const query = new URLSearchParams({ endpoint: address, auth: AUTH, actor: JSON.stringify(actor), activity_id: 'https://course.example.org/l4', registration: '5f1c3a5e-8b53-4b53-9a63-3d0f5a1d2c11' });
  const page = await browser.newPage();
  await page.goto(`${site.address}/lesson?${query}`);
  await page.waitForSelector('html[data-connected=xapi]');
  const result = resultOf(lines);
  assert.deepEqual(await page.evaluate((r) => delivery.finish(r), result), { accepted: true, said: null });
  await page.goto('about:blank');
  await page.waitForTimeout(500);
  await page.close();
  const kept = await statements();
  assert.deepEqual(kept.map((s) => s.verb.display.en).sort(), ['completed', 'initialized', 'passed', 'terminated']);
  const passed = kept.find((s) => s.verb.display.en === 'passed');
  assert.equal(passed.result.score.scaled, 0.85);
  assert.equal(passed.result.duration, 'PT2M13.4S');
  assert.equal(passed.result.extensions['urn:downbeam:receipt'], result.receipt);
  assert.deepEqual(passed.actor.account, actor.account);
});

test('behind a proxy that takes 3 s, with the page closed 0.7 s after the pass, the pass and its receipt are there', async () => {
  const proxy = await proxied({ slow_ms: 3000 });
  const page = await launched('slow', proxy.endpoint);
  const result = resultOf(await recorded('few-pictures-fixed'));
  // The lesson takes its minutes; by then what was said at its beginning is there.
  assert.deepEqual(verbsOf(await keptOf('slow', ['initialized'])), ['initialized']);
  await page.evaluate((r) => void delivery.finish(r), result);
  await page.waitForTimeout(700);
  await page.goto('about:blank');
  await page.waitForTimeout(300);
  await page.close();
  const kept = await keptOf('slow', ['completed', 'initialized', 'passed', 'terminated']);
  await proxy.close();
  assert.deepEqual(verbsOf(kept), ['completed', 'initialized', 'passed', 'terminated']);
  assert.equal(kept.find((s) => s.verb.display.en === 'passed').result.extensions['urn:downbeam:receipt'], result.receipt);
});

test('behind a proxy that drops requests all is told in the end, and once', async () => {
  const proxy = await proxied({ drops: 5 });
  const page = await launched('broken', proxy.endpoint);
  const result = resultOf(await recorded('few-pictures-fixed'));
  await page.evaluate((r) => void delivery.finish(r), result);
  const wanted = ['completed', 'initialized', 'passed'];
  assert.deepEqual(verbsOf(await keptOf('broken', wanted)), wanted);
  await page.goto('about:blank');
  await page.waitForTimeout(500);
  await page.close();
  const kept = await keptOf('broken', [...wanted, 'terminated']);
  await proxy.close();
  assert.ok(proxy.dropped() === 5, 'it was broken');
  assert.deepEqual(verbsOf(kept), [...wanted, 'terminated']);
  assert.equal(kept.find((s) => s.verb.display.en === 'passed').result.extensions['urn:downbeam:receipt'], result.receipt);
});
