// A term on the teacher's page: forty learners, three lessons, two tries each, five cheats, one lost laptop. `tests/term.rs` plays it with the engine, checks it
// natively and leaves receipts, class list and the terminal's gradebook in a folder; here the page gets the same folder and must say the same.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { ROOT, axeClean, cargo, open, setUp } from './harness.mjs';

const TERM = join(process.env.CARGO_TARGET_DIR ?? join(ROOT, 'target'), 'tmp', 'term');
let site;
before(async () => {
  site = await setUp();
  execFileSync('cargo', ['test', '--locked', '--quiet', '--test', 'term'], { cwd: ROOT, stdio: ['ignore', 'ignore', 'inherit'] });
  cargo(TERM, '--', 'grade', 'receipts', '--class', 'class.csv', '--ndjson', 'rows.ndjson', '--force');
});
after(() => site.tearDown());

async function saved(page, button) {
  const [file] = await Promise.all([page.waitForEvent('download'), page.click(button)]);
  return readFile(await file.path(), 'utf8');
}

test('from class list to gradebook the page gives what the terminal gives, byte for byte', async () => {
  const { page, errors, close } = await open(site, { path: 'check.html', ready: false });
  await page.waitForFunction(() => document.documentElement.dataset.settled === 'yes', null, { timeout: 30_000 });
  await page.setInputFiles('#list-file', join(TERM, 'class.csv'));
  await page.waitForFunction(() => /40/.test(document.getElementById('list-state').textContent));
  await page.setInputFiles('#folder', join(TERM, 'receipts'));
  await page.waitForFunction(() => document.getElementById('counts-heading').textContent === '234 receipts' && document.getElementById('progress').hidden, null, { timeout: 120_000 });

  assert.equal(await saved(page, '#save-ndjson'), await readFile(join(TERM, 'rows.ndjson'), 'utf8'));
  await page.selectOption('#separator', 'semicolon');
  assert.equal(await saved(page, '#save-gradebook'), await readFile(join(TERM, 'book.csv'), 'utf8'));

  // What a teacher sees: two altered, copies pointed out, the lost laptop by name, and who is to be looked at.
  const count = (status) => page.locator(`.count[data-status="${status}"] dd strong`).textContent();
  assert.deepEqual([await count('altered'), await count('verified')], ['2', '232']);
  assert.ok(Number(await count('copies')) >= 2, 'another’s log, and the own one again');
  assert.match(await page.textContent('#missing'), /Learner; 39/);
  const learners = await page.$$eval('#learners-table tbody tr', (all) => all.map((row) => ({ name: row.querySelector('th').textContent, lookAt: row.lastElementChild.textContent !== '' })));
  assert.equal(learners.length, 40);
  assert.deepEqual(learners.filter((one) => one.lookAt).map((one) => Number(/Learner; (\d+)/.exec(one.name)[1])).sort((a, b) => a - b), [0, 1, 2, 3, 4]);
  // The view of one of them has both tries of three lessons, each with its replay.
  await page.getByRole('button', { name: /Learner; 7\b/ }).click();
  assert.equal(await page.locator('#one-learner-table tbody tr').count(), 6);
  assert.equal(await page.locator('#one-learner-table a[href^="index.html#attempt="]').count(), 6);
  await axeClean(page, 'a term');
  assert.deepEqual(errors, []);
  await close();
});
