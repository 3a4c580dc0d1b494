// Full marks at the best view of every level and side, and none for free; the steps; the self-test.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { open, setUp, settled, typeAngle, openSheet } from './harness.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

/** What the engine itself says for a case at an orientation. */
function engineReport(page, level, side, oblique, tilt) {
  return page.evaluate(
    async ([l, s, o, t]) => {
      const { TeachingRoom } = await import('./pkg/downbeam.js');
      globalThis.testRoom ??= new TeachingRoom('average', 'L4', 'left');
      globalThis.testRoom.setTarget(l, s);
      globalThis.testRoom.setOrientation(o, t);
      return globalThis.testRoom.report();
    },
    [level, side, oblique, tilt],
  );
}

async function aim(page, oblique, tilt) {
  await typeAngle(page, 'oblique', oblique);
  await typeAngle(page, 'tilt', tilt);
}

const total = (page) => page.textContent('#total-value');
const stepsDone = (page) => page.locator('.step[data-phase=done]').count();

/** One page for all levels, which stays open: each comes by its address. */
let levels;
for (const level of ['L1', 'L2', 'L3', 'L4', 'L5', 'S1']) {
  test(`${level}: each view reaches full marks at its best, on either side`, async () => {
    levels ??= await open(site);
    const { page, errors } = levels;
    await page.evaluate((hash) => (location.hash = hash), `#level=${level}&side=left`);
    await page.waitForFunction((id) => document.getElementById(id).checked, `level-${level}`);
    await settled(page);
    for (const side of ['left', 'right']) {
      await page.check(`#side-${side}`);
      await settled(page);
      const { views, best } = await engineReport(page, level, side, 0, 0);
      assert.deepEqual(views.map((v) => v.view), ['true_ap', 'oblique', 'lateral']);
      assert.deepEqual(best, views[1].best);
      for (const view of views) {
        await page.check(`#view-${view.view}`);
        await aim(page, view.best.oblique.toFixed(1), view.best.tilt.toFixed(1));
        // A step ticked here may move the page on to another view; this check is about the one asked for.
        await page.check(`#view-${view.view}`);
        await settled(page);
        assert.equal(await total(page), '100 of 100', `${level} ${side} ${view.view}`);
        assert.equal(await page.textContent('#total-word'), 'full marks');
        for (const id of view.criteria) assert.equal(await page.getAttribute(`#check-${id}`, 'data-score'), '1', id);
      }
      await page.check('#view-oblique');
      await aim(page, (best.oblique * 0.2).toFixed(1), (best.tilt + 12).toFixed(1));
      await page.check('#view-oblique');
      assert.notEqual(await total(page), '100 of 100', 'far from the best view there are no full marks');
    }
    assert.deepEqual(errors, []);
  });
}

test('the advice leads to the best view', async () => {
  const { page, close } = await open(site, { hash: '#level=L4&side=left&oblique=4&tilt=14' });
  await page.check('#view-oblique');
  let [oblique, tilt] = [4, 14];
  for (let i = 0; i < 6 && (await total(page)) !== '100 of 100'; i++) {
    for (const sentence of await page.locator('.criteria li:visible .advice').allTextContents()) {
      const degrees = Number(sentence.match(/(\d+) degrees?/)?.[1] ?? 0) || (/less than 1/.test(sentence) ? 0.5 : 0);
      if (/left/.test(sentence)) oblique += degrees;
      else if (/right/.test(sentence)) oblique -= degrees;
      else if (/cephalad/.test(sentence)) tilt += degrees;
      else if (/caudad/.test(sentence)) tilt -= degrees;
    }
    await aim(page, oblique, tilt);
    await page.check('#view-oblique');
    await settled(page);
  }
  assert.equal(await total(page), '100 of 100');
  await close();
});

test('steps are ticked in order, from the criteria only', async () => {
  const { page, close } = await open(site, { hash: '#level=L4&side=left&oblique=-9&tilt=14' });
  const { views } = await engineReport(page, 'L4', 'left', 0, 0);
  const [ap, slanted] = views.map((v) => v.best);
  assert.equal(await stepsDone(page), 0);
  await aim(page, slanted.oblique.toFixed(1), slanted.tilt.toFixed(1));
  assert.equal(await stepsDone(page), 0, 'the last step does not come before the first');
  await typeAngle(page, 'tilt', (ap.tilt + 12).toFixed(1));
  await typeAngle(page, 'oblique', ap.oblique.toFixed(1));
  assert.equal(await stepsDone(page), 1, 'spinous process centred, plate not square');
  assert.match(await page.textContent('#status'), /Step done: True AP/);
  await typeAngle(page, 'tilt', ap.tilt.toFixed(1));
  assert.equal(await stepsDone(page), 2);
  assert.ok(await page.isChecked('#view-oblique'), 'the checks move on to the oblique view');
  await typeAngle(page, 'tilt', (slanted.tilt + 5).toFixed(1));
  await typeAngle(page, 'oblique', slanted.oblique.toFixed(1));
  assert.equal(await stepsDone(page), 3);
  await typeAngle(page, 'tilt', slanted.tilt.toFixed(1));
  assert.equal(await stepsDone(page), 4);
  assert.match(await page.textContent('#steps-note'), /All four steps done/);
  await page.click('#start-again');
  await settled(page);
  assert.equal(await stepsDone(page), 0);
  await close();
});

test('a start position is never one of the views, and the same number gives the same start', async () => {
  const { page, close } = await open(site);
  const starts = await page.evaluate(async () => {
    const { startPosition } = await import('./state/start.js');
    return Array.from({ length: 9999 }, (_, i) => startPosition(i + 1));
  });
  assert.ok(starts.every((s) => Math.abs(s.oblique_deg) >= 8 && Math.abs(s.oblique_deg) <= 22 && Math.abs(s.tilt_deg) >= 7 && Math.abs(s.tilt_deg) <= 16));
  assert.ok(new Set(starts.map((s) => `${s.oblique_deg} ${s.tilt_deg}`)).size > 400);
  const shown = () => page.evaluate(() => [document.getElementById('turn-oblique').value, document.getElementById('turn-tilt').value, location.hash]);
  await page.click('#start-random');
  await settled(page);
  const [oblique, tilt, hash] = await shown();
  await typeAngle(page, 'oblique', 40);
  await page.click('#start-again');
  await settled(page);
  assert.deepEqual((await shown()).slice(0, 2), [oblique, tilt]);
  const again = await open(site, { hash: `#start=${new URLSearchParams(hash.slice(1)).get('start')}` });
  assert.deepEqual(await again.page.evaluate(() => [document.getElementById('turn-oblique').value, document.getElementById('turn-tilt').value]), [oblique, tilt]);
  await again.close();
  await close();
});

test('self-test hides values and advice until asked, and counts', async () => {
  const { page, close } = await open(site, { hash: '#level=L4&side=left&oblique=-9&tilt=14' });
  await page.check('#self-test');
  await settled(page);
  const hidden = async () => {
    await openSheet(page, 'checks');
    assert.ok(await page.locator('#check-total').isHidden());
    assert.equal(await page.locator('.criteria .advice:visible').count(), 0);
    const heard = (await page.textContent('#picture-text')) + (await page.textContent('#status'));
    assert.doesNotMatch(heard, /of 100|Turn the receptor|Tilt the receptor/);
  };
  await hidden();
  assert.ok(await page.isDisabled('#best'));
  await page.click('#check');
  await settled(page);
  await openSheet(page, 'checks');
  assert.ok(await page.locator('#check-total').isVisible());
  assert.equal(await page.textContent('#check-count'), '1 check used');
  assert.match(await page.textContent('#status'), /of 100/);
  assert.ok(await page.isEnabled('#best'));
  const { views } = await engineReport(page, 'L4', 'left', 0, 0);
  await aim(page, views[0].best.oblique.toFixed(1), views[0].best.tilt.toFixed(1));
  await hidden();
  assert.equal(await stepsDone(page), 0, 'nothing is ticked before the learner asks');
  await page.click('#check');
  await settled(page);
  assert.equal(await stepsDone(page), 2);
  assert.equal(await page.textContent('#check-count'), '2 checks used');
  await close();
});

test('the best view is shown, does not count, and one comes back from it', async () => {
  const { page, close } = await open(site, { hash: '#level=L3&side=right&oblique=-9&tilt=14' });
  await page.check('#view-oblique');
  const before = await total(page);
  await page.click('#best');
  await settled(page);
  await page.check('#view-oblique');
  assert.equal(await total(page), '100 of 100');
  assert.equal(await stepsDone(page), 0);
  await page.click('#best');
  await settled(page);
  assert.equal(await page.inputValue('#turn-oblique-number'), '-9');
  assert.equal(await page.inputValue('#turn-tilt-number'), '14');
  assert.equal(await total(page), before);
  await close();
});
