// Picks an element's language: the nearest `lang` around it that there are texts for, else English. Another language is one more
// file in texts/ and one more entry here.

import { element as en } from '../texts/en-element.js';

const LANGUAGES = { en };

export function textsFor(node) {
  const asked = node.closest('[lang]')?.getAttribute('lang') ?? '';
  return LANGUAGES[asked.toLowerCase().split('-')[0]] ?? en;
}
