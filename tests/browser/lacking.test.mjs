// A browser that lacks something is told so in a sentence: each feature is taken away before the page begins.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { FEATURES } from './features.mjs';
import { open, setUp } from './harness.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

/** How each is taken away, by the name that the page gives it. */
const AWAY = {
  'WebAssembly with reference types': () => delete globalThis.WebAssembly,
  'JavaScript modules': () => delete HTMLScriptElement.prototype.noModule,
  popovers: () => delete HTMLElement.prototype.popover,
  dialogs: () => delete HTMLDialogElement.prototype.showModal,
  'the selector :has()': () => {
    const real = CSS.supports;
    CSS.supports = (...all) => !String(all[0]).includes(':has(') && real.apply(CSS, all);
  },
  'the length dvh': () => {
    const real = CSS.supports;
    CSS.supports = (...all) => !String(all[0]).includes('dvh') && real.apply(CSS, all);
  },
  'Element.checkVisibility': () => delete Element.prototype.checkVisibility,
  'rounded rectangles on a canvas': () => delete CanvasRenderingContext2D.prototype.roundRect,
  'Object.hasOwn': () => delete Object.hasOwn,
  structuredClone: () => delete globalThis.structuredClone,
  'transform streams': () => delete globalThis.TransformStream,
};

test('the page names what is missing, and the browsers that have it', async () => {
  // Without any other script: what is said must not need them. Which one to take away stands in the address.
  const table = Object.entries(AWAY).map(([name, away]) => `${JSON.stringify(name)}: ${away}`).join(',');
  const prepare = async (p) => {
    await p.addInitScript({ content: `({${table}})[new URLSearchParams(location.search).get('without')]?.()` });
    await p.route(/^(?!.*needed\.js).*\.(js|wasm)$/, (route) => route.fulfill({ contentType: 'text/javascript', body: '' }));
  };
  const { page, close } = await open(site, { ready: false, prepare });
  for (const name of Object.keys(AWAY)) {
    await page.goto(`${site.server.address}?without=${encodeURIComponent(name)}`);
    await page.waitForSelector('#lacking');
    assert.match(await page.textContent('#lacking'), new RegExp(`what this page needs: ${name.replace(/[()]/g, '\\$&')}\\. Downbeam runs in Chrome and Edge \\d+, Firefox \\d+, Safari [\\d.]+ and newer ones\\.$`));
  }
  await close();
});

test('in German and Spanish too, each feature by a name of its own, and the same versions', async () => {
  const prepare = (p) => p.route(/^(?!.*needed\.js).*\.(js|wasm)$/, (route) => route.fulfill({ contentType: 'text/javascript', body: '' }));
  const withoutAll = () => Object.assign(globalThis, { WebAssembly: undefined, structuredClone: undefined });
  const { page, close } = await open(site, { ready: false, prepare: async (p) => (await p.addInitScript(withoutAll), prepare(p)) });
  const seen = {};
  for (const tag of ['en', 'de', 'es']) {
    await page.goto(`${site.server.address}?lang=${tag}`);
    await page.waitForSelector('#lacking');
    seen[tag] = await page.textContent('#lacking');
  }
  const versions = (text) => text.match(/\d[\d.]*/g).map((n) => n.replace(/\.$/, ''));
  assert.match(seen.de, /braucht: WebAssembly mit Referenztypen, structuredClone\. Downbeam läuft in Chrome und Edge/);
  assert.match(seen.es, /necesita: WebAssembly con tipos de referencia, structuredClone\. Downbeam funciona en Chrome y Edge/);
  for (const tag of ['de', 'es']) assert.deepEqual(versions(seen[tag]), versions(seen.en), tag);
  assert.equal(await page.getAttribute('#lacking', 'lang'), 'es');
  await close();
  // As many names in each language as there are features.
  const source = readFileSync(new URL('../../www/page/needed.js', import.meta.url), 'utf8');
  for (const names of source.match(/names: \[[^\]]*\]/g)) assert.equal(names.match(/'[^']+'/g).length, Object.keys(FEATURES).length);
});

test('a browser that has all of it is told nothing', async () => {
  for (const path of ['', 'author.html', 'check.html', 'model.html']) {
    const { page, close } = await open(site, { path, ready: false });
    await page.waitForSelector('#lacking', { state: 'attached' });
    await page.waitForFunction(() => document.readyState === 'complete');
    assert.ok(await page.locator('#lacking').isHidden(), path);
    await close();
  }
});
