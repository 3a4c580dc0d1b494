// The language of an element: the nearest `lang` around it that there are texts for, else English. English is here from the start;
// another language is fetched when an element first asks for it.

import { element as enElement } from '../pkg/texts/en/element.js';
import { view as enView } from '../pkg/texts/en/view.js';
import { sayer } from '../words/sentences.js';
import { elementWords } from '../words/element.js';

const OTHERS = {
  de: () => Promise.all([import('../pkg/texts/de/view.js'), import('../pkg/texts/de/element.js')]),
  es: () => Promise.all([import('../pkg/texts/es/view.js'), import('../pkg/texts/es/element.js')]),
};

const wordsOf = (tag, view, element) => elementWords(sayer(tag, view, enView), sayer(tag, element, enElement));
/** The tables that are there, and the languages on their way. */
const tables = { en: wordsOf('en', enView, enElement) };
const coming = {};

/** The table of English. */
export const ENGLISH = tables.en;

const has = (table, tag) => Object.hasOwn(table, tag);

/** The nearest `lang`, out through the shadow roots that a node is in, as a page's own text has it. */
function tagOf(node) {
  const near = node.closest('[lang]');
  if (near) return near.getAttribute('lang').toLowerCase().split('-')[0];
  const { host } = node.getRootNode();
  return host ? tagOf(host) : '';
}

/** The table for a node, as far as it is there: English until then. */
export function textsFor(node) {
  const tag = tagOf(node);
  return has(tables, tag) ? tables[tag] : tables.en;
}

/** Null, or, where a node's language has to be fetched first, what resolves when it is there or cannot be had. */
export function textsComing(node) {
  const tag = tagOf(node);
  if (has(tables, tag) || !has(OTHERS, tag)) return null;
  coming[tag] ??= OTHERS[tag]().then(
    ([view, element]) => (tables[tag] = wordsOf(tag, view.view, element.element)),
    () => (tables[tag] = tables.en),
  );
  return coming[tag];
}
