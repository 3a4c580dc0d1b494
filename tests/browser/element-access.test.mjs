// The course element within reach: axe-core in every look, 320 px, sizes of targets, everything by keyboard, and words for all.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { allReady } from './element-site.mjs';
import { axeFinds, launch, serve } from './harness.mjs';
import { drawn } from './keyboard.mjs';

let browser;
let site;
before(async () => {
  browser = await launch();
  site = await serve('.', {
    pages: { '/bad.html': '<!doctype html><html lang="en"><meta charset="utf-8"><title>Course</title><script type="module" src="/www/element/downbeam-view.js"></script><main><h1>Course</h1><downbeam-view level="L9" labels loading="eager"></downbeam-view></main></html>' },
  });
});
after(async () => {
  await browser.close();
  await site.close();
});

async function open(path, options = {}, { ready = true, prepare } = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const page = await context.newPage();
  await prepare?.(page);
  await page.goto(site.address + path);
  await page.waitForFunction(() => customElements.get('downbeam-view'));
  if (ready) await allReady(page);
  return { page, close: () => context.close() };
}

async function violations(page) {
  const { violations, passes } = await axeFinds(page, { nodes: true });
  assert.ok(passes.some((p) => p.nodes.some((n) => n.target.flat().join(' ').includes('turn-oblique'))), 'axe looked into the element');
  return violations;
}

const LOOKS = [
  ['dark', { colorScheme: 'dark' }],
  ['light', { colorScheme: 'light' }],
  ['forced colours', { forcedColors: 'active', reducedMotion: 'reduce' }],
  ['phone', { viewport: { width: 320, height: 640 } }],
];
for (const [name, options] of LOOKS) {
  for (const path of ['examples/course-page/', 'examples/strict-csp/', 'bad.html']) {
    test(`axe-core finds nothing: ${path} ${name}`, async () => {
      const { page, close } = await open(path, options);
      assert.deepEqual(await violations(page), []);
      const last = page.locator('downbeam-view').last();
      await last.locator('#turn-tilt-number').fill('999');
      await last.locator('#turn-tilt-number').press('Enter');
      if (await last.locator('#check').isVisible()) await last.locator('#check').click();
      await last.locator('#best').click();
      assert.deepEqual(await violations(page), [], 'best view and a complaint');
      await close();
    });
  }
}

test('axe-core finds nothing while it loads and when it fails', async () => {
  for (const act of [() => {}, (route) => route.fulfill({ status: 404 })]) {
    const { page, close } = await open('bad.html', {}, { ready: false, prepare: (p) => p.route('**/*.wasm', act) });
    await page.waitForTimeout(300);
    assert.match(await page.locator('.film-state').textContent(), /Loading the engine|did not load/);
    assert.deepEqual(await violations(page), []);
    await close();
  }
});

test('nothing is cut off or sticks out, 320 px to desk', async () => {
  for (const path of ['examples/course-page/', 'examples/strict-csp/', 'bad.html']) {
    const { page, close } = await open(path, { viewport: { width: 320, height: 700 } });
    const last = page.locator('downbeam-view').last();
    await last.locator('#turn-oblique-number').fill('-104.5');
    await last.locator('#turn-oblique-number').press('Enter');
    for (const width of [320, 400, 600, 800, 1280]) {
      await page.setViewportSize({ width, height: 700 });
      await drawn(page);
      const found = await page.evaluate(() => ({
        page: document.documentElement.scrollWidth - document.documentElement.clientWidth,
        over: [...document.querySelectorAll('downbeam-view')].flatMap((host) => {
          const frame = host.shadowRoot.querySelector('.downbeam').getBoundingClientRect();
          return [...host.shadowRoot.querySelectorAll('*')].filter((e) => {
            const box = e.getBoundingClientRect();
            return box.width > 1 && !e.closest('.unseen, .nudge-word, .turn-hint') && (box.right > frame.right + 0.5 || box.left < frame.left - 0.5);
          }).map((e) => `${e.tagName}.${e.className}#${e.id}`);
        }),
      }));
      assert.deepEqual(found, { page: 0, over: [] }, `${path} at ${width}`);
    }
    await close();
  }
});

test('buttons are 44 px, other targets at least 24 px', async () => {
  for (const width of [320, 1280]) {
    const { page, close } = await open('examples/strict-csp/', { viewport: { width, height: 800 } });
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('downbeam-view')].flatMap((host) => [...host.shadowRoot.querySelectorAll('button, input, label.tick')]).filter((e) => e.checkVisibility()).filter((e) => {
        const box = e.getBoundingClientRect();
        const least = e.matches('button, [type=number], label') ? 43.5 : 24;
        return box.height < least || box.width < Math.min(least, 40);
      }).map((e) => `${e.tagName}#${e.id} ${e.getBoundingClientRect().width}x${e.getBoundingClientRect().height}`));
    assert.deepEqual(small, []);
    await close();
  }
});

test('by keyboard alone: every control is reached and shows it, and the keys turn', async () => {
  const { page, close } = await open('bad.html');
  const reached = [];
  for (let i = 0; i < 30; i++) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const inner = document.activeElement?.shadowRoot?.activeElement;
      return inner ? { id: inner.id || inner.className, ring: getComputedStyle(inner).outlineStyle } : null;
    });
    if (!at) break;
    assert.notEqual(at.ring, 'none', `${at.id} shows no focus`);
    reached.push(at.id);
  }
  for (const id of ['switch-polarity', 'switch-outlines', 'switch-labels', 'turn-oblique', 'turn-oblique-number', 'turn-tilt', 'turn-tilt-number', 'best']) assert.ok(reached.includes(id), `${id} is not reached: ${reached}`);
  const slider = page.locator('#turn-oblique');
  await slider.focus();
  await page.keyboard.press('PageUp');
  await page.keyboard.press('ArrowUp');
  assert.equal(await page.evaluate(() => document.querySelector('downbeam-view').oblique), 6);
  await page.waitForTimeout(50);
  assert.equal(await slider.getAttribute('aria-valuetext'), '6 degrees to the patient’s left');
  await page.keyboard.press('ArrowRight');
  assert.equal(await page.evaluate(() => document.querySelector('downbeam-view').oblique), 5, 'the thumb goes right');
  await close();
});

test('in words: the picture, each slider, the caution, and what the view is worth once it stands still', async () => {
  const { page, close } = await open('bad.html');
  const inside = page.locator('downbeam-view');
  assert.equal(await inside.locator('[role=img]').getAttribute('aria-labelledby'), 'words');
  assert.match(await inside.locator('#words').textContent(), /^X-ray view of the lumbar spine, head up\. Receptor straight above, 0 degrees and no tilt, 0 degrees\. .*degrees/);
  assert.ok(await inside.locator('.caution').isVisible());
  assert.match(await inside.locator('.caution').textContent(), /Teaching model, not for clinical use/);
  assert.equal(await inside.locator('[role=status]').textContent(), '', 'says nothing by itself');
  const said = await page.evaluate(async () => {
    const { shadowRoot } = document.querySelector('downbeam-view');
    const status = shadowRoot.querySelector('[role=status]');
    const heard = [];
    new MutationObserver(() => heard.push(status.textContent)).observe(status, { childList: true, characterData: true, subtree: true });
    const slider = shadowRoot.getElementById('turn-oblique');
    for (let i = 0; i < 20; i++) {
      slider.value = String(i);
      slider.dispatchEvent(new Event('input'));
      await new Promise(requestAnimationFrame);
    }
    const during = heard.length;
    await new Promise((done) => setTimeout(done, 1000));
    return { during, heard };
  });
  assert.equal(said.during, 0);
  assert.equal(said.heard.length, 1);
  assert.match(said.heard[0], /^Oblique: \d+ of 100\. /);
  await close();
});
