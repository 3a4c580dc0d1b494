// The oldest browsers that README.md and the pages name are those of published data (MDN's browser-compat-data) for the features in use.

import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { FEATURES, OF_THE_ELEMENT, oldest } from './features.mjs';

const ROOT = new URL('../../', import.meta.url);
const read = (path) => readFileSync(new URL(path, ROOT), 'utf8');
const WWW = readdirSync(new URL('www/', ROOT), { recursive: true }).filter((path) => /\.(js|html|css)$/.test(path) && !path.startsWith('pkg'));
const named = () => {
  const { chrome, edge, firefox, safari } = oldest();
  assert.equal(chrome, edge);
  return `Chrome and Edge ${chrome}, Firefox ${firefox}, Safari ${safari}`;
};

test('README and the pages name the oldest browsers that have what is used', () => {
  for (const path of ['README.md', 'www/index.html', 'www/author.html', 'www/check.html', 'www/model.html']) assert.ok(read(path).includes(named()), `${path} does not say “${named()}”`);
});

test('each of these features is in use', () => {
  const texts = WWW.map((path) => read(`www/${path}`)).join('\n');
  for (const [name, { use }] of Object.entries({ ...FEATURES, ...OF_THE_ELEMENT })) {
    if (!use.startsWith('pkg/')) assert.ok(texts.includes(use), `nothing in www uses ${name}: take it out of features.mjs and needed.js`);
  }
});

test('the pages look for each of them before anything else runs', () => {
  const asked = read('www/page/needed.js').match(/var needed = \{([\s\S]*?)\n {2}\};/)[1];
  for (const name of Object.keys(FEATURES)) assert.ok(asked.includes(name), `needed.js does not ask for ${name}`);
  assert.equal((asked.match(/: function \(\)/g) ?? []).length, Object.keys(FEATURES).length, 'and for nothing else');
  for (const page of ['index', 'author', 'check', 'model']) {
    const html = read(`www/${page}.html`);
    assert.ok(html.indexOf('<script src="page/needed.js" defer>') < html.indexOf('<script type="module"'), page);
  }
});
