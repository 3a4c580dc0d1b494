// How the page looks, cell by cell: a screenshot brought down to one cell for 8 × 8 CSS px, so that a part that has moved, vanished or
// changed colour shows, and the smoothing of a letter does not. The looks that were opened and found good are in looks/.

import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { ROOT, failed, open, settled } from './harness.mjs';
import { drawn, press } from './keyboard.mjs';
import { deep } from './states.mjs';

export const WIDTHS = [[1280, 800], [768, 1024], [320, 640]];
export const THEMES = ['dark', 'light'];
/** A side of a cell, CSS px, and how much of a long page is looked at. */
const CELL = 8;
const LONGEST = 2400;
/** A cell has changed when a colour of it differs by more than this, of 255. */
const CHANGED = 40;
const FOLDER = fileURLToPath(new URL('./looks/', import.meta.url));

const L4 = '#patient=average&level=L4&side=left&start=1&oblique=-9&tilt=12';
const NEEDLE = '#injection=on&patient=average&level=L4&side=left';

/** The states looked at: where each begins and what is done there. */
export const STATES = [
  { name: 'views', hash: L4 },
  { name: 'checked', hash: `${L4}&self-test=on`, act: (page) => page.click('#check') },
  { name: 'menu', hash: L4, act: (page) => page.click('#menu-button') },
  { name: 'tour', hash: L4, act: async (page) => { await page.waitForSelector('#welcome-tour'); await page.click('#welcome-tour'); await page.waitForSelector('#tour:not([hidden])'); } },
  { name: 'keys', hash: L4, act: async (page) => { await page.click('#menu-button'); await page.click('#keys-open'); await page.waitForSelector('#keymap[open]'); } },
  { name: 'compared', hash: L4, act: async (page) => { await page.waitForSelector('#compare', { state: 'attached' }); await page.click('#compare'); await page.waitForSelector('.compare-bar'); } },
  { name: 'exposed', hash: `${L4}&exposures=on`, act: (page) => page.click('#spot') },
  { name: 'injection', hash: NEEDLE, act: async (page) => { await deep(page); await press(page, 'l'); } },
  { name: 'lessons', hash: L4, act: async (page) => { await page.check('#activity-lessons'); await page.waitForSelector('#lesson-body a, #lesson-body button'); } },
  { name: 'failed', hash: L4, broken: true },
  { name: 'check', path: 'check.html', away: true, act: (page) => page.waitForFunction(() => document.documentElement.dataset.settled === 'yes') },
  { name: 'author', path: 'author.html', away: true, act: (page) => page.waitForFunction(() => document.getElementById('preview-state').hidden && document.getElementById('preview-caption').textContent !== '') },
];

/** Opens a state. The letters are of one typeface everywhere (tests/run installs it), so that lines break alike; the caution stands at the foot. */
export async function reach(site, state) {
  const opened = await open(site, {
    hash: state.hash,
    path: state.path,
    ready: !state.broken && !state.away,
    options: { bypassCSP: true, reducedMotion: 'reduce' },
    prepare: (page) => state.broken && page.route('**/*.wasm', (route) => route.fulfill({ status: 404 })),
  });
  const { page } = opened;
  if (state.broken) await failed(page);
  await page.addStyleTag({ content: ':root { --downbeam-font: "DejaVu Sans"; } * { caret-color: transparent !important; } .caution { position: static !important; }' });
  await state.act?.(page);
  return opened;
}

/** A screenshot of the page at a width and in a theme, PNG. */
export async function shot(page, [width, height], theme, state) {
  await page.setViewportSize({ width, height });
  await page.evaluate((name) => { document.documentElement.dataset.theme = name; scrollTo(0, 0); }, theme);
  if (!state.broken && !state.away) await settled(page);
  await drawn(page);
  const whole = await page.evaluate(() => document.documentElement.scrollHeight);
  return page.screenshot({ fullPage: true, animations: 'disabled', clip: { x: 0, y: 0, width, height: Math.min(Math.max(whole, height), LONGEST) } });
}

/** In the browser, which reads PNG by itself: brings a picture down to cells. Returns a PNG of them. */
export async function cells(blank, png) {
  const url = await blank.evaluate(async ({ data, cell }) => {
    const image = await createImageBitmap(await (await fetch(data)).blob());
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.width, image.height].map((side) => Math.round(side / cell));
    const pen = canvas.getContext('2d');
    pen.imageSmoothingQuality = 'high';
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    return canvas.toDataURL('image/png');
  }, { data: `data:image/png;base64,${png.toString('base64')}`, cell: CELL });
  return Buffer.from(url.split(',')[1], 'base64');
}

/** How two pictures of cells differ: share of cells changed, and the first of them; `null` in `share` when their sizes differ. */
export function difference(blank, was, is) {
  return blank.evaluate(async ({ pair, changed }) => {
    const [a, b] = await Promise.all(pair.map(async (data) => {
      const image = await createImageBitmap(await (await fetch(data)).blob());
      const pen = new OffscreenCanvas(image.width, image.height).getContext('2d');
      pen.drawImage(image, 0, 0);
      return pen.getImageData(0, 0, image.width, image.height);
    }));
    if (a.width !== b.width) return { share: null, said: `${b.width} cells wide instead of ${a.width}` };
    // A line more or less of text at the foot is no other look; what is beside it is compared.
    const rows = Math.min(a.height, b.height);
    const off = [];
    for (let i = 0; i < rows * a.width; i++) {
      if ([0, 1, 2].some((c) => Math.abs(a.data[4 * i + c] - b.data[4 * i + c]) > changed)) off.push([i % a.width, Math.floor(i / a.width)]);
    }
    const lost = Math.abs(a.height - b.height) * a.width;
    const share = (off.length + lost) / (Math.max(a.height, b.height) * a.width);
    return { share, said: `${off.length} cells of ${rows * a.width} changed, first at ${off[0]}; ${b.height} rows instead of ${a.height}` };
  }, { pair: [was, is].map((png) => `data:image/png;base64,${png.toString('base64')}`), changed: CHANGED });
}

export const look = (name, width, theme) => `${FOLDER}${name}-${width}-${theme}.png`;
export const kept = (name, width, theme) => readFile(look(name, width, theme));

/** Texts that run out of the box they stand in, to the right or left, at the widths that the page is made for. */
export async function overruns(page) {
  const found = [];
  for (const [width, height] of WIDTHS) {
    await page.setViewportSize({ width, height });
    await drawn(page);
    const texts = await page.evaluate(() => {
      const out = [];
      const all = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node; (node = all.nextNode()); ) {
        const element = node.parentElement;
        if (!node.data.trim() || element.closest('.unseen, .nudge-word, svg, option, [hidden]') || !element.checkVisibility()) continue;
        // Only for screen readers at this width.
        if (getComputedStyle(element).clipPath === 'inset(50%)') continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        const text = range.getBoundingClientRect();
        for (let around = element; text.width && around !== document.body; around = around.parentElement) {
          const style = getComputedStyle(around);
          if (['inline', 'contents'].includes(style.display)) continue;
          // What scrolls may be wider than it shows.
          if (['auto', 'scroll'].includes(style.overflowX)) break;
          const box = around.getBoundingClientRect();
          if (text.right > box.right + 1 || text.left < box.left - 1) {
            out.push(`${node.data.trim().slice(0, 40)} in ${around.tagName} ${around.className}`);
            break;
          }
          // It stands on the page and not in what is around it.
          if (['absolute', 'fixed'].includes(style.position)) break;
        }
      }
      return out;
    });
    found.push(...texts.map((text) => `${width}: ${text}`));
  }
  return found;
}

/** `node looks.mjs [state…]` keeps the looks of now. Open them before they are committed: they say from then on what is right. */
if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { setUp } = await import('./harness.mjs');
  const only = process.argv.slice(2);
  await mkdir(FOLDER, { recursive: true });
  const site = await setUp();
  const blank = await site.browser.newPage();
  for (const state of STATES.filter(({ name }) => only.length === 0 || only.includes(name))) {
    const { page, close } = await reach(site, state);
    for (const size of WIDTHS) {
      for (const theme of THEMES) {
        const png = await shot(page, size, theme, state);
        await writeFile(look(state.name, size[0], theme), await cells(blank, png));
        if (process.env.WHOLE) await writeFile(`${process.env.WHOLE}/${state.name}-${size[0]}-${theme}.png`, png);
      }
    }
    console.log(state.name);
    await close();
  }
  await site.tearDown();
}
