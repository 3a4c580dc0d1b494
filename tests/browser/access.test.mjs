// Reachable: axe-core in every look, no sideways scroll, sizes of targets, everything by keyboard.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { axeFinds, open, setUp, settled, useTheme } from './harness.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

async function violations(page) {
  const { violations, passes } = await axeFinds(page);
  assert.ok(passes.length > 20, 'axe looked at the page');
  return violations;
}

const LOOKS = [
  ['dark', {}, () => {}],
  ['light', {}, (page) => useTheme(page, 'light')],
  ['as a light device', { colorScheme: 'light' }, (page) => useTheme(page, 'device')],
  ['forced colours', { forcedColors: 'active', reducedMotion: 'reduce' }, () => {}],
  ['phone', { viewport: { width: 320, height: 640 } }, () => {}],
];

for (const [name, options, dress] of LOOKS) {
  test(`axe-core finds nothing: ${name}`, async () => {
    const { page, close } = await open(site, { hash: '#level=L9&side=left', options });
    await dress(page);
    await page.check('#labels');
    await page.click('.more summary');
    await page.fill('#turn-tilt-number', '999');
    await page.press('#turn-tilt-number', 'Enter');
    await settled(page);
    assert.deepEqual(await violations(page), []);
    await page.click('#best');
    await settled(page);
    assert.deepEqual(await violations(page), [], 'best view shown');
    await page.check('#self-test');
    await settled(page);
    assert.deepEqual(await violations(page), [], 'self-test');
    await page.check('#source-exposures');
    await settled(page);
    assert.deepEqual(await violations(page), [], 'by exposure, before the first');
    await page.click('#spot');
    await page.check('#latch');
    await page.click('#fluoroscopy');
    assert.deepEqual(await violations(page), [], 'with the beam on');
    await page.click('#fluoroscopy');
    assert.deepEqual(await violations(page), [], 'after it');
    await close();
  });
}

test('axe-core finds nothing on the failed page, while loading, and on the bench page', async () => {
  const failed = await open(site, { ready: false, prepare: (p) => p.route('**/*.wasm', (route) => route.fulfill({ status: 404 })) });
  await failed.page.waitForSelector('#film-state[data-failed=true]');
  assert.deepEqual(await violations(failed.page), []);
  await failed.close();
  const loading = await open(site, { ready: false, prepare: (p) => p.route('**/*.wasm', () => {}) });
  await loading.page.waitForSelector('#film-progress', { state: 'visible' });
  assert.deepEqual(await violations(loading.page), []);
  await loading.close();
  const bench = await open(site, { path: 'bench.html?frames=10', ready: false });
  await bench.page.evaluate(() => globalThis.downbeamBench);
  assert.deepEqual(await violations(bench.page), []);
  assert.deepEqual(bench.errors, []);
  await bench.close();
});

test('no sideways scroll and nothing cut off, 320 px to desk', async () => {
  for (const width of [320, 360, 480, 600, 768, 1024, 1100, 1280, 1920]) {
    const { page, close } = await open(site, { options: { viewport: { width, height: 700 } } });
    await page.click('.more summary');
    await page.check('#labels');
    await page.check('#source-exposures');
    await page.click('#spot');
    await page.click('#spot');
    const wide = await page.evaluate(() => {
      const over = [...document.querySelectorAll('body *')].filter((e) => {
        const box = e.getBoundingClientRect();
        return box.width > 1 && (box.right > innerWidth + 0.5 || box.left < -0.5) && !e.closest('.skip, .unseen, svg');
      });
      return { page: document.documentElement.scrollWidth, screen: document.documentElement.clientWidth, over: over.map((e) => `${e.tagName}.${e.className}#${e.id}`) };
    });
    assert.ok(wide.page <= wide.screen, `${width}: ${wide.page} wide`);
    assert.deepEqual(wide.over, [], `${width}`);
    await close();
  }
});

test('buttons and choices are 44 px, other targets at least 24 px', async () => {
  for (const width of [320, 1280]) {
    const { page, close } = await open(site, { options: { viewport: { width, height: 800 } } });
    await page.click('.more summary');
    await page.check('#source-exposures');
    await page.click('#spot');
    const small = await page.evaluate(() => {
      const least = (e) => (e.matches('button, select, input[type=number], .segment, label.tick, summary') ? 43.5 : 24);
      const targets = document.querySelectorAll('button, select, input[type=range], input[type=number], input[type=checkbox], .segment, label.tick, summary');
      return [...targets].filter((e) => e.checkVisibility()).filter((e) => {
        const box = e.getBoundingClientRect();
        return box.height < least(e) || box.width < Math.min(least(e), 40);
      }).map((e) => `${e.tagName}#${e.id}.${e.className} ${e.getBoundingClientRect().width}x${e.getBoundingClientRect().height}`);
    });
    assert.deepEqual(small, []);
    await close();
  }
});

test('every control is reached by Tab, shows where it is, and is not under the caution line', async () => {
  for (const options of [{ viewport: { width: 1280, height: 720 } }, { viewport: { width: 320, height: 568 } }]) {
    const { page, close } = await open(site, { hash: '#exposures=on', options });
    // By script, so that Tab still starts at the top.
    await page.evaluate(() => document.getElementById('spot').click());
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
    for (const id of ['level-L4', 'side-left', 'patient', 'theme', 'bone-dark', 'outlines', 'labels', 'spot', 'fluoroscopy', 'source-exposures', 'pulse-rate', 'magnification', 'low-dose', 'latch', 'collimation-width', 'collimation-height', 'dose-reset', 'dose-save', 'turn-oblique', 'turn-oblique-number', 'turn-tilt', 'turn-tilt-number', 'start-random', 'start-again', 'self-test', 'view-true_ap', 'best']) {
      assert.ok(reached.has(id), `${id} is not reached: ${[...reached]}`);
    }
    await close();
  }
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
