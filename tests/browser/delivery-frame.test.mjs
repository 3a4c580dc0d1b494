// A lesson in a frame of another origin (the HTML standard's cross-document messaging), with the course page of examples/iframe-host.

import assert from 'node:assert/strict';
import { fileURLToPath } from 'node:url';
import { after, before, test } from 'node:test';
import { launch } from './harness.mjs';
import { connected, html, origin, recorded, resultOf, WWW } from './hosts.mjs';

const EXAMPLES = fileURLToPath(new URL('../../examples/', import.meta.url));
// Modules of a frame without an origin are fetched as from elsewhere.
const OPEN = { 'Access-Control-Allow-Origin': '*' };

let browser;
let lessons;
let course;
let attempt;
before(async () => {
  attempt = await recorded('few-pictures-fixed');
  browser = await launch();
  lessons = await origin([['/www/', WWW], ['/lesson', async () => connected(null)]], OPEN);
  course = await origin([
    ['/examples/', EXAMPLES],
    ['/silent', async (request) => html(`<iframe src="${lessons.address}/lesson${new URL(request.url, 'http://x').search}" ${request.url.includes('sandboxed') ? 'sandbox="allow-scripts"' : ''}></iframe>
      <script>globalThis.heard = []; addEventListener('message', (e) => heard.push({ origin: e.origin, ...e.data }));</script>`)],
  ]);
});
after(async () => (await browser.close(), await lessons.close(), await course.close()));

async function opened(address, page = null) {
  page ??= await browser.newPage();
  await page.goto(address);
  const lesson = await (await page.waitForSelector('iframe')).contentFrame();
  await lesson.waitForSelector('html[data-connected]');
  return { page, lesson };
}

for (const sandbox of ['', '&sandbox=1']) {
  test(`a course page keeps the attempt and takes the result${sandbox ? ', also of a sandboxed frame' : ''}`, async () => {
    const address = `${course.address}/examples/iframe-host/index.html?player=${encodeURIComponent(`${lessons.address}/lesson`)}&learner=A7${sandbox}`;
    const first = await opened(address);
    const state = await first.lesson.evaluate(() => ({ name: delivery.name, learner: delivery.learner, keeps: delivery.keepsProgress, origin: self.origin }));
    assert.deepEqual(state, { name: 'frame', learner: 'A7', keeps: true, origin: sandbox ? 'null' : lessons.address });
    await first.lesson.evaluate((lines) => delivery.keep(lines), attempt.slice(0, 30));
    await first.page.waitForFunction(() => /Actions done: 30/.test(document.getElementById('progress').textContent));
    const second = await opened(address, first.page);
    assert.deepEqual(await second.lesson.evaluate(() => delivery.resume()), attempt.slice(0, 30));
    assert.deepEqual(await second.lesson.evaluate((r) => delivery.finish(r), resultOf(attempt)), { accepted: true, said: 'Your course page has your receipt.' });
    assert.match(await second.page.textContent('#result'), /As few pictures as it takes: 85 of 100, passed/);
    await second.lesson.evaluate(() => document.body.append(Object.assign(document.createElement('div'), { textContent: 'tall' })));
    await second.lesson.addStyleTag({ content: 'div { height: 900px }' });
    await second.page.waitForFunction(() => Number.parseFloat(document.getElementById('lesson').style.height) > 880);
    assert.deepEqual(await second.lesson.evaluate(() => notices), []);
    await second.page.close();
  });
}

test('messages go to the named origin only, and only its messages count', async () => {
  // Named is another origin than the one around: nothing is heard there.
  const wrong = await opened(`${course.address}/silent?host=${encodeURIComponent('https://course.example.org')}`);
  assert.deepEqual(await wrong.page.evaluate(() => heard), []);
  await wrong.page.evaluate(() => document.querySelector('iframe').contentWindow.postMessage({ source: 'downbeam-host', v: 1, type: 'start', keeps: true, learner: 'intruder' }, '*'));
  assert.equal(await wrong.lesson.evaluate(() => delivery.learner), null);
  await wrong.page.close();
  for (const [host, sentence] of [['*', /names “\*”/], ['null', /names “null”/], ['https://a.example/path', /allowed is an origin/], ['javascript:1', /names/]]) {
    const bad = await opened(`${course.address}/silent?host=${encodeURIComponent(host)}`);
    assert.match((await bad.lesson.evaluate(() => notices)).join(' '), sentence);
    assert.notEqual(await bad.lesson.evaluate(() => delivery.name), 'frame');
    assert.deepEqual(await bad.page.evaluate(() => heard), []);
    await bad.page.close();
  }
});

test('a page around that never answers: the result is sent, not confirmed, and the learner is told', async () => {
  const { page, lesson } = await opened(`${course.address}/silent?host=${encodeURIComponent(course.address)}&sandboxed`);
  assert.match((await lesson.evaluate(() => notices)).join(' '), /Progress is not kept here/);
  assert.ok(!(await lesson.evaluate(() => delivery.keepsProgress)));
  const said = await lesson.evaluate((r) => delivery.finish(r), resultOf(attempt));
  assert.ok(!said.accepted);
  assert.match(said.said, /has not confirmed/);
  const heard = await page.evaluate(() => heard);
  assert.deepEqual([...new Set(heard.map((m) => m.origin))], ['null']);
  assert.ok(heard.some((m) => m.type === 'ready') && heard.some((m) => m.type === 'result' && m.result.passed));
  await page.close();
});
