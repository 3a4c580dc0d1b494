// The ways to the states of the page that are worth a look, as a learner goes them.

import { align, mark, press, steerTo, turnTo, use } from './keyboard.mjs';

/** Shutters a little in, one spot picture, then the C-arm turned on and the shutters further in. */
export async function exposed(page) {
  await page.locator('#collimation-width').press('Home');
  for (let i = 0; i < 10; i++) await page.locator('#collimation-width').press('ArrowRight');
  await page.click('#spot');
  await page.locator('#turn-oblique').press('PageUp');
  for (let i = 0; i < 3; i++) await page.locator('#collimation-width').press('ArrowLeft');
  await page.evaluate(() => scrollTo(0, 0));
}

/** Views kept, target marked, needle on the skin. */
export async function atTheSkin(page, spots = false) {
  await turnTo(page, { oblique: 0, tilt: -2.1 });
  await use(page, 'keep-true_ap');
  await turnTo(page, { oblique: 23.8, tilt: -2 });
  if (spots) await page.click('#spot');
  await use(page, 'keep-oblique');
  await mark(page, [-15.4, -5.6]);
  await use(page, 'place');
  if (spots) await page.click('#spot');
  await page.evaluate(() => scrollTo(0, 0));
}

export async function deep(page) {
  await atTheSkin(page);
  await align(page);
  await steerTo(page, 55);
  await page.evaluate(() => scrollTo(0, 0));
}

export async function contrast(page) {
  await deep(page);
  await steerTo(page, 67.5);
  await press(page, 'p');
  await use(page, 'aspirate');
  await use(page, 'inject-50');
  await page.evaluate(() => scrollTo(0, 0));
}

export async function scored(page) {
  await contrast(page);
  await use(page, 'pattern', 'ArrowDown');
  await use(page, 'name');
  await use(page, 'finish');
  await page.evaluate(() => scrollTo(0, 0));
}
