// The main states of the page in every browser at three widths, side by side, into shots/side-by-side (not kept in git), and how many
// cells (looks.mjs) differ from Chromium's: `npm run side-by-side [-- STATE…]`. Open them: they should differ by typeface only.

import { mkdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { BROWSERS, failed, launch, open, serve, settled } from './harness.mjs';
import { drawn } from './keyboard.mjs';
import { cells, difference, STATES } from './looks.mjs';

const OUT = fileURLToPath(new URL('./shots/side-by-side/', import.meta.url));
const SIZES = [[1280, 800], [768, 1024], [390, 844]];
const MORE = [
  { name: 'focus', stay: true, hash: '#patient=average&level=L4&side=left', act: (page) => page.press('#turn-oblique', 'ArrowRight') },
  { name: 'model', path: 'model.html', away: true, act: (page) => page.waitForSelector('.plot, figure svg, figure canvas') },
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
      const png = await taken(site, state, size).catch((error) => console.log(`${name} in ${kind}: ${String(error).split('\n')[0]}`));
      if (png) shots.set(name, { ...shots.get(name), [kind]: png });
    }
  }
  await site.browser.close();
}

for (const [name, pictures] of shots) {
  await writeFile(`${OUT}${name}.png`, await beside(pictures));
  const small = {};
  for (const [kind, png] of Object.entries(pictures)) small[kind] = await cells(blank, png);
  const shares = [];
  for (const kind of BROWSERS.slice(1)) if (small[kind] && small.chromium) shares.push(`${kind} ${(100 * (await difference(blank, small.chromium, small[kind])).share).toFixed(1)} %`);
  console.log(`${name}: cells unlike Chromium's: ${shares.join(', ')}`);
}
await browser.close();
await server.close();

/** The window of a state at a size, in the same typeface everywhere. */
async function taken(site, state, [width, height]) {
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
    await page.waitForTimeout(150);
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

/** Pictures beside each other under their names. */
async function beside(pictures) {
  const columns = Object.entries(pictures).map(([kind, png]) => `<figure style="margin:0"><figcaption>${kind}</figcaption><img src="data:image/png;base64,${png.toString('base64')}"></figure>`);
  await blank.setViewportSize({ width: 800, height: 600 });
  await blank.setContent(`<body style="margin:8px;font:16px sans-serif;background:#fff"><div id="row" style="display:flex;gap:8px;width:max-content">${columns.join('')}</div>`);
  return blank.locator('#row').screenshot();
}
