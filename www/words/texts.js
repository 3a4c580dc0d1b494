// The page's sentences, and what puts them into its skeleton.

import { texts } from './page.js';

export { texts } from './page.js';

/** Fills every element that carries data-text (content) or data-label (aria-label) with its string of a table; `wanted(path)`: which ones. */
export function fillTexts(root, table = texts, wanted = () => true) {
  const carriers = (name) => [...root.querySelectorAll(`[data-${name}]`)].filter((element) => wanted(element.dataset[name]));
  for (const element of carriers('text')) element.textContent = lookUp(table, element.dataset.text);
  for (const element of carriers('label')) element.setAttribute('aria-label', lookUp(table, element.dataset.label));
}

function lookUp(table, path) {
  const found = path.split('.').reduce((part, key) => part?.[key], table);
  if (typeof found !== 'string') throw new Error(`no text '${path}'`);
  return found;
}
