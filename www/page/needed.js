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
    'Object.hasOwn': function () { return 'hasOwn' in Object; },
    structuredClone: function () { return typeof structuredClone === 'function'; },
    'transform streams': function () { return typeof TransformStream === 'function'; },
    'compressed streams': function () { return typeof CompressionStream === 'function'; }
  };
  // The sentence (F: what is missing; C, X, S: versions, from the English one in the page) and the names of the features, in their order.
  /** @type {Record<string, { sentence: string, names: string[] }>} */
  var others = {
    de: {
      sentence: 'Diesem Browser fehlt, oder es ist in ihm abgeschaltet, was diese Seite braucht: F. Downbeam läuft in Chrome und Edge C, Firefox X, Safari S und neueren.',
      names: ['WebAssembly mit Referenztypen', 'JavaScript-Module', 'Popover', 'Dialoge', 'der Selektor :has()', 'die Länge dvh', 'Element.checkVisibility', 'abgerundete Rechtecke auf einem Canvas', 'Object.hasOwn', 'structuredClone', 'Transformationsströme', 'komprimierte Ströme']
    },
    es: {
      sentence: 'A este navegador le falta, o tiene desactivado, lo que esta página necesita: F. Downbeam funciona en Chrome y Edge C, Firefox X, Safari S y más recientes.',
      names: ['WebAssembly con tipos de referencia', 'módulos de JavaScript', 'popovers', 'diálogos', 'el selector :has()', 'la longitud dvh', 'Element.checkVisibility', 'rectángulos redondeados en un canvas', 'Object.hasOwn', 'structuredClone', 'flujos de transformación', 'flujos comprimidos']
    }
  };
  /** The language as the page would choose it: by the address, by the choice kept here, by the browser. */
  function language() {
    var asked = /[?&]lang=([a-z]+)/.exec(location.search);
    var kept = null;
    try {
      kept = JSON.parse(localStorage.getItem('downbeam.settings') || '{}').language;
    } catch (error) {
      // None is kept.
    }
    return String((asked && asked[1]) || kept || navigator.language || '').slice(0, 2);
  }
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
    var other = others[language()];
    var versions = sentence && /Edge ([\d.]+), Firefox ([\d.]+), Safari ([\d.]*\d)/.exec(sentence.textContent || '');
    if (other && sentence && versions) {
      var all = Object.keys(needed);
      var names = missing.map(function (name) { return other.names[all.indexOf(name)]; });
      var found = versions;
      sentence.lang = language();
      sentence.textContent = other.sentence.replace(/\b[FCXS]\b/g, function (sign) { return sign === 'F' ? names.join(', ') : found['CXS'.indexOf(sign) + 1]; });
    }
    if (sentence) sentence.removeAttribute('hidden');
  }
  if (document.readyState === 'loading') document.addEventListener('DOMContentLoaded', tell);
  else tell();
})();
