// Reachable: axe-core in every look, no sideways scroll, sizes of targets, everything by keyboard.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { axeClean, axeFinds, failed, open, setUp, settled, sideways, openSheet } from './harness.mjs';
import { drawn } from './keyboard.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

/** Takes a page through its states, and has each looked at. One page, since opening one takes longer than looking at it. */
async function states(page, look) {
  await look('a first visit');
  await page.click('#menu-button');
  await look('the menu');
  await page.click('#tour-open');
  await page.waitForSelector('#tour:not([hidden])');
  await look('the tour');
  await page.click('#tour-close');
  await page.keyboard.press('?');
  await page.waitForSelector('#keymap[open]');
  await look('the keys');
  await page.keyboard.press('Escape');
  await page.click('#description summary');
  await page.waitForSelector('#description-says');
  await page.check('#labels');
  await openSheet(page, 'picture');
  await page.fill('#turn-tilt-number', '999');
  await page.press('#turn-tilt-number', 'Enter');
  await settled(page);
  await look('names, description, a number out of range');
  await page.click('#best');
  await settled(page);
  await look('best view shown');
  await page.check('#self-test');
  await settled(page);
  await look('self-test');
  await page.check('#source-exposures');
  await settled(page);
  await look('by exposure, before the first');
  await page.check('#latch');
  await page.click('#fluoroscopy');
  await look('with the beam on');
  await page.click('#fluoroscopy');
  await look('after it');
}

test('axe-core finds nothing: dark, light and forced colours', async () => {
  const { page, close } = await open(site, { hash: '#level=L9&side=left' });
  await states(page, (what) => axeClean(page, what));
  await close();
});

test('axe-core finds nothing, and nothing goes sideways: a phone, and text twice as large on a desk', async () => {
  const { page, close } = await open(site, { hash: '#level=L4&side=left', options: { viewport: { width: 320, height: 640 } } });
  await states(page, async (what) => {
    assert.deepEqual((await axeFinds(page)).violations, [], what);
    assert.ok((await sideways(page)) <= 0, `${what}: sideways`);
  });
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.goto(`${site.server.address}?again#level=L4&side=left`);
  await settled(page);
  await page.evaluate(() => (document.documentElement.style.fontSize = '200%'));
  await states(page, async (what) => {
    assert.ok((await sideways(page)) <= 0, `${what}: sideways at 200 % text`);
  });
  assert.deepEqual((await axeFinds(page)).violations, [], 'text twice as large');
  await close();
});

test('axe-core finds nothing while loading, on the failed page, and on the bench page', async () => {
  let answer = null;
  const { page, close } = await open(site, { ready: false, prepare: (p) => p.route('**/*.wasm', (route) => (answer ? route.fulfill({ status: 404 }) : (answer = route))) });
  await page.waitForSelector('#film-progress', { state: 'visible' });
  await axeClean(page, 'loading');
  await answer.fulfill({ status: 404 });
  await failed(page);
  await axeClean(page, 'failed');
  await close();
  const bench = await open(site, { path: 'bench.html?frames=10', ready: false });
  await bench.page.evaluate(() => globalThis.downbeamBench);
  assert.deepEqual((await axeFinds(bench.page)).violations, []);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test('320 px to desk: no sideways scroll, nothing cut off, buttons and choices 44 px, other targets at least 24 px', async () => {
  const { page, close } = await open(site);
  await openSheet(page, 'picture');
  await page.check('#labels');
  await page.check('#source-exposures');
  await page.click('#spot');
  await page.click('#spot');
  for (const width of [320, 360, 480, 600, 768, 1024, 1100, 1280, 1920]) {
    await page.setViewportSize({ width, height: 700 });
    await drawn(page);
    const seen = await page.evaluate(() => {
      const name = (e) => `${e.tagName}#${e.id}.${e.className}`;
      const over = [...document.querySelectorAll('body *')].filter((e) => {
        const box = e.getBoundingClientRect();
        return box.width > 1 && (box.right > innerWidth + 0.5 || box.left < -0.5) && !e.closest('.skip, .unseen, svg, .history-strip li');
      });
      // A dot of the row of steps is 24 px wide and 40 high; the button below says the same of the step in hand.
      const least = (e) => (e.matches('.stage-dot') ? 24 : e.matches('button, select, input[type=number], .segment, label.tick, summary') ? 43.5 : 24);
      // A term stands in the line of its sentence, which its size follows (WCAG 2.2, 2.5.8, inline).
      const small = [...document.querySelectorAll('button:not(.term), select, input[type=range], input[type=number], input[type=checkbox], .segment, label.tick, summary')].filter((e) => {
        const box = e.getBoundingClientRect();
        return e.checkVisibility() && (box.height < least(e) || box.width < Math.min(least(e), 40));
      });
      return { page: document.documentElement.scrollWidth, screen: document.documentElement.clientWidth, over: over.map(name), small: small.map(name) };
    });
    assert.ok(seen.page <= seen.screen, `${width}: ${seen.page} wide`);
    assert.deepEqual(seen.over, [], `${width}`);
    assert.deepEqual(seen.small, [], `${width}`);
  }
  await close();
});

test('every control is reached by Tab, shows where it is, and is not under the caution line', async () => {
  const { page, close } = await open(site, { hash: '#exposures=on' });
  for (const viewport of [{ width: 1280, height: 720 }, { width: 320, height: 568 }]) {
    await page.setViewportSize(viewport);
    // By script, so that Tab still starts at the top.
    await page.evaluate(() => {
      document.getElementById('spot').click();
      document.body.tabIndex = -1;
      document.body.focus();
      document.body.removeAttribute('tabindex');
      getSelection().removeAllRanges();
      scrollTo(0, 0);
    });
    const reached = new Set();
    for (let i = 0; i < 80; i++) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate(() => {
        const e = document.activeElement;
        if (e === document.body) return null;
        const box = (e.closest('.segment') ?? e).getBoundingClientRect();
        const caution = document.querySelector('.caution').getBoundingClientRect();
        const ring = getComputedStyle(e.closest('.segment') ?? e).outlineStyle;
        return { id: e.id || e.className || e.tagName, covered: box.top >= caution.top - 1 || box.bottom <= 0, ring };
      });
      if (at === null) break;
      reached.add(at.id);
      assert.ok(!at.covered, `${at.id} is covered`);
      assert.notEqual(at.ring, 'none', `${at.id} shows no focus`);
    }
    // What opens when asked for: each by its button, and Escape gives the keys back to it.
    for (const sheet of ['case-sheet', 'picture-sheet', 'checks-sheet', 'exposure-sheet']) {
      const button = page.locator(`[popovertarget="${sheet}"]:not([popovertargetaction])`);
      await button.focus();
      await page.keyboard.press('Enter');
      assert.ok(await page.locator(`#${sheet}`).isVisible(), sheet);
      for (let i = 0; i < 20; i++) {
        await page.keyboard.press('Tab');
        const at = await page.evaluate((id) => {
          const e = document.activeElement;
          return e.closest(`#${id}`) && { id: e.id, ring: getComputedStyle(e.closest('.segment') ?? e).outlineStyle };
        }, sheet);
        if (!at) break;
        reached.add(at.id);
        assert.notEqual(at.ring, 'none', `${at.id} shows no focus`);
      }
      await button.focus();
      await page.keyboard.press('Enter');
      if (!(await page.locator(`#${sheet}`).isVisible())) await page.keyboard.press('Enter');
      await page.keyboard.press('Escape');
      assert.equal(await page.locator(`#${sheet}`).isVisible(), false, sheet);
      assert.ok(await button.evaluate((e) => e === document.activeElement), `${sheet}: the keys go back to its button`);
    }
    for (const id of ['level-L4', 'side-left', 'patient', 'menu-button', 'picture', 'bone-dark', 'outlines', 'labels', 'spot', 'fluoroscopy', 'source-exposures', 'pulse-rate', 'magnification', 'low-dose', 'latch', 'collimation-width', 'collimation-height', 'dose-reset', 'dose-save', 'turn-oblique', 'turn-oblique-number', 'turn-tilt', 'turn-tilt-number', 'start-random', 'start-again', 'self-test', 'view-true_ap', 'best', 'welcome-tour', 'welcome-close']) {
      assert.ok(reached.has(id), `${id} is not reached: ${[...reached]}`);
    }
  }
  // The menu by its button: what it holds comes next, and Escape goes back to the button.
  await page.locator('#menu-button').press('Enter');
  const held = [];
  for (let i = 0; i < 12; i++) {
    await page.keyboard.press('Tab');
    const id = await page.evaluate(() => document.activeElement.closest('#menu') && (document.activeElement.id || document.activeElement.textContent));
    if (!id) break;
    held.push(id);
  }
  for (const id of ['theme', 'tour-open', 'keys-open', 'read-open']) assert.ok(held.includes(id), `${id}: ${held}`);
  await page.keyboard.press('Escape');
  assert.equal(await page.locator('#menu').isVisible(), false);
  await close();
});

test('the live region speaks once the view stands still, and not while it turns', async () => {
  const { page, close } = await open(site, { hash: '#level=L4&side=left&oblique=-9&tilt=14' });
  const spoken = await page.evaluate(async () => {
    const status = document.getElementById('status');
    const said = [];
    new MutationObserver(() => said.push(status.textContent)).observe(status, { childList: true, characterData: true, subtree: true });
    const slider = document.getElementById('turn-oblique');
    for (let i = -9; i < 12; i++) {
      slider.value = String(i);
      slider.dispatchEvent(new Event('input'));
      await new Promise((next) => setTimeout(next, 30));
    }
    const during = said.length;
    await new Promise((next) => setTimeout(next, 900));
    return { during, after: said.length, last: said.at(-1) };
  });
  assert.equal(spoken.during, 0);
  assert.equal(spoken.after, 1);
  assert.match(spoken.last, /True AP: \d+ of 100/);
  await close();
});
