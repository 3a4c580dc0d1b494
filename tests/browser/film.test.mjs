// The film: as sharp as the screen at rest, coarser while it moves; the graphics processor's sums against the engine's; zoom.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { after, before, test } from 'node:test';
import { chromium } from 'playwright-core';
import { about, covering } from '../../www/film/zoom.js';
import { nextPace, restPixels } from '../../www/film/live.js';
import { only, open, pictureHash, setUp, settled } from './harness.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

const width = (page) => page.evaluate(() => document.getElementById('radiograph').width);
const sharp = (page) => page.waitForFunction(() => document.documentElement.dataset.film === 'sharp', null, { timeout: 30_000 });

test('a film at rest has the pixels of the screen, up to 1024', () => {
  assert.deepEqual([300, 512, 700, 1023, 4000].map(restPixels), [512, 512, 704, 1024, 1024]);
});

test('a slow frame wants a coarser film, a quick one a finer', () => {
  assert.equal(nextPace(512, 60), 384);
  assert.equal(nextPace(192, 300), 192);
  assert.equal(nextPace(256, 4), 384);
  assert.equal(nextPace(256, 12), 256);
  assert.equal(nextPace(512, 10), 512);
});

test('what is pinched stays under the fingers, and the film covers its frame', () => {
  const once = about({ scale: 1, x: 0, y: 0 }, 2, [300, 100], 400);
  assert.deepEqual(once, { scale: 2, x: -300, y: -100 });
  assert.deepEqual(about(once, 0.1, [10, 10], 400), { scale: 1, x: 0, y: 0 });
  assert.deepEqual(covering({ scale: 9, x: 50, y: -5000 }, 400), { scale: 4, x: 0, y: -1200 });
});

test('the film comes to rest sharp, and a turn draws it anew', async () => {
  const { page, errors, close } = await open(site, { options: { deviceScaleFactor: 2 } });
  await sharp(page);
  const screen = await page.evaluate(() => document.getElementById('overlay').width);
  assert.equal(await width(page), restPixels(screen));
  const before = await pictureHash(page);
  // Watched from before the turn: it rests again after a seventh of a second.
  const moving = page.waitForFunction(() => document.documentElement.dataset.film === 'moving' && document.getElementById('radiograph').width <= 512);
  await page.locator('#turn-oblique-number').fill('20');
  await page.locator('#turn-oblique-number').press('Enter');
  await moving;
  await settled(page);
  await sharp(page);
  assert.equal(await width(page), restPixels(screen));
  assert.notEqual(await pictureHash(page), before);
  assert.deepEqual(errors, []);
  await close();
});

test('while a slow machine follows the hand film and lines are coarse, and sharp again at rest', { skip: only('chromium', 'its protocol slows the processor') }, async () => {
  const { page, errors, close } = await open(site, { options: { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2 } });
  await sharp(page);
  const sizes = () => page.evaluate(() => ({ film: document.getElementById('radiograph').width, lines: document.getElementById('overlay').width, css: document.getElementById('film-image').clientWidth }));
  const session = await page.context().newCDPSession(page);
  const processor = (rate) => session.send('Emulation.setCPUThrottlingRate', { rate });
  const rest = await sizes();
  assert.equal(rest.lines, 2 * rest.css);
  const box = await page.locator('#picture').boundingBox();
  await processor(12);
  await page.mouse.move(box.x + 150, box.y + 150);
  await page.mouse.down();
  let seen;
  for (let i = 1; i <= 60 && !(seen?.film < 512); i++) {
    await page.mouse.move(box.x + 150 + 2 * i, box.y + 150);
    seen = await sizes();
  }
  await processor(1);
  assert.ok(seen.film < 512, `a film of ${seen.film} px all the while`);
  assert.equal(seen.lines, seen.css);
  await page.mouse.up();
  await settled(page);
  await sharp(page);
  assert.deepEqual(await sizes(), { ...rest, film: restPixels(rest.lines) });
  assert.deepEqual(errors, []);
  await close();
});

test('a film that is not laid out for a while is drawn on, and is there again', async () => {
  const { page, errors, close } = await open(site);
  const show = (how) => page.evaluate((display) => new Promise((done) => {
    document.getElementById('film-image').style.display = display;
    requestAnimationFrame(() => requestAnimationFrame(done));
  }), how);
  await show('none');
  for (const degrees of ['12', '13']) {
    await page.locator('#turn-oblique-number').fill(degrees);
    await page.locator('#turn-oblique-number').press('Enter');
    await settled(page);
  }
  await show('');
  await sharp(page);
  assert.ok((await page.evaluate(() => document.getElementById('overlay').width)) > 300);
  assert.deepEqual(errors, []);
  await close();
});

test('the wheel enlarges the film and does not turn the C-arm; 0 shows the whole of it', async () => {
  const { page, errors, close } = await open(site);
  await sharp(page);
  const angles = () => page.evaluate(() => ['oblique', 'tilt'].map((key) => document.getElementById(`turn-${key}-number`).value));
  const scale = () => page.evaluate(() => document.getElementById('film-image').getBoundingClientRect().width / document.getElementById('picture').clientWidth);
  const was = await angles();
  await page.locator('#picture').hover();
  await page.mouse.wheel(0, -500);
  await page.waitForFunction(() => document.getElementById('film-image').style.transform !== '');
  assert.ok((await scale()) > 1.5);
  assert.deepEqual(await angles(), was);
  await page.keyboard.press('0');
  assert.ok(Math.abs((await scale()) - 1) < 0.01);
  await page.keyboard.press('+');
  assert.ok((await scale()) > 1.2);
  await page.locator('#picture').dblclick();
  assert.ok(Math.abs((await scale()) - 1) < 0.01);
  assert.deepEqual(errors, []);
  await close();
});

/** Chromium with OpenGL by program: slow, and exact enough to compare. */
const withGraphics = () => chromium.launch({
  executablePath: process.env.CHROMIUM ?? execFileSync('sh', ['-c', 'command -v chromium'], { encoding: 'utf8' }).trim(),
  headless: true,
  args: ['--no-sandbox', '--disable-background-networking', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
});

test('the graphics processor sums what the engine sums, and a lost one leaves the film', async () => {
  const browser = await withGraphics();
  try {
    const { page, errors, close } = await open({ browser, server: site.server }, { path: '?film=gpu' });
    const found = await page.evaluate(async () => {
      const { loadEngine } = await import('./engine/engine-load.js');
      const { gpuFilm } = await import('./film/gpu.js');
      const { TeachingRoom } = await loadEngine(() => {}, {});
      const room = new TeachingRoom('average', 'L4', 'left');
      const gpu = gpuFilm(TeachingRoom.filmTexture(), () => {});
      if (!gpu) return null;
      const weight = room.filmView(512)[16];
      const views = [];
      for (const [oblique, tilt] of [[0, 0], [26, -3], [90, 0]]) {
        room.setOrientation(oblique, tilt);
        const [there, here] = [gpu.sums(room, 'average', 512), room.filmSums(512)];
        let sum = 0;
        let most = 0;
        for (let i = 0; i < here.length; i++) {
          const off = Math.abs(there[i] - here[i]) / weight;
          sum += off;
          most = Math.max(most, off);
        }
        views.push({ mean: sum / here.length, most, somewhere: here.some((v) => v > 1) });
      }
      // The two pictures, in grey.
      const film = (draw) => {
        const pen = Object.assign(document.createElement('canvas'), { width: 512, height: 512 }).getContext('2d');
        draw(pen);
        return pen.getImageData(0, 0, 512, 512).data;
      };
      const a = film((pen) => gpu.draw(room, pen, { who: 'average', boneDark: true, tick: undefined, pixels: 512 }));
      const b = film((pen) => room.drawRadiograph(pen, true, 512));
      // The window is found of fewer pixels there: grey values go together, whatever brightness each has.
      const mean = (list) => list.reduce((sum, v) => sum + v, 0) / list.length;
      const [x, y] = [a, b].map((data) => Array.from({ length: data.length / 4 }, (_, i) => data[4 * i]));
      const [mx, my] = [mean(x), mean(y)];
      const product = (p, q, mp, mq) => mean(p.map((v, i) => (v - mp) * (q[i] - mq)));
      const alike = product(x, y, mx, my) / Math.sqrt(product(x, x, mx, mx) * product(y, y, my, my));
      gpu.end();
      await new Promise((next) => setTimeout(next, 200));
      const after = film((pen) => gpu.draw(room, pen, { who: 'average', boneDark: true, pixels: 512 }));
      return { views, alike, apart: Math.abs(mx - my), lost: after.every((v, i) => i % 4 === 3 || v === 0) };
    });
    assert.ok(found, 'this Chromium has WebGL2 with 32-bit float blending');
    for (const { mean, somewhere } of found.views) {
      assert.ok(somewhere);
      assert.ok(mean <= 1e-3, `${mean} mm`);
    }
    assert.ok(found.alike > 0.999, `${found.alike}`);
    assert.ok(found.apart < 8, `${found.apart} grey values apart`);
    assert.ok(found.lost, 'a lost processor draws nothing by itself');
    // On the page the film goes on without it.
    await sharp(page);
    await page.evaluate(() => {
      const { getContext } = HTMLCanvasElement.prototype;
      HTMLCanvasElement.prototype.getContext = function (kind, ...more) {
        return kind === 'webgl2' ? null : getContext.call(this, kind, ...more);
      };
    });
    const dark = await page.evaluate(() => {
      const canvas = document.getElementById('radiograph');
      return canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data.every((v, i) => i % 4 === 3 || v < 8);
    });
    assert.equal(dark, false);
    assert.deepEqual(errors, []);
    await close();
  } finally {
    await browser.close();
  }
});
