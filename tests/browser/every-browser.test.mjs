// What a learner does from beginning to end: a lesson of views and a whole injection, by keyboard alone. What was handed in replays to
// its own marks in the native engine. `npm run browsers` does these, and the checks named there, in Firefox and WebKit.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { carefulHands, lessonByKeys } from './course-keys.mjs';
import { open, setUp } from './harness.mjs';
import { graded, packer } from './packages.mjs';

const LESSONS = { 'true-ap': 'a lesson of views', 'few-pictures': 'a whole injection' };
let site;
let hands;
let scratch;
before(async () => {
  scratch = packer();
  hands = carefulHands(Object.keys(LESSONS));
  site = await setUp();
});
after(async () => (await site.tearDown(), scratch.remove()));

for (const [id, what] of Object.entries(LESSONS)) {
  test(`${what} by keyboard alone, passed, and verified by the native engine`, async () => {
    const { page, errors, close } = await open(site);
    await page.locator('#activity-lessons').press('Space');
    await page.waitForSelector('.lesson-row');
    const { said, receipt } = await lessonByKeys(page, id, hands.get(id));
    assert.match(said, /: passed\.$/);
    const row = graded(scratch.folder, receipt);
    assert.deepEqual([row.status, row.lesson, row.passed], ['verified', id, true]);
    assert.deepEqual(errors, []);
    await close();
  });
}
