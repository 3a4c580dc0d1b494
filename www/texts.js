// The one place that picks a language: every module asks here, so another language is one more file in texts/.
import { texts as en } from './texts/en.js';

export const texts = en;

/** Fills every element that carries data-text (content) or data-label (aria-label) with its string. */
export function fillTexts(root) {
  for (const element of root.querySelectorAll('[data-text]')) element.textContent = lookUp(element.dataset.text);
  for (const element of root.querySelectorAll('[data-label]')) element.setAttribute('aria-label', lookUp(element.dataset.label));
}

function lookUp(path) {
  const found = path.split('.').reduce((table, key) => table?.[key], texts);
  if (typeof found !== 'string') throw new Error(`no text '${path}'`);
  return found;
}
