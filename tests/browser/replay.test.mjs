// The same log, the same marks to the last bit: attempts with random strays, made and scored by the native engine, are replayed by the
// page's, a thousand in each browser. Claims are compared bit by bit, and the tables of both as text.

import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { ROOT, cargo, open, setUp } from './harness.mjs';
import { madeOnce } from './packages.mjs';

const LESSONS = ['few-pictures', 'under-the-root', 'first-sacral', 'views-homework', 'name-the-parts', 'lateral-view'];
const COUNT = 1000;
let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

/** Receipts of a class, and its table by the native engine, in a folder. */
function graded(folder) {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'class.ndjson'), cargo(folder, '--example', 'class', '--', String(COUNT), ...LESSONS, '--honest'));
  cargo(folder, '--', 'grade', 'class.ndjson', '--ndjson', 'rows.ndjson');
  return folder;
}

test('a thousand attempts score the same natively and in WebAssembly, bit for bit', async () => {
  const own = mkdtempSync(join(tmpdir(), 'class-'));
  try {
    const folder = madeOnce(`class-of-${COUNT}`, graded) ?? graded(own);
    const [receipts, native] = ['class', 'rows'].map((name) => readFileSync(join(folder, `${name}.ndjson`), 'utf8'));
    const lessons = LESSONS.map((id) => readFileSync(join(ROOT, 'www', 'lessons', `${id}.json`), 'utf8'));

    const { page, close } = await open(site, { path: 'bench.html', ready: false });
    const { counts, ndjson } = await page.evaluate(async ({ lessons, lines }) => {
      const module = await import('./pkg/lessons.js');
      await module.default();
      const room = new module.ClassRoom();
      for (const json of lessons) room.addLesson(json, 'en');
      lines.forEach((line, i) => room.addReceipt('class.ndjson', i + 1, line));
      while (room.check(50) > 0);
      return { counts: room.report().counts, ndjson: room.ndjson() };
    }, { lessons, lines: receipts.trim().split('\n') });
    assert.equal(counts.verified, COUNT);
    const totals = new Set(native.trim().split('\n').map((row) => JSON.parse(row).total));
    assert.ok(totals.size > COUNT / 4, `only ${totals.size} different totals: the strays are too tame to show anything`);
    assert.equal(ndjson, native);
    await close();
  } finally {
    rmSync(own, { recursive: true, force: true });
  }
});
