// What the page itself reads of outside data, mutated: logs in a platform's field, learners of a platform, attempts in an address, files of progress, the
// address. What the engine reads has `tests/readers.rs`. A few thousand each here; more: `READINGS=100000 node --test readers.test.mjs`.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { recorded } from './hosts.mjs';
import { attemptFragment, attemptOf } from '../../www/base/attempt-link.js';
import { takeIn } from '../../www/base/progress.js';
import { codeOf, codeOfAgent } from '../../www/delivery/learner.js';
import { unpack } from '../../www/delivery/packed.js';
import { resumed, suspended } from '../../www/delivery/suspended.js';
import { readAddress } from '../../www/state/address.js';

const READINGS = Number(process.env.READINGS ?? 2000);
const SCRAPS = ['{', '}', '[', ']', '"', ':', ',', 'null', '-1', '1e999', '\\u0000', '\ud800', 'é', '🦴', '.', 'db1', '%', '%zz', '&', '=', '#', '==', ' ', '\n', '99999999999999999999', '__proto__', 'constructor', 'AAAA', '////'];

/** A generator of the same numbers each time (Park and Miller, 1988). */
function numbers(seed) {
  let n = seed;
  return (most) => (n = (n * 48271) % 2147483647) % most;
}

/** A good text with some pieces cut out and others put in. */
function spoilt(good, at) {
  let text = good;
  for (let changes = 1 + at(4); changes > 0; changes -= 1) {
    const from = at(text.length + 1);
    text = text.slice(0, from) + SCRAPS[at(SCRAPS.length)].repeat(at(2) + (at(50) === 0 ? 400 : 0)) + text.slice(from + at(24));
  }
  return text;
}

test('what a platform gives back is read or refused, and never more than it says', async () => {
  const at = numbers(22);
  const lines = await recorded('few-pictures-fixed');
  const good = suspended({ receipt: '{"format":1,"log":["0 spot"]}', lines }, 64_000).text;
  for (let i = 0; i < READINGS; i += 1) {
    const { lines: found, receipt, whole } = resumed(spoilt(good, at));
    assert.ok(found === null || (found.length > 0 && found.every((line) => typeof line === 'string')));
    assert.ok(receipt === null || receipt.startsWith('{'));
    if (whole && found) assert.deepEqual(found, lines, 'the checksum lets nothing else through');
    unpack(spoilt('db1.2.5f577828.AQMBAw==', at));
  }
});

test('learners of platforms give a code or none', () => {
  const at = numbers(5);
  const agent = JSON.stringify({ objectType: 'Agent', name: ['Ann'], account: { homePage: 'https://lms.example.org', name: 'jdoe' }, mbox: 'mailto:a@b.org' });
  for (let i = 0; i < READINGS; i += 1) {
    const identity = spoilt('jdoe@example.org', at);
    assert.equal(codeOf(identity) === null, identity.trim() === '', 'none for blanks alone');
    let read;
    try {
      read = JSON.parse(spoilt(agent, at));
    } catch {
      continue;
    }
    assert.ok(['string', 'object', 'undefined'].includes(typeof codeOfAgent(read)));
  }
});

test('an attempt in an address is an object or nothing', async () => {
  const at = numbers(9);
  const good = await attemptFragment({ patient: 'average', case: {}, log: await recorded('few-pictures-fixed') });
  for (let i = 0; i < READINGS / 4; i += 1) {
    const found = await attemptOf(spoilt(good, at));
    assert.ok(found === null || JSON.stringify(found) !== undefined);
  }
});

test('a file of progress is taken in or refused', async () => {
  const at = numbers(13);
  const good = JSON.stringify({ kind: 'downbeam progress', format: 1, done: { ['a'.repeat(64)]: { best: 0.8, passed: true, tries: 2 } }, open: { [`${'b'.repeat(64)}.anna`]: ['0 spot'] } });
  for (let i = 0; i < READINGS; i += 1) {
    let read;
    try {
      read = JSON.parse(spoilt(good, at));
    } catch {
      continue;
    }
    const count = await takeIn(read);
    assert.ok(count === null || (Number.isInteger(count) && count >= 0));
  }
});

test('an address is what fits, and a sentence for each thing that does not', () => {
  const at = numbers(17);
  const catalogue = { patients: [{ name: 'average' }, { name: 'turned' }], levels: ['L4', 'L5', 'S1'], range: { oblique_deg: [-110, 110], tilt_deg: [-45, 45] } };
  for (let i = 0; i < READINGS; i += 1) {
    const { asked, complaints } = readAddress(spoilt('#patient=turned&level=L5&side=left&start=3&oblique=-25.5&tilt=10&self-test=on', at), catalogue);
    assert.ok(complaints.every((sentence) => sentence.length > 0 && sentence.length < 400 && !sentence.includes('\n')), complaints.join('\n'));
    if ('oblique_deg' in asked) assert.ok(Math.abs(asked.oblique_deg) <= 110);
    if ('level' in asked) assert.ok(catalogue.levels.includes(asked.level));
  }
});
