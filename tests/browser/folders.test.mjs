// The folders of www point one way: a module imports from its own folder and from those before it in the list, never from a later one.
// `page` stands above all. Read from the sources; needs no browser.

import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import test from 'node:test';
import { fileURLToPath } from 'node:url';

const WWW = join(dirname(fileURLToPath(import.meta.url)), '../../www');
/** First to last. `pkg` is what the build makes. */
const ORDER = [
  'pkg', 'base', 'words', 'state', 'engine', 'film', 'through', 'views', 'exposure', 'controls', 'gantry', 'injection', 'delivery', 'lesson',
  'export', 'history', 'replay', 'help', 'element', 'model', 'practice', 'teach', 'page',
];
/** What may stand beside the pages: its scope is the folder that it lies in. */
const LOOSE = ['service-worker.js'];

/** Paths below `folder` that end in .js, with slashes. */
function modules(folder = '') {
  return readdirSync(join(WWW, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = posix.join(folder, entry.name);
    if (entry.isDirectory()) return path === 'pkg' ? [] : modules(path);
    return path.endsWith('.js') ? [path] : [];
  });
}

/** What a module names by a path of its own: imports, and the addresses that are handed to `late`. */
function named(path) {
  const text = readFileSync(join(WWW, path), 'utf8');
  const specifiers = [...text.matchAll(/(?:\bfrom|\bimport|\bimport\()\s*'(\.{1,2}\/[^'?]+)/g)].map((found) => found[1]);
  return specifiers.map((name) => posix.join(posix.dirname(path), name));
}

const folder = (path) => path.split('/')[0];

test('each module stands in a folder of the list', () => {
  const paths = modules();
  assert.ok(paths.length > 80);
  assert.deepEqual(paths.filter((path) => !path.includes('/')), LOOSE);
  assert.deepEqual(paths.filter((path) => path.includes('/') && !ORDER.includes(folder(path))), []);
});

test('no folder imports from a later one', () => {
  const wrong = modules().flatMap((path) => named(path)
    .filter((other) => ORDER.indexOf(folder(other)) > ORDER.indexOf(folder(path)) && path.includes('/'))
    .map((other) => `${path} imports ${other}`));
  assert.deepEqual(wrong, []);
});
