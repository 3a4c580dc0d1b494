// Screenshots of the page at the widths that matter, into shots/ (not kept in git): `npm run shots`.

import { mkdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { failed, open, setUp, settled, useTheme, openSheet } from './harness.mjs';
import { mark, press, turnTo, use } from './keyboard.mjs';
import { atTheSkin, contrast, deep, exposed, scored } from './states.mjs';

const OUT = fileURLToPath(new URL('./shots/', import.meta.url));
const L4 = '#patient=average&level=L4&side=left&start=1&oblique=-9&tilt=12';
const NEEDLE = '#injection=on&patient=average&level=L4&side=left';
const SHOTS = [
  { name: 'desk-1280', hash: L4, width: 1280, height: 800 },
  { name: 'desk-1280-light', hash: L4, width: 1280, height: 800, theme: 'light' },
  { name: 'desk-1280-names', hash: '#level=L4&side=left&oblique=25&tilt=6', width: 1280, height: 800, act: (page) => page.check('#labels') },
  { name: 'desk-1280-white', hash: '#level=L5&side=right&oblique=-28&tilt=10', width: 1280, height: 800, act: (page) => page.uncheck('#bone-dark') },
  { name: 'desk-1280-self-test', hash: `${L4}&self-test=on`, width: 1280, height: 800 },
  { name: 'desk-1280-forced', hash: L4, width: 1280, height: 800, forcedColors: 'active' },
  { name: 'desk-1280-sacrum', hash: '#level=S1&side=left', width: 1280, height: 900, act: (page) => page.check('#view-oblique').then(() => page.click('#best')) },
  { name: 'desk-1280-lateral', hash: '#level=L4&side=left', width: 1280, height: 900, act: (page) => page.check('#view-lateral').then(() => page.click('#best')) },
  { name: 'desk-1280-checked', hash: `${L4}&self-test=on`, width: 1280, height: 900, act: (page) => page.click('#check').then(() => openSheet(page, 'picture')) },
  { name: 'desk-1680', hash: L4, width: 1680, height: 1000 },
  { name: 'tablet-768', hash: L4, width: 768, height: 1024 },
  { name: 'phone-320', hash: L4, width: 320, height: 640 },
  { name: 'phone-320-names', hash: '#level=L4&side=left&oblique=25&tilt=6', width: 320, height: 640, act: (page) => page.check('#labels') },
  { name: 'phone-390', hash: L4, width: 390, height: 844 },
  { name: 'exposed-1280', hash: `${L4}&exposures=on`, width: 1280, height: 800, act: exposed },
  { name: 'exposed-1280-tall', hash: `${L4}&exposures=on`, width: 1280, height: 1500, act: exposed },
  { name: 'exposed-1280-light', hash: `${L4}&exposures=on`, width: 1280, height: 1250, theme: 'light', act: (page) => page.selectOption('#magnification', '2').then(() => exposed(page)) },
  { name: 'exposed-1280-forced', hash: `${L4}&exposures=on`, width: 1280, height: 1250, forcedColors: 'active', act: exposed },
  { name: 'exposed-1280-first', hash: `${L4}&exposures=on`, width: 1280, height: 800 },
  { name: 'exposed-320', hash: `${L4}&exposures=on`, width: 320, height: 640, act: exposed },
  { name: 'exposed-768', hash: `${L4}&exposures=on`, width: 768, height: 1024, act: exposed },
  { name: 'needle-1280-skin', hash: NEEDLE, width: 1280, height: 800, act: (page) => atTheSkin(page) },
  { name: 'needle-1280-deep', hash: NEEDLE, width: 1280, height: 800, act: deep },
  { name: 'needle-1280-lateral', hash: NEEDLE, width: 1280, height: 800, act: (page) => deep(page).then(() => press(page, 'l')) },
  { name: 'needle-1280-contrast', hash: NEEDLE, width: 1280, height: 800, act: contrast },
  { name: 'needle-1280-scored', hash: NEEDLE, width: 1280, height: 1400, act: scored },
  { name: 'needle-1280-light', hash: NEEDLE, width: 1280, height: 800, theme: 'light', act: (page) => page.check('#side-left').then(() => deep(page)) },
  { name: 'needle-1280-forced', hash: NEEDLE, width: 1280, height: 800, forcedColors: 'active', act: deep },
  { name: 'needle-1280-self-test', hash: `${NEEDLE}&self-test=on`, width: 1280, height: 800, act: deep },
  { name: 'needle-1280-exposed', hash: `${NEEDLE}&exposures=on`, width: 1280, height: 1300, act: (page) => atTheSkin(page, true) },
  { name: 'needle-1280-place', hash: NEEDLE, width: 1280, height: 800, act: (page) => turnTo(page, { oblique: 23.8, tilt: -2 }).then(() => page.click('#stage-mark .stage-dot')).then(() => use(page, 'show-area', 'Space')).then(() => mark(page, [-15.4, -5.6])).then(() => page.click('#stage-place .stage-dot')).then(() => openSheet(page, 'needle')).then(() => use(page, 'mark')).then(() => page.evaluate(() => scrollTo(0, 0))) },
  { name: 'needle-1680', hash: NEEDLE, width: 1680, height: 1000, act: deep },
  { name: 'needle-1100', hash: NEEDLE, width: 1100, height: 800, act: deep },
  { name: 'needle-768', hash: NEEDLE, width: 768, height: 1024, act: scored },
  { name: 'needle-320', hash: NEEDLE, width: 320, height: 640, act: scored },
  { name: 'needle-390', hash: NEEDLE, width: 390, height: 844, act: deep },
  { name: 'failed-1280', hash: L4, width: 1280, height: 800, broken: true },
  { name: 'failed-320', hash: L4, width: 320, height: 640, broken: true },
];

const only = process.argv.slice(2);
await mkdir(OUT, { recursive: true });
const site = await setUp();
for (const shot of SHOTS.filter((s) => only.length === 0 || only.includes(s.name))) {
  const { page, errors, close } = await open(site, {
    hash: shot.hash,
    options: { viewport: { width: shot.width, height: shot.height }, forcedColors: shot.forcedColors ?? 'none', deviceScaleFactor: shot.width < 500 ? 2 : 1 },
    ready: !shot.broken,
    prepare: (p) => shot.broken && p.route('**/*.wasm', (route) => route.fulfill({ status: 404 })),
  });
  if (shot.broken) await failed(page);
  if (shot.theme) await useTheme(page, shot.theme);
  await shot.act?.(page);
  if (!shot.broken) await settled(page);
  await page.waitForTimeout(150);
  // The screen as it opens, and on narrow screens the whole page below it.
  await page.screenshot({ path: `${OUT}${shot.name}.png` });
  if (shot.width < 1000) {
    await page.evaluate(() => (document.querySelector('.caution').style.position = 'static'));
    await page.screenshot({ path: `${OUT}${shot.name}-whole.png`, fullPage: true });
  }
  console.log(shot.name, errors.length ? errors : '');
  await close();
}
await site.tearDown();
