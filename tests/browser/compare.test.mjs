// Own view beside the best one, and the views so far: drawn by the engine, moved by keys, and nothing given away.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { axeFinds, open, pictureHash, setUp, settled, sideways, typeAngle, openSheet } from './harness.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

const OWN = { oblique: -9, tilt: 12 };
const HASH = `#patient=average&level=L4&side=left&start=1&oblique=${OWN.oblique}&tilt=${OWN.tilt}`;
const ready = (page) => page.waitForSelector('#compare', { state: 'attached' });
const views = (page) => page.locator('.history-view');

/** Opens the page at HASH, with its later parts. */
async function at(hash = HASH, options = {}) {
  const opened = await open(site, { hash, options });
  await ready(opened.page);
  return opened;
}

test('either half is the engine’s own picture at its angles, outlines too, and the divider only clips', async () => {
  const { page, errors, close } = await at();
  await page.click('#compare');
  const found = await page.evaluate(async (own) => {
    const { TeachingRoom } = await import('./pkg/downbeam.js');
    const { outlineStyle } = await import('./film/film-look.js');
    const { drawEdgeLetters } = await import('./film/labels.js');
    const { texts } = await import('./words/texts.js');
    const room = new TeachingRoom('average', 'L4', 'left');
    const best = room.report().views.find((v) => v.view === 'true_ap').best;
    const tenth = (x) => Math.round(x * 10) / 10;
    const size = document.getElementById('overlay').width;
    const differs = (a, b) => {
      const [x, y] = [a, b].map((c) => c.getContext('2d').getImageData(0, 0, c.width, c.height).data);
      let count = x.length === y.length ? 0 : -1;
      for (let i = 0; i < x.length; i++) if (x[i] !== y[i]) count += 1;
      return count;
    };
    const answer = {};
    for (const [side, angles] of [['own', own], ['best', { oblique: tenth(best.oblique), tilt: tenth(best.tilt) }]]) {
      room.setOrientation(angles.oblique, angles.tilt);
      const film = Object.assign(document.createElement('canvas'), { width: 512, height: 512 });
      room.drawRadiograph(film.getContext('2d', { alpha: false }), document.getElementById('bone-dark').checked);
      const over = Object.assign(document.createElement('canvas'), { width: size, height: size });
      const pen = over.getContext('2d');
      room.drawOutlines(pen, outlineStyle({ boneDark: document.getElementById('bone-dark').checked }, size));
      drawEdgeLetters(pen, { oblique_deg: angles.oblique, rotation_deg: 0 }, devicePixelRatio, texts.picture);
      const [shownFilm, shownOver] = document.querySelectorAll(`.compare-${side} canvas`);
      answer[side] = { film: differs(shownFilm, film), over: differs(shownOver, over), angles };
    }
    const [a, b] = document.querySelectorAll('.compare canvas:first-child');
    answer.apart = differs(a, b);
    return answer;
  }, OWN);
  assert.deepEqual([found.own.film, found.own.over, found.best.film, found.best.over], [0, 0, 0, 0]);
  assert.ok(found.apart > 100_000, 'the two are different pictures');
  const clips = () => page.evaluate(() => ['own', 'best'].map((n) => getComputedStyle(document.querySelector(`.compare-${n}`)).clipPath));
  const before = await pictureHash(page);
  for (let i = 0; i < 20; i++) await page.keyboard.press('ArrowRight');
  assert.equal(await page.inputValue('#compare-slider'), '70');
  assert.deepEqual(await clips(), ['inset(0px calc(30%) 0px 0px)', 'inset(0px 0px 0px 70%)'].map((c, i) => (i ? c : c.replace('calc(30%)', '30%'))));
  assert.match(await page.getAttribute('#compare-slider', 'aria-valuetext'), /your view on the left 70 %/);
  assert.equal(await pictureHash(page), before, 'the film under it is not drawn again');
  const text = await page.textContent('#compare-words');
  const { angles } = found.best;
  assert.ok(text.includes(`${Math.abs(angles.oblique - OWN.oblique).toFixed(1).replace('.0', '')}° further to the patient’s left`), text);
  assert.ok(text.includes(`${Math.abs(angles.tilt - OWN.tilt).toFixed(1).replace('.0', '')}° more caudad`), text);
  assert.deepEqual(errors, []);
  await close();
});

test('the divider is dragged on the picture; what is drawn left and right of it are the two views', async () => {
  const { page, close } = await at();
  await page.click('#compare');
  const box = await page.locator('#compare-film').boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height * 0.7);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.25, box.y + box.height * 0.7, { steps: 4 });
  await page.mouse.up();
  assert.equal(await page.inputValue('#compare-slider'), '25');
  assert.equal(await page.inputValue('#turn-oblique-number'), '-9', 'the C-arm stays');
  const tops = await page.evaluate(() => {
    const { left, top, width, height } = document.getElementById('compare-film').getBoundingClientRect();
    const shown = (share) => document.elementsFromPoint(left + width * share, top + height * 0.7).find((e) => e.matches('canvas'))?.parentElement.className;
    return [0.2, 0.3].map(shown);
  });
  assert.deepEqual(tops, ['compare-own', 'compare-best']);
  await close();
});

test('by keys alone: in, along, out by Escape, by the button, and by turning', async () => {
  const { page, close } = await at();
  await page.locator('#compare').press('Enter');
  assert.equal(await page.evaluate(() => document.activeElement.id), 'compare-slider');
  await page.keyboard.press('Home');
  assert.equal(await page.inputValue('#compare-slider'), '0');
  await page.keyboard.press('Escape');
  assert.ok(await page.locator('#compare-film').isHidden());
  assert.equal(await page.evaluate(() => document.activeElement.id), 'checks-button', 'the button of the sheet that it was opened from');
  await page.locator('#compare').press('Enter');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  assert.ok(await page.locator('#compare-film').isHidden(), 'the button beside the slider');
  await page.locator('#compare').press('Enter');
  await typeAngle(page, 'oblique', -8);
  assert.ok(await page.locator('#compare-film').isHidden(), 'turning');
  await close();
});

test('nothing is given away: not in self-test before a check, not where pictures have to be taken', async () => {
  const { page, close } = await at(`${HASH}&self-test=on`);
  assert.ok(await page.isDisabled('#compare'));
  await page.click('#check');
  await settled(page);
  assert.ok(await page.isEnabled('#compare'));
  await page.click('#compare');
  assert.ok(await page.locator('#compare-film').isVisible());
  await close();
  const exposed = await at(`${HASH}&exposures=on`);
  assert.ok(await exposed.page.locator('#compare').isHidden());
  assert.equal(await views(exposed.page).count(), 0);
  await typeAngle(exposed.page, 'oblique', 5);
  assert.equal(await views(exposed.page).count(), 0, 'no picture was taken');
  await exposed.page.click('#spot');
  await typeAngle(exposed.page, 'oblique', 12);
  assert.equal(await views(exposed.page).count(), 1);
  assert.match(await views(exposed.page).first().textContent(), /oblique 5° to the patient’s left/);
  const [shots, picture] = [await exposed.page.textContent('#dose-exposures'), await pictureHash(exposed.page)];
  await exposed.page.click('#history summary');
  await views(exposed.page).first().click();
  await settled(exposed.page);
  assert.equal(await exposed.page.inputValue('#turn-oblique-number'), '5');
  assert.deepEqual([await exposed.page.textContent('#dose-exposures'), await pictureHash(exposed.page)], [shots, picture], 'going back costs nothing and shows nothing new');
  await exposed.close();
});

test('a small picture goes back to its view: angles and picture; Ctrl+Z and Ctrl+Shift+Z step through', async () => {
  const { page, close } = await at();
  await page.waitForFunction(() => document.querySelectorAll('.history-view').length === 1);
  const first = await pictureHash(page);
  for (const oblique of [3, 14]) await typeAngle(page, 'oblique', oblique);
  const last = await pictureHash(page);
  assert.equal(await views(page).count(), 3);
  await page.locator('#history summary').press('Enter');
  await views(page).first().press('Enter');
  await settled(page);
  assert.equal(await page.inputValue('#turn-oblique-number'), '-9');
  assert.equal(await pictureHash(page), first);
  assert.deepEqual(await page.locator('.history-view').evaluateAll((all) => all.map((e) => e.getAttribute('aria-current'))), ['true', 'false', 'false']);
  assert.match(await views(page).first().textContent(), /1 oblique 9° to the patient’s right, tilt 12° cephalad {2}now/);
  for (const [key, degrees] of [['Control+Shift+Z', '3'], ['Control+Shift+Z', '14'], ['Control+z', '3'], ['Control+y', '14']]) {
    await page.keyboard.press(key);
    await settled(page);
    assert.equal(await page.inputValue('#turn-oblique-number'), degrees, key);
  }
  assert.equal(await pictureHash(page), last);
  await page.click('#best');
  await settled(page);
  assert.equal(await views(page).count(), 3, 'the best view is not one of the learner’s');
  for (let i = 0; i < 13; i++) await typeAngle(page, 'tilt', i - 5);
  assert.equal(await views(page).count(), 12);
  await close();
});

test('in an injection a small picture goes back through the log', async () => {
  const { page, close } = await at('#injection=on&patient=average&level=L4&side=left&start=1&oblique=-9&tilt=12');
  await typeAngle(page, 'oblique', 2);
  await page.waitForFunction(() => document.querySelectorAll('.history-view').length >= 1);
  const [count, hash] = [await views(page).count(), await pictureHash(page)];
  await typeAngle(page, 'oblique', 10);
  await typeAngle(page, 'oblique', 20);
  const end = await pictureHash(page);
  await page.click('#history summary');
  await views(page).nth(count - 1).click();
  await settled(page);
  assert.equal(await page.inputValue('#turn-oblique-number'), '2');
  assert.equal(await pictureHash(page), hash);
  await page.click('#needle-redo');
  await page.click('#needle-redo');
  await settled(page);
  assert.equal(await page.inputValue('#turn-oblique-number'), '20', 'the log has it all');
  assert.equal(await pictureHash(page), end);
  await close();
});

for (const [name, options] of [['desk', {}], ['phone', { viewport: { width: 320, height: 640 } }], ['forced colours', { forcedColors: 'active' }]]) {
  test(`axe-core finds nothing, nothing scrolls sideways, targets are large enough: ${name}`, async () => {
    const { page, close } = await at(HASH, options);
    await page.click('#history summary');
    for (const tilt of [1, 2, 3, 4, 5]) await typeAngle(page, 'tilt', tilt);
    await page.click('#compare');
    const { violations, passes } = await axeFinds(page);
    assert.ok(passes.length > 20);
    assert.deepEqual(violations, []);
    assert.equal(await sideways(page), 0);
    // Slider and sentence stand with the film: the one at its foot, the other whole and off the window's edge.
    const { film, bar, words, window_px } = await page.evaluate(() => {
      const box = (element) => { const { left, right, top, bottom } = element.getBoundingClientRect(); return { left, right, top, bottom }; };
      const range = document.createRange();
      range.selectNodeContents(document.getElementById('compare-words'));
      return { film: box(document.getElementById('picture')), bar: box(document.querySelector('.compare-bar')), words: box(range), window_px: [innerWidth, innerHeight] };
    });
    for (const side of ['left', 'right', 'bottom']) assert.ok(Math.abs(bar[side] - film[side]) <= 1, `${side}: ${bar[side]} and ${film[side]}`);
    assert.ok(words.left >= 8 && words.right <= window_px[0] - 8 && words.bottom <= window_px[1], JSON.stringify(words));
    assert.ok(words.bottom <= bar.top || words.top >= bar.bottom, 'the sentence is not under the slider');
    const opener = await page.locator('#checks-button').boundingBox();
    assert.ok(opener.width >= 44 && opener.height >= 44);
    for (const what of ['#compare-close', '#compare-slider', '.history-view']) {
      const box = await page.locator(what).first().boundingBox();
      assert.ok(box.width >= 44 && box.height >= 44, `${what} ${box.width} × ${box.height}`);
    }
    await openSheet(page, 'checks');
    const press = await page.locator('#compare').boundingBox();
    assert.ok(press.width >= 44 && press.height >= 44);
    await close();
  });
}
