// What is taken away: picture, outlines, and the printed result.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { after, before, test } from 'node:test';
import { open, setUp } from './harness.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

const HASH = '#patient=average&level=L4&side=left&start=1&oblique=20&tilt=5';

async function saved(page, id) {
  await page.waitForSelector(`#${id}`, { state: 'attached' });
  await page.click('#menu-button');
  const [file] = await Promise.all([page.waitForEvent('download'), page.click(`#${id}`)]);
  return { name: file.suggestedFilename(), bytes: await readFile(await file.path()) };
}

test('PNG: the film pixel for pixel with a credit below; SVG: well formed, its lines where the engine paints them; print: score, no controls', async () => {
  // Where the film on the page has the detector's own pixels.
  const { page, errors, close } = await open(site, { hash: HASH, options: { viewport: { width: 1280, height: 600 } } });
  await page.uncheck('#outlines');
  const png = await saved(page, 'save-png');
  assert.equal(png.name, 'downbeam-average-L4-left-oblique-20-left-tilt-5-cephalad.png');
  const seen = await page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = Object.assign(document.createElement('canvas'), { width: image.width, height: image.height });
    const pen = canvas.getContext('2d');
    pen.drawImage(image, 0, 0);
    const film = document.getElementById('radiograph').getContext('2d').getImageData(0, 0, 512, 512).data;
    // The middle of the film, away from the letters at its edges.
    let wrong = 0;
    const data = pen.getImageData(0, 0, 1024, 1024).data;
    for (let y = 100; y < 400; y++) for (let x = 100; x < 400; x++) if (data[(2 * y * 1024 + 2 * x) * 4] !== film[(y * 512 + x) * 4]) wrong += 1;
    const foot = pen.getImageData(0, 1058, image.width, 30).data;
    return { size: [image.width, image.height], wrong, dark: foot.filter((v, i) => i % 4 === 0 && v < 100).length };
  }, png.bytes.toString('base64'));
  assert.deepEqual(seen.size, [1024, 1088]);
  assert.equal(seen.wrong, 0);
  assert.ok(seen.dark > 300, 'the credit is written');

  const svg = await saved(page, 'save-svg');
  assert.match(svg.name, /oblique-20-left-tilt-5-cephalad\.svg$/);
  const drawn = await page.evaluate(async (text) => {
    const drawing = new DOMParser().parseFromString(text, 'image/svg+xml');
    if (drawing.querySelector('parsererror')) return null;
    const { TeachingRoom } = await import('./pkg/downbeam.js');
    const room = new TeachingRoom('average', 'L4', 'left');
    room.setOrientation(20, 5);
    const size = 2048;
    const per = size / (512 * 0.4);
    const boxes = {};
    for (const kind of ['context', 'target', 'posterior', 'below']) {
      const at = [...drawing.querySelector(`.${kind} path`).getAttribute('d').matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])]);
      const path = [0, 1].flatMap((i) => [Math.min(...at.map((p) => p[i])), Math.max(...at.map((p) => p[i]))]);
      const canvas = Object.assign(document.createElement('canvas'), { width: size, height: size });
      const pen = canvas.getContext('2d');
      const line = (colour) => ({ colour, width_px: 1, dash_px: [] });
      const style = { canvas_px: size, ...Object.fromEntries(['halo', 'context', 'target', 'posterior', 'below'].map((k) => [k, line(k === kind ? '#000' : 'transparent')])) };
      room.drawOutlines(pen, style);
      const { data } = pen.getImageData(0, 0, size, size);
      const ink = [Infinity, -Infinity, Infinity, -Infinity];
      for (let y = 0; y < size; y++) for (let x = 0; x < size; x++) if (data[(y * size + x) * 4 + 3] > 40) {
        ink[0] = Math.min(ink[0], x); ink[1] = Math.max(ink[1], x + 1); ink[2] = Math.min(ink[2], y); ink[3] = Math.max(ink[3], y + 1);
      }
      boxes[kind] = { path, ink: ink.map((v) => v / per - 102.4) };
    }
    return { boxes, title: drawing.querySelector('title').textContent, credit: drawing.querySelector('#credit').textContent, box: drawing.documentElement.getAttribute('viewBox') };
  }, svg.bytes.toString());
  assert.ok(drawn, 'well formed');
  // Parsed in the page, the drawing's own style meets the page's policy; nothing else may.
  assert.deepEqual(errors.filter((e) => !e.includes('inline style')), []);
  errors.length = 0;
  assert.equal(drawn.box, '-102.4 -102.4 204.8 217.8');
  assert.match(drawn.credit, /Downbeam, teaching model, not for clinical use/);
  for (const [kind, { path, ink }] of Object.entries(drawn.boxes)) path.forEach((v, i) => assert.ok(Math.abs(v - ink[i]) < 0.25, `${kind} ${v} ${ink[i]}`));

  await page.emulateMedia({ media: 'print' });
  assert.equal(await page.locator('button:visible, input:visible, select:visible, summary:visible').count(), 0);
  for (const what of ['#check-total', '#print-head', '#radiograph', '.caution']) assert.ok(await page.locator(what).isVisible(), what);
  assert.match(await page.textContent('#print-head'), /L4 left.*oblique 20° to the patient’s left/);
  assert.deepEqual(await page.locator('#checks .segment:visible').allTextContents(), ['True\u00a0AP'], 'which view the score is of');
  // A4 within its margins, CSS px: what is wider would shrink the whole print.
  await page.setViewportSize({ width: 688, height: 1018 });
  assert.deepEqual(await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.scrollHeight]), [688, 1018], 'one page');
  assert.deepEqual(errors, []);
  await close();
});

test('by exposure there is nothing to save before a picture: one sentence says so', async () => {
  const { page, close } = await open(site, { hash: `${HASH}&exposures=on` });
  await page.waitForSelector('#save-svg', { state: 'attached' });
  await page.click('#menu-button');
  await page.click('#save-svg');
  assert.equal(await page.textContent('#notice-text'), 'There is no picture to save yet: take an exposure first.');
  await close();
});
