// The page's own skeleton: its elements by id, and its texts. What builds new elements is in dom.js.

import { fillTexts, texts } from './texts.js';

export { button, choices, make, say, segments } from './dom.js';

/** The element of that id; a missing one is a mistake in the page, said at once. */
export function byId(id) {
  const element = document.getElementById(id);
  if (!element) throw new Error(`the page has no #${id}`);
  return element;
}

/** Puts the texts into the page's skeleton. */
export function fillPage() {
  document.documentElement.lang = texts.language;
  document.title = texts.title;
  fillTexts(document);
}
