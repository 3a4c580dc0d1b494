// The main states of the page in every browser at three widths, a sheet a state (a row a width, a column a browser), into shots/side-by-side
// (not kept in git), and how many cells (looks.mjs) differ from Chromium's: `npm run side-by-side [-- STATE…]`. Open them: they should differ
// by typeface only.

import { mkdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { contactSheet } from './contact-sheet.mjs';
import { BROWSERS, failed, launch, lessonStands, open, serve, settled } from './harness.mjs';
import { drawn } from './keyboard.mjs';
import { cells, difference, STATES } from './looks.mjs';
import { contrast, scored } from './states.mjs';

const OUT = fileURLToPath(new URL('./shots/side-by-side/', import.meta.url));
const SIZES = [[1280, 800], [768, 1024], [390, 844]];
const NEEDLE = '#injection=on&patient=average&level=L4&side=left';
const MORE = [
  { name: 'focus', stay: true, hash: '#patient=average&level=L4&side=left', act: (page) => page.press('#turn-oblique', 'ArrowRight') },
  { name: 'model', path: 'model.html', away: true, act: (page) => page.waitForSelector('.plot, figure svg, figure canvas') },
  { name: 'lesson', act: (page) => viewsLesson(page) },
  { name: 'practice', path: 'practice.html', away: true, act: (page) => firstQuestion(page) },
  { name: 'contrast', hash: NEEDLE, act: contrast },
  { name: 'result', hash: NEEDLE, act: scored },
];

const only = process.argv.slice(2);
await mkdir(OUT, { recursive: true });
const server = await serve();
// Reads and joins pictures.
const browser = await launch({ kind: 'chromium' });
const blank = await browser.newPage();
const shots = new Map();
for (const kind of BROWSERS) {
  const site = { server, browser: await launch({ kind }) };
  for (const state of [...STATES, ...MORE].filter(({ name }) => only.length === 0 || only.includes(name))) {
    for (const size of SIZES) {
      const name = `${state.name}-${size[0]}`;
      const png = await shot(site, state, size).catch((error) => console.log(`${name} in ${kind}: ${String(error).split('\n')[0]}`));
      if (png) shots.set(name, { ...shots.get(name), [kind]: png });
    }
  }
  await site.browser.close();
}

const states = new Map();
for (const [name, pictures] of shots) {
  const state = name.replace(/-\d+$/, '');
  states.set(state, [...(states.get(state) ?? []), { name, pictures }]);
}
for (const [state, rows] of states) {
  await writeFile(`${OUT}${state}.png`, await contactSheet(blank, rows.map(({ name, pictures }) => Object.entries(pictures).map(([kind, png]) => [`${kind} · ${name}`, png]))));
}
for (const [name, pictures] of shots) {
  const small = {};
  for (const [kind, png] of Object.entries(pictures)) small[kind] = await cells(blank, png);
  const shares = [];
  for (const kind of BROWSERS.slice(1)) if (small[kind] && small.chromium) shares.push(`${kind} ${(100 * (await difference(blank, small.chromium, small[kind])).share).toFixed(1)} %`);
  console.log(`${name}: cells unlike Chromium's: ${shares.join(', ')}`);
}
await browser.close();
await server.close();

/** The window of a state at a size, in the same typeface everywhere. */
async function shot(site, state, [width, height]) {
  const { page, close } = await open(site, {
    hash: state.hash,
    path: state.path,
    ready: !state.broken && !state.away,
    options: { viewport: { width, height }, deviceScaleFactor: 1 },
    prepare: (p) => state.broken && p.route('**/*.wasm', (route) => route.fulfill({ status: 404 })),
  });
  try {
    if (state.broken) await failed(page);
    await page.evaluate((text) => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(text);
      document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    }, ':root { --downbeam-font: "DejaVu Sans"; } * { caret-color: transparent !important; }');
    await state.act?.(page);
    // Each driver scrolls in its own way to what it presses.
    await page.evaluate((stay) => {
      document.documentElement.dataset.theme = 'dark';
      if (!stay) scrollTo(0, 0);
    }, Boolean(state.stay));
    if (!state.broken && !state.away) await settled(page);
    await drawn(page);
    // Terms are dotted once the words have been still.
    await page.waitForTimeout(500);
    return await cropped(await page.screenshot(), width, height);
  } finally {
    await close();
  }
}

/** The page's own part of a picture: a narrow page stands at the upper left of a wider window. */
async function cropped(png, width, height) {
  const url = await blank.evaluate(async ({ data, size }) => {
    const image = await createImageBitmap(await (await fetch(data)).blob());
    const canvas = Object.assign(document.createElement('canvas'), { width: size[0], height: size[1] });
    canvas.getContext('2d').drawImage(image, 0, 0);
    return canvas.toDataURL('image/png');
  }, { data: `data:image/png;base64,${png.toString('base64')}`, size: [width, height] });
  return Buffer.from(url.split(',')[1], 'base64');
}

/** A lesson of views, begun. */
async function viewsLesson(page) {
  await page.locator('#activity-lessons').press('Space');
  await page.waitForSelector('#lesson-true-ap');
  await page.locator('#lesson-true-ap').press('Enter');
  await page.waitForSelector('#lesson-begin');
  await page.fill('#lesson-code', 'anna').catch(() => {});
  await page.locator('#lesson-begin').press('Enter');
  await lessonStands(page);
}

/** Practice at its first question, the same in every browser: the seed is fixed. */
async function firstQuestion(page) {
  await page.evaluate(() => {
    const draw = crypto.getRandomValues.bind(crypto);
    crypto.getRandomValues = (list) => (list instanceof Uint32Array ? list.fill(7) : draw(list));
  });
  await page.waitForSelector('#begin:not([disabled])');
  await page.click('#begin');
  await page.waitForSelector('#film[data-ready=yes]');
}
