// The JSON Schemas that stand beside the lessons, as Ajv (npm, MIT) reads them in its strict mode, which takes no keyword that it does not know: what ships
// and what the host tool writes keeps to them. That jsonschema reads them the same way, and what is broken: `tests/reference/test_schemas.py`.

import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { ROOT, cargo } from './harness.mjs';

const { default: Ajv } = createRequire(import.meta.url)('ajv/dist/2020');
const LESSONS = join(ROOT, 'www/lessons');

let folder;
before(() => (folder = mkdtempSync(join(tmpdir(), 'downbeam-schemas-'))));
after(() => rmSync(folder, { recursive: true, force: true }));

const json = (path) => JSON.parse(readFileSync(path, 'utf8'));

/** Ajv's check of one of the schemas; the numbers' formats that schemars writes (`uint32`) are no formats of the standard, and say nothing beyond its ranges. */
function checked(name) {
  const formats = Object.fromEntries(['uint', 'uint8', 'uint16', 'uint32', 'uint64', 'int8', 'int16', 'int32', 'int64', 'float', 'double'].map((format) => [format, true]));
  const check = new Ajv({ strict: true, strictTypes: false, strictRequired: false, allErrors: true, formats }).compile(json(join(LESSONS, `${name}.schema.json`)));
  return (value, what) => assert.ok(check(value), `${what}: ${JSON.stringify(check.errors?.slice(0, 3))}`);
}

test('every lesson that ships', () => {
  const check = checked('lesson');
  const files = readdirSync(LESSONS).filter((file) => file.endsWith('.json') && !file.endsWith('.schema.json') && file !== 'index.json');
  assert.ok(files.length >= 16);
  for (const file of files) check(json(join(LESSONS, file)), file);
  assert.throws(() => check({ ...json(join(LESSONS, files[0])), steps: ['dance'] }, 'no step'));
});

test('receipts, and the report’s rows', () => {
  const [receipt, row] = [checked('receipt'), checked('report-row')];
  const lines = cargo(folder, '--example', 'class', '--', '40', 'few-pictures', 'views-homework', '--honest').trim().split('\n');
  assert.equal(lines.length, 40);
  for (const line of lines) receipt(JSON.parse(line), 'a receipt');
  assert.throws(() => receipt({ ...JSON.parse(lines[0]), learner: 7 }, 'no code'));
  writeFileSync(join(folder, 'class.ndjson'), `${lines.join('\n')}\n{}\n`);
  cargo(folder, '--', 'grade', 'class.ndjson', '--ndjson', 'rows.ndjson');
  const rows = readFileSync(join(folder, 'rows.ndjson'), 'utf8').trim().split('\n').map((line) => JSON.parse(line));
  assert.equal(rows.length, 41);
  for (const one of rows) row(one, `row ${one.row}`);
  assert.throws(() => row({ ...rows[0], total: 1.5 }, 'more than all'));
});

test('what `view --json` prints', () => {
  const check = checked('view');
  for (const more of [[], ['--best'], ['--spot'], ['--best', '--view', 'lateral']]) {
    check(JSON.parse(cargo(folder, '--', 'view', '--level', 'L4', '--side', 'left', '--json', ...more)), more.join(' '));
  }
});
