// The keys of the page, as tables: what listens and what the list of keys shows (help/keymap.js) are made of the same rows.
// Single keys can be switched off; they are silent where text is typed, in a list that has the focus, and in a dialog.

import { keep, setting } from '../base/storage.js';
import { tenth } from '../base/tenth.js';

/**
 * @import { ViewKind } from '../pkg/values.js'
 * @import { App } from '../state/page-state.js'
 *
 * A row: the key, the name of what it does in the texts, and the doing. Rows of one name are one line of the list.
 * @template Acts
 * @typedef {[key: string, name: string, does: (act: Acts, shift: boolean) => void]} Row
 */

/**
 * @typedef {{ push: (mm: number) => void, roll: (deg: number) => void, view: (view: ViewKind) => void, mark: () => void, hint: () => void }} NeedleActs
 * @typedef {{ pick: (view: ViewKind) => void, check: () => void }} ViewActs
 * @typedef {{ keys: () => void, read: () => void, zoom: (way: number) => void, through: () => void, table: (way: string) => void }} PageActs
 * @typedef {{ undo: () => void, redo: () => void }} UndoActs
 */

/**
 * For the needle in hand.
 * @type {Row<NeedleActs>[]}
 */
export const NEEDLE_KEYS = [
  ['f', 'advance', (act, shift) => act.push(shift ? 5 : 1)],
  ['g', 'advanceHalf', (act) => act.push(0.5)],
  ['b', 'withdraw', (act, shift) => act.push(shift ? -5 : -1)],
  ['v', 'withdrawHalf', (act) => act.push(-0.5)],
  ['q', 'roll', (act, shift) => act.roll(shift ? -1 : -15)],
  ['e', 'roll', (act, shift) => act.roll(shift ? 1 : 15)],
  ['t', 'half', (act) => act.roll(180)],
  ['p', 'arm', (act) => act.view('true_ap')],
  ['l', 'arm', (act) => act.view('lateral')],
  ['o', 'arm', (act) => act.view('oblique')],
  ['m', 'mark', (act) => act.mark()],
  ['h', 'hint', (act) => act.hint()],
];

/**
 * For the views.
 * @type {Row<ViewActs>[]}
 */
export const VIEW_KEYS = [
  ['p', 'pick', (act) => act.pick('true_ap')],
  ['o', 'pick', (act) => act.pick('oblique')],
  ['l', 'pick', (act) => act.pick('lateral')],
  ['c', 'check', (act) => act.check()],
];

/**
 * Everywhere on the page.
 * @type {Row<PageActs>[]}
 */
export const PAGE_KEYS = [
  ['?', 'keys', (act) => act.keys()],
  ['r', 'read', (act) => act.read()],
  ['+', 'zoom', (act) => act.zoom(1)],
  ['-', 'zoom', (act) => act.zoom(-1)],
  ['0', 'zoom', (act) => act.zoom(0)],
  ['x', 'through', (act) => act.through()],
  ['a', 'table', (act) => act.table('left')],
  ['d', 'table', (act) => act.table('right')],
  ['w', 'table', (act) => act.table('head')],
  ['s', 'table', (act) => act.table('feet')],
  ['u', 'table', (act) => act.table('up')],
  ['j', 'table', (act) => act.table('down')],
];

/**
 * With Ctrl or the command key, in an injection; these are no single keys.
 * @type {Row<UndoActs>[]}
 */
export const UNDO_KEYS = [
  ['z', 'undo', (act, shift) => (shift ? act.redo() : act.undo())],
  ['y', 'redo', (act) => act.redo()],
];

/** Arrows on the picture while the C-arm is what they turn: the receptor goes the way of the arrow. */
export const PICTURE_STEPS_DEG = { step: 1, coarse: 5 };
/** @type {Record<string, ['oblique_deg' | 'tilt_deg', number]>} */
export const PICTURE_KEYS = { ArrowLeft: ['oblique_deg', 1], ArrowRight: ['oblique_deg', -1], ArrowUp: ['tilt_deg', 1], ArrowDown: ['tilt_deg', -1] };

/** @type {{ on: boolean | null }} */
const single = { on: null };

/** Whether single keys are wanted. */
export const singleKeys = () => (single.on ??= setting('single-keys', ['on', 'off']) === 'on');

/**
 * Wants them or not, from now on. Returns whether the browser keeps it.
 * @param {boolean} on
 */
export function useSingleKeys(on) {
  single.on = on;
  return keep('single-keys', on ? 'on' : 'off');
}

/**
 * Rows of a table that are one line of the list: `[[name, keys]]`.
 * @template {string | number} Name
 * @param {readonly (readonly [key: string, name: Name, ...unknown[]])[]} table
 */
export function lines(table) {
  /** @type {Map<Name, string[]>} */
  const byName = new Map();
  for (const [key, name] of table) byName.set(name, [...(byName.get(name) ?? []), key]);
  return [...byName];
}

/**
 * A table with what its rows act on: what a key does, or null where none of the rows has it.
 * @template Acts
 * @param {readonly Row<Acts>[]} table
 * @param {Acts | null} act
 * @returns {(key: string) => ((shift: boolean) => void) | null}
 */
export const acting = (table, act) => (key) => {
  const row = act && table.find(([own]) => own === key);
  return row ? (shift) => row[2](act, shift) : null;
};

/**
 * Listens on the whole page. `tables()` gives those that hold now, as `acting` joins them; `undo()` what takes back, or null.
 * @param {() => ReturnType<typeof acting>[]} tables
 * @param {() => UndoActs | null} undo
 */
export function listen(tables, undo) {
  document.addEventListener('keydown', (event) => {
    if (event.altKey || event.defaultPrevented) return;
    if (event.target instanceof Element && event.target.closest('dialog, select, textarea, input:not([type=radio], [type=checkbox], [type=range])')) return;
    const key = event.key.toLowerCase();
    const command = event.ctrlKey || event.metaKey;
    if (!command && !singleKeys()) return;
    for (const of of command ? [acting(UNDO_KEYS, undo())] : tables()) {
      const does = of(key);
      if (!does) continue;
      event.preventDefault();
      return does(event.shiftKey);
    }
  });
}

/**
 * Arrows on the picture turn the C-arm, where `on()`.
 * @param {HTMLElement} film
 * @param {App} app
 * @param {() => boolean} on
 */
export function arrowsTurn(film, app, on) {
  film.addEventListener('keydown', (event) => {
    const row = PICTURE_KEYS[event.key];
    if (!row || event.target !== film || event.altKey || event.ctrlKey || event.metaKey || event.defaultPrevented || !on()) return;
    event.preventDefault();
    const [angle, way] = row;
    const [low, high] = app.catalogue.range[angle];
    const wanted = app.state[angle] + way * (event.shiftKey ? PICTURE_STEPS_DEG.coarse : PICTURE_STEPS_DEG.step);
    app.change({ [angle]: tenth(Math.min(high, Math.max(low, wanted))) });
  });
}
