// A browser that lacks something is told so in a sentence: each feature is taken away before the page begins.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
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
  'Array.findLast': () => delete Array.prototype.findLast,
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

test('a browser that has all of it is told nothing', async () => {
  for (const path of ['', 'author.html', 'check.html', 'model.html']) {
    const { page, close } = await open(site, { path, ready: false });
    await page.waitForSelector('#lacking', { state: 'attached' });
    await page.waitForFunction(() => document.readyState === 'complete');
    assert.ok(await page.locator('#lacking').isHidden(), path);
    await close();
  }
});
