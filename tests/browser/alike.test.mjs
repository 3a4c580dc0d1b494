// What differed between browsers and should not: a scrollbar that takes room, and fields that a browser paints itself.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { open, setUp } from './harness.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

// A tablet's 768 px less a scrollbar of Firefox's.
const BESIDE_SCROLLBAR = { viewport: { width: 756, height: 1024 } };

for (const path of ['author.html', 'check.html', 'model.html']) {
  test(`${path}: name, pages and theme stand in one row on a tablet, beside a scrollbar too`, async () => {
    const { page, close } = await open(site, { path, ready: false, options: BESIDE_SCROLLBAR });
    await page.waitForFunction(() => document.querySelectorAll('.pages a').length === 4 && [...document.querySelectorAll('.pages a')].every((a) => a.textContent) && document.getElementById('theme').options.length > 0);
    const middles = await page.evaluate(() => [...document.querySelectorAll('.top > *')].map((e) => e.getBoundingClientRect()).map((box) => Math.round(box.top + box.height / 2)));
    assert.equal(new Set(middles).size, 1, `${middles}`);
    assert.ok(middles.length >= 3);
    await close();
  });
}

test('lists, ticks and numbers have the page’s colours, not the browser’s', async () => {
  const { page, close } = await open(site);
  const colours = await page.evaluate(() =>
    ['#patient', '#labels', '#turn-oblique-number'].map((css) => {
      const { backgroundColor, appearance } = getComputedStyle(document.querySelector(css));
      return { css, backgroundColor, native: appearance === 'auto' };
    }),
  );
  for (const { css, backgroundColor, native } of colours) assert.deepEqual([backgroundColor, native], ['rgb(28, 35, 40)', false], css);
  await close();
});
