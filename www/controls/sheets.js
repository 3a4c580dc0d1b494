// What opens when it is asked for: sheets (popovers, which the browser opens, closes by Escape and gives the keys back from), and the drawing of
// the C-arm made large. On a narrow screen the choice of activity moves into the menu.

import { byId } from '../base/dom.js';

/** Sets them up. */
export function sheets() {
  for (const sheet of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('.sheet'))) {
    // Keys go into what has opened; the caution at the foot stays in sight under it.
    sheet.tabIndex = -1;
    sheet.setAttribute('autofocus', '');
  }
  const [gantry, opener, close] = ['gantry', 'gantry-open', 'gantry-close'].map((id) => byId(id));
  const large = (/** @type {boolean} */ on) => {
    const inside = gantry.contains(document.activeElement);
    gantry.toggleAttribute('data-large', on);
    opener.setAttribute('aria-expanded', String(on));
    close.hidden = !on;
    if (on) close.focus({ preventScroll: true });
    else if (inside) opener.focus({ preventScroll: true });
  };
  opener.addEventListener('click', () => large(!gantry.hasAttribute('data-large')));
  close.addEventListener('click', () => large(false));
  document.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || event.defaultPrevented || !gantry.hasAttribute('data-large') || document.querySelector('[popover]:popover-open, dialog[open]')) return;
    event.preventDefault();
    large(false);
  });
  const narrow = matchMedia('(max-width: 519px)');
  const stand = () => byId(narrow.matches ? 'activity-menu' : 'activity-place').append(byId('activity'));
  narrow.addEventListener('change', stand);
  stand();
}
