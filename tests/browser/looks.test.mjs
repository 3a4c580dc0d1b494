// The page looks as it looked when it was opened and found good: every state at a desk's, a tablet's and a phone's width, in both themes.
// `npm run looks` keeps the looks of now, after a change that was meant.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { setUp } from './harness.mjs';
import { STATES, THEMES, WIDTHS, cells, difference, kept, overruns, reach, shot } from './looks.mjs';

/** Share of cells that may change: two runs on one machine differed by 0.0013 at most. */
const ALLOWED = 0.004;
let site;
let blank;
before(async () => {
  site = await setUp();
  blank = await site.browser.newPage();
});
after(() => site.tearDown());

for (const state of STATES) {
  test(`looks as it was found good: ${state.name}`, async () => {
    const { page, close } = await reach(site, state);
    const found = [];
    for (const size of WIDTHS) {
      for (const theme of THEMES) {
        const now = await cells(blank, await shot(page, size, theme, state));
        const { share, said } = await difference(blank, await kept(state.name, size[0], theme), now);
        if (!(share <= ALLOWED)) found.push(`${size[0]} px, ${theme}: ${said}`);
      }
    }
    assert.deepEqual(found, []);
    assert.deepEqual(await overruns(page), []);
    await close();
  });
}

test('a part that is gone, moved or of another colour is found', async () => {
  const views = STATES[0];
  const { page, close } = await reach(site, views);
  const [size, theme] = [WIDTHS[0], THEMES[0]];
  const was = await kept(views.name, size[0], theme);
  for (const rule of ['#gantry { visibility: hidden; }', '#steps { translate: 0 24px; }', '#check { background: #4a7; }']) {
    const style = await page.addStyleTag({ content: rule });
    const { share } = await difference(blank, was, await cells(blank, await shot(page, size, theme, views)));
    assert.ok(share > ALLOWED, `${rule}: ${share}`);
    await style.evaluate((element) => element.remove());
  }
  await close();
});
