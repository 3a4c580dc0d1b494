// Lessons of views by keyboard alone, from the list of the course to the receipt. The rest of the course, needle and all, is done by
// `npm run course`; a whole injection by keys is in needle.test.mjs, naming in lesson.test.mjs.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { carefulHands, course, lessonByKeys } from './course-keys.mjs';
import { open, setUp } from './harness.mjs';

const OF_VIEWS = ['true_ap', 'oblique', 'lateral', 'radiation'];

test('every lesson of views, by keyboard alone, to a receipt', async () => {
  const site = await setUp();
  const { page, errors } = await open(site);
  await page.locator('#activity-lessons').press('Space');
  await page.waitForSelector('.lesson-row');
  const ids = await course();
  const steps = await page.evaluate(async (all) => Promise.all(all.map(async (id) => (await (await fetch(`lessons/${id}.json`)).json()).steps)), ids);
  const wanted = ids.filter((_, i) => steps[i].every((step) => OF_VIEWS.includes(step)));
  assert.ok(wanted.length >= 7, `${wanted}`);
  const hands = carefulHands(wanted);
  for (const id of wanted) {
    const { said, receipt } = await lessonByKeys(page, id, hands.get(id));
    assert.match(said, /: passed\.$/, `${id}: ${said}`);
    assert.equal(JSON.parse(receipt).lesson.id, id);
  }
  assert.deepEqual(errors, []);
  await site.tearDown();
});
