// The language of an element: the nearest `lang` around it that there are texts for, else English. English is here from the start;
// another language is fetched when an element first asks for it.

import { element as enElement } from '../pkg/texts/en/element.js';
import { view as enView } from '../pkg/texts/en/view.js';
import { sayer } from '../words/sentences.js';
import { elementWords } from '../words/element.js';

/**
 * @import { Table } from '../words/sentences.js'
 *
 * @typedef {ReturnType<typeof elementWords>} Texts
 */

/** @type {Record<string, () => Promise<[{ view: Table }, { element: Table }]>>} */
const OTHERS = {
  de: () => Promise.all([import('../pkg/texts/de/view.js'), import('../pkg/texts/de/element.js')]),
  es: () => Promise.all([import('../pkg/texts/es/view.js'), import('../pkg/texts/es/element.js')]),
};

const wordsOf = (/** @type {string} */ tag, /** @type {Table} */ view, /** @type {Table} */ element) => elementWords(sayer(tag, view, enView), sayer(tag, element, enElement));
/** The table of English. */
export const ENGLISH = wordsOf('en', enView, enElement);
/**
 * The tables that are there, and the languages on their way.
 * @type {Map<string, Texts>}
 */
const tables = new Map([['en', ENGLISH]]);
/** @type {Map<string, Promise<void>>} */
const coming = new Map();

/**
 * The nearest `lang`, out through the shadow roots that a node is in, as a page's own text has it.
 * @param {Element} node
 * @returns {string}
 */
function tagOf(node) {
  const near = node.closest('[lang]');
  if (near) return (near.getAttribute('lang') ?? '').toLowerCase().split('-')[0];
  const root = node.getRootNode();
  return root instanceof ShadowRoot ? tagOf(root.host) : '';
}

/**
 * The table for a node, as far as it is there: English until then.
 * @param {Element} node
 */
export function textsFor(node) {
  return tables.get(tagOf(node)) ?? ENGLISH;
}

/**
 * Null, or, where a node's language has to be fetched first, what resolves when it is there or cannot be had.
 * @param {Element} node
 */
export function textsComing(node) {
  const tag = tagOf(node);
  if (tables.has(tag) || !Object.hasOwn(OTHERS, tag)) return null;
  const own = coming.get(tag) ?? OTHERS[tag]().then(
    ([view, element]) => void tables.set(tag, wordsOf(tag, view.view, element.element)),
    () => void tables.set(tag, ENGLISH),
  );
  coming.set(tag, own);
  return own;
}
