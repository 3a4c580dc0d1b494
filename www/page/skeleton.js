// The page's skeleton: the HTML of index.html gets its texts.

import { fillTexts, texts } from '../words/texts.js';

/** Puts the texts into the page's skeleton, all but the injection's, which come later (words/injection.js). */
export function fillPage() {
  document.documentElement.lang = texts.language;
  document.title = texts.title;
  fillTexts(document, texts, (path) => !path.startsWith('needle.'));
}

/** Tells the styles how wide the page's scrollbar is: 100vw counts it in, and the film would push the page beyond its window. */
export function measureScrollbar() {
  const root = document.documentElement;
  new ResizeObserver(() => root.style.setProperty('--bar', `${innerWidth - root.clientWidth}px`)).observe(root);
}

/** Keeps the height of the caution at the foot of the window as `--foot`: in some languages it takes a line more, and what stands over it has to know. */
export function measureCaution() {
  const caution = document.querySelector('.caution');
  if (!(caution instanceof HTMLElement)) return;
  new ResizeObserver(() => document.documentElement.style.setProperty('--foot', `${caution.offsetHeight}px`)).observe(caution);
}
