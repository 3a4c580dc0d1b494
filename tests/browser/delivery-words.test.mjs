// What goes wrong outside is told in the page's own sentences: no words of the browser or of a host's script reach the learner.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { launch } from './harness.mjs';
import { connected, html, origin, WWW } from './hosts.mjs';

let browser;
let site;
before(async () => {
  browser = await launch();
  site = await origin([
    ['/www/', WWW],
    ['/lesson/', async (_, form) => (form === 'lesson.json' ? { status: 404 } : connected(form === 'plain' ? null : form))],
    ['/whole/', async (_, form) => (form === 'lesson.json' ? { body: '{}' } : connected(form))],
    // A page around whose own messages break.
    ['/around', async (request) => html(`<script>window.postMessage = () => { throw new TypeError("Cannot read properties of undefined (reading 'x')"); };</script><iframe src="/lesson/plain?host=http://${request.headers.host}"></iframe>`)],
    ['/host', async () => html('<script>window.API = new Proxy({}, { get: () => () => { throw new TypeError("made.up is not a function"); } });</script><iframe src="/whole/scorm12"></iframe>')],
  ]);
});
after(async () => (await browser?.close(), await site?.close()));

/** Words of scripts, not of people. */
const RAW = /undefined|is not|TypeError|Error:|fetch|Invalid URL|JSON|null|NaN/;

async function noticeAt(path, { framed = false, before: prepare = () => {} } = {}) {
  const page = await browser.newPage();
  await prepare(page);
  await page.goto(site.address + path);
  const lesson = framed ? await (await page.waitForSelector('iframe')).contentFrame() : page;
  await lesson.waitForSelector('html[data-connected]');
  const notices = await lesson.evaluate(() => notices);
  await page.close();
  for (const sentence of notices) {
    assert.doesNotMatch(sentence, RAW);
    assert.match(sentence, /^[A-Z].*\.$/);
  }
  return notices.join(' ');
}

test('a package without its lesson', async () => {
  assert.match(await noticeAt('/lesson/scorm12'), /could not be read \(answer 404\)\. Tell whoever set it up/);
  const cut = (page) => page.route('**/lesson.json', (route) => route.abort());
  assert.match(await noticeAt('/lesson/scorm12', { before: cut }), /could not be read\. Tell whoever set it up/);
});

test('a launch whose addresses are none', async () => {
  const launch = new URLSearchParams({ endpoint: 'http://[', auth: 'x', actor: '{"mbox":"mailto:a@example.org"}', activity_id: 'https://x.example' });
  assert.match(await noticeAt(`/lesson/plain?${launch}`), /The way to the learning platform has failed/);
});

test('a page around that cannot be told', async () => {
  assert.match(await noticeAt('/around', { framed: true }), /The page around this one cannot be told/);
});

test('a host whose object throws', async () => {
  assert.match(await noticeAt('/host', { framed: true }), /learning platform did not open its record/);
});
