// The log of an attempt in few characters, and lengths of time as the standards write them.

import assert from 'node:assert/strict';
import { readdir } from 'node:fs/promises';
import { test } from 'node:test';
import { recorded, SCORING } from './hosts.mjs';
import { pack, unpack } from '../../www/delivery/packed.js';
import { compact, resumed, suspended } from '../../www/delivery/suspended.js';
import { duration, timespan } from '../../www/delivery/time.js';
import { codeOf, codeOfAgent } from '../../www/delivery/learner.js';

/** A generator of the same numbers each time (Park and Miller, 1988). */
function numbers(seed) {
  let n = seed;
  return (most) => (n = (n * 48271) % 2147483647) % most;
}

const odd = ['', 'x', '5 orient -0 07', '5 orient 1  2', '4 spot', '999999999 spot', '4294967295 spot', '1 name é 🦴 -', '1 orient 1 2 3 4 5 6 7 8', '10 spot', '10 spot ', '11 roll -268435456'];

test('every recorded attempt comes back line by line, in half of its characters at most', async () => {
  for (const file of await readdir(SCORING)) {
    const lines = await recorded(file.replace('.log', ''));
    const { text } = pack(lines);
    assert.deepEqual(unpack(text), { lines, whole: true }, file);
    if (lines.length > 50) assert.ok(text.length < lines.join('\n').length / 2, `${file}: ${text.length}`);
  }
});

test('SCORM 1.2’s 4,096 characters hold some 800 actions of a whole procedure', async () => {
  const once = await recorded('few-pictures-fixed');
  const often = Array.from({ length: 20 }, (_, i) => once.map((line) => line.replace(/^\d+/, (tick) => Number(tick) + 2000 * i))).flat();
  const { lines } = pack(often, 4096);
  assert.ok(lines > 800 && lines < 900, `${lines}`);
});

test('lines of any shape come back', () => {
  assert.deepEqual(unpack(pack(odd).text), { lines: odd, whole: true });
  const draw = numbers(7);
  for (let round = 0; round < 300; round += 1) {
    const word = () => [String(draw(2_000_000) - 1_000_000), '-', 'L4', 'é'.repeat(draw(5)), String(draw(10))][draw(5)];
    const lines = Array.from({ length: draw(40) }, () => [String(draw(5000)), ['orient', 'spot', 'advance', 'jump'][draw(4)], ...Array.from({ length: draw(9) }, word)].join(' '));
    assert.deepEqual(unpack(pack(lines).text), { lines, whole: true });
  }
});

test('cut anywhere, what comes back is a beginning; damaged, it is said', () => {
  const lines = Array.from({ length: 60 }, (_, i) => `${i * 20} orient ${i} -${i + 1}`);
  const { text } = pack(lines);
  for (let length = 0; length < text.length; length += 1) {
    const found = unpack(text.slice(0, length));
    if (!found) continue;
    // Without the padding alone it is all there.
    assert.equal(found.whole, found.lines.length === lines.length);
    assert.deepEqual(found.lines, lines.slice(0, found.lines.length));
  }
  const at = text.length - 10;
  assert.ok(!unpack(text.slice(0, at) + (text[at] === 'A' ? 'B' : 'A') + text.slice(at + 1)).whole);
  for (const nonsense of ['', 'x', 'db1', 'db1.1.2', 'db2.1.2.AAAA', '{}', 'db1.1.2.!!!!', `db1.9.0.${'/'.repeat(999)}`]) assert.ok(!unpack(nonsense)?.whole, nonsense);
});

test('as many lines as fit, never a character more', () => {
  const lines = Array.from({ length: 500 }, (_, i) => `${i * 20} orient ${i * 7} -${i * 3}`);
  const receipt = JSON.stringify({ log: ['1 spot'], learner: 'é' }, null, 2);
  for (const most of [10, 100, 255, 1000, 4096]) {
    const { text, lines: n } = suspended({ receipt, lines }, most);
    assert.ok(text.length <= most);
    const back = resumed(text);
    assert.deepEqual(back.lines ?? [], lines.slice(0, n));
    const more = pack(lines.slice(0, n + 1)).text.length + (back.receipt ? compact(receipt).length + 1 : 0);
    assert.ok(more > most || n === lines.length);
  }
  assert.equal(compact(receipt), '{"log":["1 spot"],"learner":"\\u00e9"}');
  assert.deepEqual(JSON.parse(compact(receipt)), JSON.parse(receipt));
});

test('lengths of time', () => {
  // SCORM 1.2, CMITimespan; ISO 8601 as SCORM 2004 and xAPI write it.
  for (const [seconds, a, b] of [[0, '00:00:00.00', 'PT0S'], [133.456, '00:02:13.46', 'PT2M13.46S'], [3600, '01:00:00.00', 'PT1H'], [59.999, '00:01:00.00', 'PT1M'], [NaN, '00:00:00.00', 'PT0S'], [-5, '00:00:00.00', 'PT0S'], [1e9, '9999:59:59.99', 'PT277777H46M40S']]) {
    assert.equal(timespan(seconds), a);
    assert.equal(duration(seconds), b);
  }
});

test('a learner’s code is the same each time, fits a receipt, and is not the login', () => {
  const code = codeOf('jdoe@example.org');
  assert.match(code, /^[0-9a-v]{13}$/);
  assert.equal(codeOf('jdoe@example.org'), code);
  assert.notEqual(codeOf('jdoe2@example.org'), code);
  assert.equal(codeOf(''), null);
  assert.equal(codeOfAgent({ account: { homePage: 'https://a.example', name: 'x' } }), codeOf('https://a.example', 'x'));
});
