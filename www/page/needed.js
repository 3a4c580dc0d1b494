// Says what a browser lacks that these pages cannot do without. A script of the old kind, in words that old browsers read: in one that
// knows no modules nothing else would run. The versions in the sentence are held to published data (tests/browser/supported.test.mjs).
(function () {
  'use strict';
  // A type section with a function that gives an externref.
  var REFERENCES = [0, 97, 115, 109, 1, 0, 0, 0, 1, 5, 1, 96, 0, 1, 111];
  /** @type {Record<string, () => boolean>} */
  var needed = {
    'WebAssembly with reference types': function () { return WebAssembly.validate(new Uint8Array(REFERENCES)); },
    'JavaScript modules': function () { return 'noModule' in HTMLScriptElement.prototype; },
    popovers: function () { return 'popover' in HTMLElement.prototype; },
    dialogs: function () { return 'showModal' in HTMLDialogElement.prototype; },
    'the selector :has()': function () { return CSS.supports('selector(:has(a))'); },
    'the length dvh': function () { return CSS.supports('height: 1dvh'); },
    'Element.checkVisibility': function () { return 'checkVisibility' in Element.prototype; },
    'rounded rectangles on a canvas': function () { return 'roundRect' in CanvasRenderingContext2D.prototype; },
    'Array.findLast': function () { return 'findLast' in Array.prototype; },
    'Object.hasOwn': function () { return 'hasOwn' in Object; },
    structuredClone: function () { return typeof structuredClone === 'function'; },
    'transform streams': function () { return typeof TransformStream === 'function'; },
    'compressed streams': function () { return typeof CompressionStream === 'function'; }
  };
  /** @param {string} name */
  function lacks(name) {
    try {
      return !needed[name]();
    } catch (error) {
      return true;
    }
  }
  function tell() {
    var missing = Object.keys(needed).filter(lacks);
    if (missing.length === 0) return;
    var list = document.getElementById('lacking-list');
    var sentence = document.getElementById('lacking');
    if (list) list.textContent = missing.join(', ');
    if (sentence) sentence.removeAttribute('hidden');
  }
  if (document.readyState === 'loading') document.addEventListener('DOMContentLoaded', tell);
  else tell();
})();
