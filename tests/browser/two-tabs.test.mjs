// Two tabs of the site, of one learner in one browser: neither erases what the other has kept.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { connected, html, lessonSite, resultOf } from './hosts.mjs';

const LESSON = { sha256: 'a'.repeat(64), learner: 'anna' };
const OTHER = { sha256: 'b'.repeat(64), learner: 'anna' };
let browser;
let site;
let attempt;
before(async () => {
  ({ attempt, browser, site } = await lessonSite([
    ['/page', async () => connected(null)],
    ['/settings', async () => html(`<script type="module">
      globalThis.storage = await import('/www/base/storage.js');
      document.documentElement.dataset.connected = 'yes';
    </script>`)],
  ]));
});
after(async () => (await browser.close(), await site.close()));

async function tab(context, path = '/page') {
  const page = await context.newPage();
  await page.goto(site.address + path);
  await page.waitForSelector('html[data-connected]');
  return page;
}

const open = (page, lesson) => page.evaluate((l) => (delivery.opened(l), delivery.resume()), lesson);
const keep = (page, lines) => page.evaluate((l) => delivery.keep(l), lines);
const finish = (page, result) => page.evaluate((r) => delivery.finish(r), result);
const done = (page) => page.evaluate(() => JSON.parse(localStorage.getItem('downbeam.done')));

test('what one tab has finished stays when the other finishes something else, and the better result stays', async () => {
  const context = await browser.newContext();
  const [one, two] = [await tab(context), await tab(context)];
  await open(one, LESSON);
  await open(two, OTHER);
  await finish(one, resultOf(attempt, { score: 0.9 }));
  await finish(two, resultOf(attempt, { score: 0.8 }));
  assert.deepEqual(Object.keys(await done(one)).sort(), [LESSON.sha256, OTHER.sha256]);
  await open(two, LESSON);
  await finish(two, resultOf(attempt, { score: 0.3, passed: false }));
  assert.deepEqual((await done(one))[LESSON.sha256], { best: 0.9, passed: true, tries: 2 });
  // Both at once, ten times, ever better.
  await open(one, { ...LESSON, sha256: 'c'.repeat(64) });
  await open(two, { ...LESSON, sha256: 'd'.repeat(64) });
  await Promise.all([one, two].map((page) => page.evaluate(async (r) => {
    for (let i = 0; i < 10; i += 1) await delivery.finish({ ...r, score: 0.5 + 0.05 * i });
  }, resultOf(attempt))));
  await one.waitForTimeout(300);
  const kept = await done(one);
  assert.deepEqual(['a', 'b', 'c', 'd'].map((c) => kept[c.repeat(64)].best), [0.9, 0.8, 0.95, 0.95]);
  await context.close();
});

test('two attempts at one lesson lie side by side; one that is finished or begun anew does not take the other with it', async () => {
  const context = await browser.newContext();
  const [one, two] = [await tab(context), await tab(context)];
  assert.equal(await open(one, LESSON), null);
  await keep(one, attempt.slice(0, 50));
  assert.equal(await open(two, LESSON), null, 'an attempt of a tab that is open is that tab’s');
  await keep(two, attempt.slice(0, 5));
  await finish(two, resultOf(attempt));
  await two.close();
  await one.close();
  const three = await tab(context);
  assert.deepEqual(await open(three, LESSON), attempt.slice(0, 50));
  assert.equal(await open(three, { ...LESSON, learner: 'berta' }), null);
  // Gone on with in a third tab, it is that tab's, and there is one of it.
  await open(three, LESSON);
  await keep(three, attempt.slice(0, 55));
  assert.equal(await three.evaluate(() => Object.keys(localStorage).filter((k) => k.startsWith('downbeam.attempt.')).length), 1);
  await finish(three, resultOf(attempt));
  assert.equal(await open(three, LESSON), null);
  await context.close();
});

test('an attempt that was kept before tabs had keys of their own is found', async () => {
  const context = await browser.newContext();
  const page = await tab(context);
  await page.evaluate(([{ sha256, learner }, lines]) => localStorage.setItem(`downbeam.open.${sha256}.${learner}`, JSON.stringify(lines)), [LESSON, attempt.slice(0, 7)]);
  assert.deepEqual(await open(page, LESSON), attempt.slice(0, 7));
  await context.close();
});

test('a setting of one tab is not undone by the next setting of the other', async () => {
  const context = await browser.newContext();
  const [one, two] = [await tab(context, '/settings'), await tab(context, '/settings')];
  await one.evaluate(() => storage.keep('theme', 'light'));
  await two.evaluate(() => storage.keep('tour', 'seen'));
  assert.deepEqual(await one.evaluate(() => JSON.parse(localStorage.getItem('downbeam.settings'))), { theme: 'light', tour: 'seen' });
  await context.close();
});
