// The element's table: what is made from it is up to date, and what it says is so. Nothing here needs a browser.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';
import { files } from '../../docs/element.mjs';
import { BY_NAME, fallbacks, readAttribute } from '../../www/element/attributes.js';
import { ATTRIBUTES, EVENTS, METHODS, PARTS, PROPERTIES, READINGS, SHAPES } from '../../www/element/interface.js';
import { ENGLISH as texts } from '../../www/element/words.js';

const read = (path) => readFile(new URL(`../../${path}`, import.meta.url), 'utf8');

test('docs/element.md and the type declarations are what the table makes (node docs/element.mjs makes them)', async () => {
  for (const [path, text] of Object.entries(files())) assert.equal(await read(path), text, path);
});

test('every name of the table stands in the documentation and, but for looks, in the declarations', async () => {
  const [docs, types] = [await read('docs/element.md'), await read('www/element/downbeam-view.d.ts')];
  for (const { name } of [...ATTRIBUTES, ...READINGS, ...METHODS, ...EVENTS]) {
    assert.ok(docs.includes(`\`${name}`), `${name} in the documentation`);
    assert.match(types, new RegExp(`\\b${name}\\b`), `${name} in the declarations`);
  }
  for (const name of Object.keys(SHAPES)) assert.ok(types.includes(`interface ${name} {`) && docs.includes(`**${name}**`), name);
});

test('parts and custom properties are those that the element has', async () => {
  const face = await read('www/element/face.js');
  assert.deepEqual([...face.matchAll(/\bpart: '([\w-]+)'/g)].map((m) => m[1]).sort(), PARTS.map((p) => p.name).sort());
  const tokens = await read('www/style/tokens.css');
  assert.deepEqual([...new Set([...tokens.matchAll(/var\(--downbeam-([\w-]+)/g)].map((m) => m[1]))].sort(), PROPERTIES.map((p) => p.name).sort());
});

test('what stands in attributes is read, or told in one sentence', () => {
  const value = (name, text) => readAttribute(name, text, 'kept', texts).value;
  const said = (name, text) => readAttribute(name, text, fallbacks()[BY_NAME.get(name).key], texts).problem?.sentence;
  assert.equal(value('level', 's1'), 'S1');
  assert.equal(value('oblique', '-12.5'), -12.5);
  assert.equal(value('oblique', 7), 7);
  assert.equal(value('outlines', ''), true);
  assert.equal(value('outlines', 'false'), false);
  assert.equal(value('outlines', true), true);
  assert.equal(value('level', null), 'L4');
  assert.equal(value('patient', ' small '), 'small');
  assert.equal(said('level', 'L9'), 'level="L9" does not fit: allowed is L1, L2, L3, L4, L5, S1. L4 is used.');
  assert.equal(said('oblique', '200'), 'oblique="200" does not fit: allowed is a number from -110 to 110. 0 is used.');
  assert.equal(said('labels', 'maybe'), 'labels="maybe" does not fit: allowed is on, off. off is used.');
  assert.match(said('patient', ''), /a patient’s name/);
  for (const bad of ['', ' ', 'NaN', 'Infinity', '1e9', '12deg', '--3']) assert.ok(said('tilt', bad), bad);
  assert.match(said('view', 'x'.repeat(500)), /^view="x{40}…" does not fit/);
});

test('digests: only what a browser would check', () => {
  const fits = (text) => readAttribute('integrity', text, '', texts).value !== undefined;
  // The digest of "abc", FIPS 180-4's example, in base64.
  assert.ok(fits('sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0='));
  assert.ok(fits(''));
  for (const bad of ['md5-ungWv48Bz+pBQUDeXa4iIw==', 'sha256-short=', 'ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=', 'sha384-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=', 'x']) assert.ok(!fits(bad), bad);
});
