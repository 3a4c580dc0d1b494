// The whole course by mouse alone, from the list to each result, without a closed step being opened by hand: what the next action needs is
// in sight because the step before it has ended by itself.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { carefulHands, course } from './course-keys.mjs';
import { open, setUp } from './harness.mjs';
import { lessonByMouse } from './mouse.mjs';

test('every lesson by mouse alone: each step ends by itself and the next one opens', async () => {
  const ids = process.env.LESSONS?.split(',') ?? (await course());
  const hands = carefulHands(ids);
  const site = await setUp();
  const { page, errors } = await open(site);
  await page.click('label[for="activity-lessons"]');
  await page.waitForSelector('.lesson-row');
  const wrong = [];
  for (const id of ids) {
    const { said, failed } = await lessonByMouse(page, id, hands.get(id)).catch((error) => ({ said: String(error), failed: [] }));
    if (/: passed\.$/.test(said)) continue;
    wrong.push(`${id}: ${said} ${failed.join(' ')}`);
    await page.goto('about:blank');
    await page.goto(`${site.server.address}#`);
    await page.waitForSelector('label[for="activity-lessons"]');
    await page.click('label[for="activity-lessons"]');
    await page.waitForSelector('.lesson-row');
  }
  assert.deepEqual(wrong, []);
  assert.deepEqual(errors, []);
  await site.tearDown();
});
