// What the page has of help at first: the line for a first visit. Tour, list of keys and description are each loaded when first used.

import { late } from '../base/late.js';
import { byId } from '../base/dom.js';
import { reason } from '../engine/room.js';
import { keep } from '../base/storage.js';
import { texts } from '../words/texts.js';

/**
 * `page`: `notice(sentences)`, `needle` from `injection`, `review`, `record()`, `held()` whether a hand turns just now. Returns
 * `{ keys(), read(), tour(), words() }`; `words()` after everything that shows.
 */
export function helpOnDemand(app, page) {
  const menu = byId('menu');
  const welcome = byId('welcome');
  let told = null;
  let looking = null;
  let telling = null;

  const dismiss = () => {
    welcome.hidden = true;
    keep('welcome', 'seen');
  };

  /** Loads a part and uses it; a part that does not come is told, and tried again the next time. */
  async function through(name, load, use) {
    try {
      await use(await load());
    } catch (error) {
      page.notice([texts.notice.noPart(name, reason(error))]);
    }
  }

  /** From a button in the menu: the menu closes, and what comes after goes back to its button. */
  const fromMenu = (act) => () => {
    menu.hidePopover();
    byId('menu-button').focus({ preventScroll: true });
    act();
  };

  const keys = () => through(texts.menu.keys, () => late(() => import('./keymap.js'), new URL('./keymap.js', import.meta.url)), (m) => m.showKeys());
  const tour = () => through(texts.menu.tour, () => late(() => import('./tour.js'), new URL('./tour.js', import.meta.url)), (m) => (looking ??= m.tour(app)).begin());
  const describing = () => through(texts.picture.description, () => late(() => import('./description.js'), new URL('./description.js', import.meta.url)), (m) => (told ??= m.description(app, page)));

  async function read() {
    await describing();
    told?.read();
  }

  byId('keys-open').addEventListener('click', fromMenu(keys));
  byId('needle-keys').addEventListener('click', keys);
  byId('tour-open').addEventListener('click', fromMenu(tour));
  byId('read-open').addEventListener('click', fromMenu(async () => {
    await describing();
    told?.show();
  }));
  byId('welcome-tour').addEventListener('click', () => {
    dismiss();
    tour();
  });
  byId('welcome-close').addEventListener('click', () => {
    dismiss();
    byId('picture').focus({ preventScroll: true });
  });
  byId('description').addEventListener('toggle', () => byId('description').open && describing());

  return {
    keys,
    read,
    tour,
    words() {
      // After the first picture, so that what changes is told from the first turn on.
      if (app.report) telling ??= setTimeout(describing);
      told?.update();
      looking?.update();
    },
  };
}
