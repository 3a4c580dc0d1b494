// The list of keys, by place, as a dialog: made of the tables that the keys are handled by.

import { CROSS_MM, HUB_TENTHS } from '../injection/aim.js';
import { button, make, within } from '../base/dom.js';
import { ROLL_DEG } from '../injection/hub.js';
import { lines, NEEDLE_KEYS, PAGE_KEYS, PICTURE_KEYS, PICTURE_STEPS_DEG, singleKeys, UNDO_KEYS, useSingleKeys, VIEW_KEYS } from '../controls/keys.js';
import { SLIDER_KEYS_DEG } from '../controls/turn.js';
import { help } from '../words/help.js';

const t = help.keys;

/** @typedef {[keys: string[], what: string]} Line keys as `event.key` has them */


/**
 * The places where keys hold, with their lines.
 * @returns {[place: keyof typeof t.places, lines: Line[]][]}
 */
function places() {
  /**
   * @param {readonly (readonly [key: string, name: string, ...unknown[]])[]} table
   * @param {object} words
   */
  const single = (table, words) => lines(table).map(([name, keys]) => /** @type {Line} */ ([keys, /** @type {Record<string, string>} */ (words)[name]]));
  const arrows = Object.keys(PICTURE_KEYS);
  const sliders = lines(Object.entries(SLIDER_KEYS_DEG).map(([key, deg]) => /** @type {const} */ ([key, Math.abs(deg)])));
  return [
    ['page', single(PAGE_KEYS, t.page)],
    ['sliders', [...sliders.map(([deg, keys]) => /** @type {Line} */ ([keys, /Arrow/.test(keys[0]) ? t.sliders.step(deg) : t.sliders.page(deg)])), [['Home', 'End'], t.sliders.ends]]],
    ['picture', [[arrows, t.picture.turn(PICTURE_STEPS_DEG.step, PICTURE_STEPS_DEG.coarse)], [arrows, t.picture.hub(HUB_TENTHS.step / 10, HUB_TENTHS.fine / 10)]]],
    ['views', single(VIEW_KEYS, t.views)],
    ['needle', [...single(NEEDLE_KEYS, t.needle), ...single(UNDO_KEYS, t.needle).map(([keys, what]) => /** @type {Line} */ ([keys.map(t.command), what]))]],
    ['hub', [[arrows, t.hub.turn(ROLL_DEG.step, ROLL_DEG.fine)]]],
    ['mark', [[arrows, t.mark.cross(CROSS_MM.step, CROSS_MM.fine)], [['Enter'], t.mark.set], [['Escape'], t.mark.leave]]],
    ['naming', [[arrows, t.naming.step], [['Enter'], t.naming.answer]]],
    ['beam', [[[' ', 'Enter'], t.beam.hold], [['Escape'], t.beam.stop]]],
    ['menus', [[['Escape'], t.menus.escape]]],
  ];
}

/** @type {HTMLDialogElement | null} */
let dialog = null;

/**
 * Shows it. Escape and its button close it, and the focus goes back to where it was; to the button of a sheet if it was in one, which closes
 * when a dialog opens.
 */
export function showKeys() {
  dialog ??= built();
  const use = within(dialog, '#single-keys', HTMLInputElement);
  use.checked = singleKeys();
  if (dialog.open) return;
  const sheet = document.activeElement?.closest('[popover]');
  dialog.addEventListener('close', () => sheet && /** @type {HTMLElement | null} */ (document.querySelector(`[popovertarget="${sheet.id}"]`))?.focus(), { once: true });
  dialog.showModal();
}

function built() {
  const use = make('input', { type: 'checkbox', id: 'single-keys', 'aria-describedby': 'single-keys-hint' });
  use.addEventListener('change', () => useSingleKeys(use.checked));
  const made = make('dialog', { class: 'keymap', id: 'keymap', 'aria-labelledby': 'keymap-heading' },
    make('div', { class: 'keymap-head' }, make('h2', { id: 'keymap-heading', tabindex: -1, autofocus: true }, t.heading), button(help.close, () => made.close(), { id: 'keymap-close', class: 'button plain' })),
    make('div', { class: 'keymap-use' }, make('label', { class: 'tick' }, use, make('span', {}, t.use)), make('p', { class: 'quiet', id: 'single-keys-hint' }, t.useHint)),
    make('div', { class: 'keymap-places' }, ...places().map(place)));
  document.body.append(made);
  return made;
}

/** @param {ReturnType<typeof places>[number]} place */
function place([name, rows]) {
  const section = make('section', { class: 'keymap-place' }, make('h3', {}, t.places[name]), make('dl', {}, ...rows.map(([keys, what]) => {
    const names = keys.flatMap((key, i) => [...(i ? [i === keys.length - 1 ? t.or : ', '] : []), make('kbd', {}, t.of(key))]);
    return make('div', {}, make('dt', {}, ...names), make('dd', {}, what));
  })));
  if (name === 'hub') section.append(make('p', { class: 'quiet' }, t.hub.wheel));
  return section;
}
