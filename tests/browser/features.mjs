// What the pages need of a browser that not all have had for long, with where published data says since when: keys of MDN's
// browser-compat-data (CC0), and a piece of text that shows the use in www. From these come the oldest browsers in README.md and on the
// page; supported.test.mjs holds both to it.

import { createRequire } from 'node:module';

const data = createRequire(import.meta.url)('@mdn/browser-compat-data');

/** By what www/page/needed.js calls it, or, where a page does without or the element alone needs it, by its own name. */
export const FEATURES = {
  'WebAssembly with reference types': { bcd: 'webassembly.reference-types', use: 'pkg/downbeam_bg.wasm' },
  'JavaScript modules': { bcd: 'html.elements.script.type.module', use: '<script type="module"' },
  popovers: { bcd: 'html.global_attributes.popover', use: 'popovertarget=' },
  dialogs: { bcd: 'api.HTMLDialogElement.showModal', use: '.showModal()' },
  'the selector :has()': { bcd: 'css.selectors.has', use: ':has(' },
  'the length dvh': { bcd: 'css.types.length.viewport_percentage_units_dynamic', use: '100dvh' },
  'Element.checkVisibility': { bcd: 'api.Element.checkVisibility', use: '.checkVisibility()' },
  'rounded rectangles on a canvas': { bcd: 'api.CanvasRenderingContext2D.roundRect', use: '.roundRect(' },
  'Object.hasOwn': { bcd: 'javascript.builtins.Object.hasOwn', use: 'Object.hasOwn(' },
  structuredClone: { bcd: 'api.structuredClone', use: 'structuredClone(' },
  'compressed streams': { bcd: 'api.CompressionStream', use: 'new CompressionStream(' },
  'transform streams': { bcd: 'api.TransformStream', use: 'new TransformStream(' },
};
/** The course element's own. */
export const OF_THE_ELEMENT = {
  'static blocks in classes': { bcd: 'javascript.classes.static.initialization_blocks', use: 'static {' },
  'Promise.withResolvers': { bcd: 'javascript.builtins.Promise.withResolvers', use: 'Promise.withResolvers()' },
  'container queries': { bcd: 'css.at-rules.container', use: '@container' },
  'style sheets made by scripts': { bcd: 'api.CSSStyleSheet.CSSStyleSheet', use: 'new CSSStyleSheet(' },
  'sheets of a shadow root': { bcd: 'api.ShadowRoot.adoptedStyleSheets', use: 'adoptedStyleSheets' },
};
const BROWSERS = { chrome: 'chrome', edge: 'edge', firefox: 'firefox', safari: 'safari', 'safari_ios': 'safari', chrome_android: 'chrome', firefox_android: 'firefox' };

/** Since which version a browser has a feature, or null where the data has no such key. */
function since(bcd, browser) {
  const support = bcd.split('.').reduce((at, key) => at?.[key], data)?.__compat?.support[browser];
  if (!support) return null;
  // The plain one: not behind a setting, not under another name, not taken out again.
  const unconditional = [support].flat().find((s) => !s.flags && !s.prefix && !s.alternative_name && !s.version_removed && !s.partial_implementation);
  return typeof unconditional?.version_added === 'string' ? Number(unconditional.version_added.replace('≤', '')) : null;
}

/** The oldest version of each family that has all features: `{chrome, edge, firefox, safari}`. */
export function oldest() {
  const versions = {};
  for (const [name, { bcd }] of Object.entries({ ...FEATURES, ...OF_THE_ELEMENT })) {
    for (const [browser, family] of Object.entries(BROWSERS)) {
      const version = since(bcd, browser);
      if (version === null) throw new Error(`the data says nothing of ${name} (${bcd}) in ${browser}`);
      versions[family] = Math.max(versions[family] ?? 0, version);
    }
  }
  return versions;
}
