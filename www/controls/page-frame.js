// What the teacher's pages and those of practice have in common: texts in their places, theme, messages.

import { themeControl } from './case.js';
import { button, byId, say } from '../base/dom.js';
import { reason } from '../engine/room.js';
import { storageWorks } from '../base/storage.js';
import { fillTexts } from '../words/texts.js';
import { teach } from '../words/teach.js';

/**
 * Dresses the page. Returns `notice(sentence, { again })`, which shows a message until it is closed, with a button to load the page again where that helps.
 * @param {string} title
 */
export function beginPage(title) {
  document.documentElement.lang = teach.language;
  document.title = title;
  fillTexts(document, teach);
  const notice = (/** @type {string} */ sentence, { again = false } = {}) => {
    say(byId('notice-text'), sentence);
    document.getElementById('notice-again')?.remove();
    // What is kept in the browser is there after it; what was given to the page has to be given again.
    if (again) byId('notice-text').after(button(teach.again, () => location.reload(), { id: 'notice-again', class: 'button' }));
    byId('notice').hidden = false;
  };
  byId('notice-close').addEventListener('click', () => (byId('notice').hidden = true));
  themeControl((kept) => kept || notice(teach.noStorage));
  if (!storageWorks()) notice(teach.noStorage);
  return notice;
}

/**
 * What the engine says against a text; a trap (which no text should give) is told as such.
 * @param {unknown} error
 */
export function complaint(error) {
  return error instanceof WebAssembly.RuntimeError ? teach.stopped(reason(error)) : String(/** @type {{ message?: unknown } | null} */ (error)?.message ?? error);
}
