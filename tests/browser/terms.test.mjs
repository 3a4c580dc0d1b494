// Terms of the field are explained where they are first met, once, by press and key, in each language.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { axeFinds, open, setUp, settled } from './harness.mjs';
import { drawn } from './keyboard.mjs';

const START = '#patient=average&level=L4&side=left&start=1&oblique=-9&tilt=12';
let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

/** The page with its terms dotted. */
async function dotted(options = {}) {
  const opened = await open(site, { hash: START, ...options });
  await opened.page.waitForFunction(() => document.documentElement.dataset.later === 'done');
  await settled(opened.page);
  await opened.page.waitForSelector('.term');
  return opened;
}
const words = (page) => page.locator('.term').allTextContents();

test('each term is dotted once, opens by press and key, and is dotted no more once it was opened', async () => {
  const { page, errors, close } = await dotted();
  const before = await page.textContent('#step-list');
  const first = await words(page);
  assert.ok(first.length >= 2, first.join());
  assert.equal(new Set(first.map((w) => w.toLowerCase())).size, first.length);
  const term = page.locator('.term').first();
  const word = await term.textContent();
  await term.press('Enter');
  await page.waitForSelector('#term-note:popover-open');
  const means = await page.textContent('#term-note');
  assert.match(means, /^[A-Z].{20,}\.$/);
  assert.equal(await page.textContent('#status'), means);
  assert.equal(await term.getAttribute('aria-expanded'), 'true');
  assert.deepEqual((await axeFinds(page)).violations, []);
  await page.keyboard.press('Escape');
  assert.equal(await page.locator('#term-note:popover-open').count(), 0);
  await page.focus('#picture');
  await page.locator('.term').last().click();
  await page.waitForSelector('#term-note:popover-open');
  await page.mouse.click(5, 300);
  await page.waitForFunction(() => !document.querySelector('#term-note:popover-open'));
  await drawn(page);
  assert.equal((await words(page)).includes(word), false);
  // The words themselves stay as they were.
  assert.equal(await page.textContent('#step-list'), before);
  await page.reload();
  await page.waitForFunction(() => document.documentElement.dataset.later === 'done');
  await settled(page);
  await drawn(page);
  assert.equal((await words(page)).includes(word), false);
  assert.deepEqual(errors, []);
  await close();
});

test('in an injection the hub and the notch are explained, and where parts are named nothing is', async () => {
  const { page, close } = await open(site, { hash: '#injection=on&patient=average&level=L4&side=left' });
  await page.waitForSelector('#keep-true_ap', { state: 'visible' });
  await page.evaluate(() => document.querySelector('#stage-align > .stage-dot').click());
  await page.waitForFunction(() => [...document.querySelectorAll('#stage-align .term')].some((t) => t.textContent === 'hub'));
  await close();
  const lesson = await open(site, { hash: '#open=name-the-parts', ready: false });
  await lesson.page.waitForSelector('#lesson-begin');
  await lesson.page.click('#lesson-begin');
  await lesson.page.waitForFunction(() => document.documentElement.dataset.later === 'done' && document.body.dataset.lesson === 'running');
  await settled(lesson.page);
  assert.deepEqual(await words(lesson.page), []);
  await lesson.close();
});

for (const [lang, expected] of [['de', /Empfänger|Dornfortsatz|Pedikel/], ['es', /receptor|apófisis|pedículo|oblicua/]]) {
  test(`in ${lang} terms are found in its own words`, async () => {
    const { page, errors, close } = await dotted({ path: `?lang=${lang}` });
    assert.ok((await words(page)).some((word) => expected.test(word)), (await words(page)).join());
    assert.deepEqual(errors, []);
    await close();
  });
}
