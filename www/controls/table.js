// The table: moves it under the beam across, along and up or down, and says where it stands. Loaded after the first picture.

import { tenth } from '../base/tenth.js';
import { make } from '../base/dom.js';
import { gantryLink as t } from '../words/gantry.js';

/**
 * @import { App } from '../state/page-state.js'
 * @import { Place } from '../state/positioning.js'
 *
 * @typedef {'table_x_mm' | 'table_y_mm' | 'table_z_mm'} TableKey
 * @typedef {{ [Key in TableKey]: number }} Table
 */

const STEP_MM = 5;

/**
 * The six ways: name, what of the state it is, and which sign.
 * @type {readonly (readonly ['left' | 'right' | 'head' | 'feet' | 'up' | 'down', TableKey, 1 | -1])[]}
 */
export const WAYS = [
  ['left', 'table_x_mm', 1], ['right', 'table_x_mm', -1], ['head', 'table_z_mm', 1], ['feet', 'table_z_mm', -1], ['up', 'table_y_mm', 1], ['down', 'table_y_mm', -1],
];

/**
 * Where the table stood at the start: where a lesson asks to bring the target to the middle, not at the isocentre.
 * @param {Pick<App, 'lesson'>} app
 * @returns {Table}
 */
export function tableStart({ lesson }) {
  const [x, y, z] = lesson?.drawn.case.off_centre_mm_tenths ?? [0, 0, 0];
  return { table_x_mm: x / 10, table_y_mm: y / 10, table_z_mm: z / 10 };
}

/**
 * Where it stands against the start, so that the numbers do not tell where the middle is.
 * @param {Pick<App, 'lesson'>} app
 * @param {Place} state
 */
export function tableWords(app, state) {
  const from = tableStart(app);
  const by = (/** @type {TableKey} */ key) => tenth(state[key] - from[key]);
  const [x, y, z] = [by('table_x_mm'), by('table_y_mm'), by('table_z_mm')];
  return t.table.words(x, y, z, Object.values(from).some((mm) => mm !== 0));
}

/**
 * Moves it by so much.
 * @param {App} app
 * @param {string} way one of `WAYS`
 * @param {number} [mm]
 */
export function moveTable(app, way, mm = STEP_MM) {
  const row = WAYS.find(([name]) => name === way);
  if (!row) return;
  const [, key, sign] = row;
  const [low, high] = app.catalogue.range.table_mm;
  app.change({ [key]: Math.min(high, Math.max(low, tenth(app.state[key] + sign * mm))) });
}

/**
 * A button each way, 5 mm a press.
 * @param {(way: string) => void} move
 * @param {readonly (typeof WAYS)[number][0][]} [order]
 */
export const tableButtons = (move, order = WAYS.map(([way]) => way)) => order.map((way) => {
  const element = make('button', { type: 'button', class: 'nudge' }, make('span', { class: 'unseen' }, `${t.table.by} `), t.table[way]);
  element.addEventListener('click', () => move(way));
  return element;
});
