// The page to print at the end of a lesson.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { axeClean, lessonStands, open, setUp, typeAngle } from './harness.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

test('what was done stands on one sheet, with name and date as given, and nothing of them is kept', async () => {
  const { page, errors, close } = await open(site, { path: 'index.html#open=true-ap' });
  await page.waitForSelector('#lesson-begin');
  await page.fill('#lesson-code', 'A7');
  await page.click('#lesson-begin');
  await lessonStands(page);
  const best = await page.evaluate(async () => {
    const { TeachingRoom } = await import('./pkg/downbeam.js');
    const room = new TeachingRoom('average', 'L4', 'left');
    const found = room.report().views.find((view) => view.view === 'true_ap').best;
    room.free();
    return found;
  });
  await typeAngle(page, 'oblique', best.oblique.toFixed(1));
  await typeAngle(page, 'tilt', best.tilt.toFixed(1));
  await page.click('#keep-true_ap');
  await page.click('#finish');
  await page.waitForSelector('#lesson-receipt');
  await page.click('#completion-open');
  await axeClean(page);
  // The browser's own printing is not there without a screen.
  await page.evaluate(() => (globalThis.print = () => (globalThis.printed = (globalThis.printed ?? 0) + 1)));
  await page.fill('#completion-name', 'Zoë Łuczak');
  await page.fill('#completion-date', '2026-03-09');
  await page.click('#completion-print');
  assert.equal(await page.evaluate(() => printed), 1);
  await page.emulateMedia({ media: 'print' });
  const sheet = page.locator('#completion-sheet');
  assert.ok(await sheet.isVisible());
  const text = await sheet.innerText();
  for (const wanted of ['Lesson passed', 'Zoë Łuczak', 'A7', 'A true AP', 'March 9, 2026', 'Average, L4 left', '100 of 100', 'Every step done', 'Downbeam 0.1.0', 'Practice on a computed model', 'licensed practice']) assert.ok(text.includes(wanted), `${wanted}: ${text}`);
  assert.ok(await page.locator('.film').isHidden() && await page.locator('#lesson').isHidden(), 'nothing else is printed');
  assert.equal(await sheet.locator('[id]').count(), 0, 'no name of the page stands on it again');
  // To look at: KEEP=sheet.png node --test completion.test.mjs
  if (process.env.KEEP) await page.screenshot({ path: process.env.KEEP, fullPage: true });
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  await page.emulateMedia({ media: 'screen' });
  assert.equal(await sheet.count(), 0);
  const kept = await page.evaluate(() => JSON.stringify({ ...localStorage, ...sessionStorage }));
  assert.ok(!kept.includes('Zoë') && !kept.includes('2026-03-09'));
  assert.deepEqual(errors, []);
  await close();
});
