// The whole course by keyboard alone, each lesson to its receipt: `npm run course`, or with the ids of some lessons behind it. It takes
// minutes, so the checks do the lessons of views only (course.test.mjs), and whole injections where they are checked anyway.

import { carefulHands, course, lessonByKeys } from './course-keys.mjs';
import { open, setUp } from './harness.mjs';

const ids = process.argv.length > 2 ? process.argv.slice(2) : await course();
const hands = carefulHands(ids);
const site = await setUp();
const { page, errors } = await open(site);
await page.locator('#activity-lessons').press('Space');
await page.waitForSelector('.lesson-row');
let failed = 0;
for (const id of ids) {
  const began_ms = performance.now();
  const { said } = await lessonByKeys(page, id, hands.get(id)).catch((error) => ({ said: String(error).split('\n')[0] }));
  if (!/: passed\.$/.test(said)) failed += 1;
  console.log(`${id}: ${said} (${Math.round((performance.now() - began_ms) / 1000)} s)`);
}
await site.tearDown();
console.log(`${ids.length - failed} of ${ids.length} lessons passed by keyboard alone, ${errors.length} errors on the console`);
process.exitCode = failed || errors.length ? 1 : 0;
