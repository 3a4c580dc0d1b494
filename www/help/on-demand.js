// What the page has of help at first: the line for a first visit. Tour, list of keys and description are each loaded when first used.

import { late } from '../base/late.js';
import { byId } from '../base/dom.js';
import { reason } from '../engine/room.js';
import { keep } from '../base/storage.js';
import { texts } from '../words/texts.js';

/**
 * @import { App } from '../state/page-state.js'
 * @import { InjectionOnDemand } from '../injection/on-demand.js'
 * @import { Record } from '../exposure/record.js'
 * @import { viewReview } from '../views/review.js'
 *
 * What help knows of the page: `held()` whether a hand turns just now.
 * @typedef {{
 *   notice: (sentences: string[]) => void, needle: InjectionOnDemand, review: ReturnType<typeof viewReview>, record: () => Record, held: () => boolean,
 * }} Page
 */

/**
 * Returns `{ keys(), read(), tour(), words() }`; `words()` after everything that shows.
 * @param {App} app
 * @param {Page} page
 */
export function helpOnDemand(app, page) {
  const menu = byId('menu');
  const welcome = byId('welcome');
  /** @type {ReturnType<typeof import('./description.js').description> | null} */
  let description = null;
  /** @type {ReturnType<typeof import('./tour.js').tour> | null} */
  let looking = null;
  /** @type {ReturnType<typeof setTimeout> | null} */
  let describingSoon = null;

  const dismiss = () => {
    welcome.hidden = true;
    keep('welcome', 'seen');
  };

  /**
   * Loads a part and uses it; a part that does not come is told, and tried again the next time.
   * @template M
   * @param {string} name
   * @param {() => Promise<M>} load
   * @param {(module: M) => void} use
   */
  async function through(name, load, use) {
    try {
      await use(await load());
    } catch (error) {
      page.notice([texts.notice.noPart(name, reason(error))]);
    }
  }

  /** From a button in the menu: the menu closes, and what comes after goes back to its button. */
  const fromMenu = (/** @type {() => void} */ act) => () => {
    menu.hidePopover();
    byId('menu-button').focus({ preventScroll: true });
    act();
  };

  const keys = () => through(texts.menu.keys, () => late(() => import('./keymap.js'), new URL('./keymap.js', import.meta.url)), (m) => m.showKeys());
  const tour = () => through(texts.menu.tour, () => late(() => import('./tour.js'), new URL('./tour.js', import.meta.url)), (m) => (looking ??= m.tour(app)).begin());
  const describing = () => through(texts.picture.description, () => late(() => import('./description.js'), new URL('./description.js', import.meta.url)), (m) => void (description ??= m.description(app, page)));

  async function read() {
    await describing();
    description?.read();
  }

  byId('keys-open').addEventListener('click', fromMenu(keys));
  byId('needle-keys').addEventListener('click', keys);
  byId('tour-open').addEventListener('click', fromMenu(tour));
  byId('read-open').addEventListener('click', fromMenu(async () => {
    await describing();
    description?.show();
  }));
  byId('welcome-tour').addEventListener('click', () => {
    dismiss();
    tour();
  });
  byId('welcome-close').addEventListener('click', () => {
    dismiss();
    byId('picture').focus({ preventScroll: true });
  });
  byId('description').addEventListener('toggle', () => byId('description', HTMLDetailsElement).open && describing());

  return {
    keys,
    read,
    tour,
    words() {
      // After the first picture, so that what changes is told from the first turn on.
      if (app.report) describingSoon ??= setTimeout(describing);
      description?.update();
      looking?.update();
    },
  };
}
