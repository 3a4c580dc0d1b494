// The page's sentences, and what puts them into its skeleton.

import { texts } from './page.js';

export { texts } from './page.js';

/**
 * Fills every element that carries data-text (content) or data-label (aria-label) with its string of a table; `wanted(path)`: which ones.
 * @param {ParentNode} root
 * @param {object} table
 * @param {(path: string) => boolean} wanted
 */
export function fillTexts(root, table = texts, wanted = () => true) {
  const carriers = (/** @type {string} */ name) =>
    [...root.querySelectorAll(`[data-${name}]`)].map((element) => /** @type {const} */ ([element, element.getAttribute(`data-${name}`) ?? ''])).filter(([, path]) => wanted(path));
  for (const [element, path] of carriers('text')) element.textContent = lookUp(table, path);
  for (const [element, path] of carriers('label')) element.setAttribute('aria-label', lookUp(table, path));
}

/**
 * @param {object} table
 * @param {string} path
 */
function lookUp(table, path) {
  /** @type {unknown} */
  let found = table;
  for (const key of path.split('.')) found = typeof found === 'object' && found !== null ? /** @type {Record<string, unknown>} */ (found)[key] : undefined;
  if (typeof found !== 'string') throw new Error(`no text '${path}'`);
  return found;
}
