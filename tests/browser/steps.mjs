// Each step of the views, of an injection and of the lesson that brings the target to the middle, at the six sizes that the page is made for
// and in both themes, a sheet a step (a row a theme), into shots/steps (not kept in git): `npm run steps [-- views|injection|middle]`.

import { mkdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { contactSheet } from './contact-sheet.mjs';
import { lessonStands, open, setUp, useTheme } from './harness.mjs';
import { align, drawn, mark, press, steerTo, turnTo, use } from './keyboard.mjs';

const OUT = fileURLToPath(new URL('./shots/steps/', import.meta.url));
const SIZES = [[1440, 900], [1280, 800], [1024, 768], [768, 1024], [390, 844], [320, 640]];
const THEMES = ['dark', 'light'];

/** An address, and what is done there: a step after the other, each with the name of its sheet. */
const WAYS = {
  views: {
    hash: '#patient=average&level=L4&side=left&start=1&oblique=-9&tilt=12',
    steps: [
      ['1-asked', async () => {}],
      ['2-answered', (page) => page.click('#way-1')],
      ['3-square', (page) => turnTo(page, { oblique: 0, tilt: 6 })],
      ['4-oblique', (page) => turnTo(page, { oblique: 0, tilt: -2.1 })],
      ['5-done', (page) => turnTo(page, { oblique: 23.8, tilt: -2 })],
    ],
  },
  injection: {
    hash: '#injection=on&patient=average&level=L4&side=left',
    steps: [
      ['1-true-ap', (page) => turnTo(page, { oblique: 3, tilt: -2.1 })],
      ['2-oblique', async (page) => {
        await turnTo(page, { oblique: 0, tilt: -2.1 });
        await use(page, 'keep-true_ap');
        await turnTo(page, { oblique: 14, tilt: -2 });
      }],
      ['3-mark', async (page) => {
        await turnTo(page, { oblique: 23.8, tilt: -2 });
        await use(page, 'keep-oblique');
      }],
      ['4-place', (page) => mark(page, [-15.4, -5.6])],
      ['5-hub', (page) => use(page, 'place')],
      ['6-steer', (page) => align(page).then(() => steerTo(page, 20))],
      ['7-depth', (page) => steerTo(page, 55)],
      ['8-contrast', async (page) => {
        await steerTo(page, 67.5);
        await press(page, 'p');
        await use(page, 'aspirate');
        await use(page, 'inject-50');
      }],
      ['9-finish', async (page) => {
        await use(page, 'pattern', 'ArrowDown');
        await use(page, 'name');
      }],
      ['10-result', (page) => use(page, 'finish')],
    ],
  },
  middle: {
    hash: '#open=target-in-the-middle',
    away: true,
    steps: [
      ['1-before', (page) => page.waitForSelector('#lesson-begin')],
      ['2-middle', (page) => page.click('#lesson-begin').then(() => lessonStands(page))],
    ],
  },
};

const only = process.argv.slice(2);
await mkdir(OUT, { recursive: true });
const site = await setUp();
const blank = await site.browser.newPage();
for (const [way, { hash, away, steps }] of Object.entries(WAYS).filter(([name]) => only.length === 0 || only.includes(name))) {
  const { page, close } = await open(site, { hash, ready: !away, options: { viewport: { width: 1280, height: 800 }, deviceScaleFactor: 1 } });
  for (const [name, act] of steps) {
    await act(page);
    const rows = [];
    for (const theme of THEMES) {
      await page.setViewportSize({ width: 1280, height: 800 });
      await useTheme(page, theme);
      const row = [];
      for (const [width, height] of SIZES) {
        await page.setViewportSize({ width, height });
        await page.evaluate(() => scrollTo(0, 0));
        await drawn(page);
        await page.waitForTimeout(150);
        row.push([`${width} × ${height}`, await page.screenshot()]);
      }
      rows.push(row);
    }
    await page.setViewportSize({ width: 1280, height: 800 });
    await writeFile(`${OUT}${way}-${name}.png`, await contactSheet(blank, rows, 0.5));
    console.log(`${way}-${name}`);
  }
  await close();
}
await site.tearDown();
