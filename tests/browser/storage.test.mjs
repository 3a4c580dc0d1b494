// Settings in the browser's storage, whatever stands there. Needs no browser; that a page opens on them is in robustness.test.mjs.

import assert from 'node:assert/strict';
import { test } from 'node:test';

/** The module afresh, over a storage that holds a text. */
async function over(text) {
  const kept = new Map(text === null ? [] : [['downbeam.settings', text]]);
  globalThis.localStorage = { getItem: (key) => kept.get(key) ?? null, setItem: (key, value) => kept.set(key, value), removeItem: (key) => kept.delete(key) };
  return { kept, ...(await import(`../../www/base/storage.js?of=${encodeURIComponent(String(text))}`)) };
}

for (const nonsense of ['{', '[1]', 'null', '7', '"dark"', '{"theme":7,"bone":{}}']) {
  test(`settings that are ${nonsense}: each has its first value, and can be kept`, async () => {
    const { setting, keep, storageWorks, kept } = await over(nonsense);
    assert.equal(setting('theme', ['dark', 'light', 'device']), 'dark');
    assert.equal(setting('bone', ['dark', 'white']), 'dark');
    assert.equal(storageWorks(), true, 'nonsense is no storage that fails');
    assert.equal(keep('theme', 'light'), true);
    assert.equal(setting('theme', ['dark', 'light', 'device']), 'light');
    assert.equal(JSON.parse(kept.get('downbeam.settings')).theme, 'light');
  });
}

test('a setting that was kept is there again', async () => {
  const { setting } = await over('{"theme":"light"}');
  assert.equal(setting('theme', ['dark', 'light']), 'light');
});
