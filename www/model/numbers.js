// The engine's numbers in their places: `data-model` names a number by its path, and rows of tables name what they show.

import { make } from '../base/dom.js';

/**
 * What the engine computed, as it stands in model.json.
 * @typedef {typeof import('../model.json')} Model
 */

/**
 * The value at a path such as `beam.tube.2.kvp`, or `bends[gauge=g22][medium=gel].at_80_mm`: a bracket picks the entry of a list.
 * @param {unknown} model
 * @param {string} path
 * @returns {any}
 */
export function at(model, path) {
  let value = /** @type {any} */ (model);
  for (const [step] of path.matchAll(/[^.[\]]+=[^\]]+|[^.[\]]+/g)) {
    const [key, wanted] = step.split('=');
    value = wanted === undefined ? value?.[key] : [value].flat().filter((entry) => String(entry?.[key]) === wanted);
    if (Array.isArray(value) && wanted !== undefined && value.length === 1) value = value[0];
  }
  return value;
}

/**
 * A number as it is read: a true minus, and as many digits as are asked for.
 * @param {unknown} value
 * @param {string | number} [digits]
 */
export function shown(value, digits) {
  if (value === null || value === undefined || (typeof value === 'number' && !Number.isFinite(value))) return '–';
  if (typeof value !== 'number') return String(value);
  const text = digits === undefined ? String(value) : value.toFixed(Number(digits));
  return text.replace(/^-/, '−').replace(/^−(0\.?0*)$/, '$1');
}

const cell = (/** @type {string} */ text, /** @type {'td' | 'th'} */ name = 'td') => make(name, {}, text);

/**
 * Fills a row behind its heading with a list of numbers.
 * @param {Element} row
 * @param {readonly unknown[]} values
 * @param {string | number} [digits]
 */
function fillRow(row, values, digits) {
  row.querySelectorAll('td.filled').forEach((old) => old.remove());
  for (const value of values) {
    const td = cell(shown(value, digits));
    td.className = 'filled';
    row.append(td);
  }
}

/** @type {(selector: string) => NodeListOf<HTMLElement>} */
const all = (selector) => document.querySelectorAll(selector);

/**
 * Every placeholder and every row of the page.
 * @param {Model} model
 */
export function fillNumbers(model) {
  for (const place of all('[data-model]')) place.textContent = shown(at(model, place.dataset.model ?? ''), place.dataset.digits);
  for (const row of all('tr[data-bone]')) {
    const bone = model.bones.rows.find((r) => r.name === row.dataset.bone);
    const values = at(bone, row.dataset.of ?? '') ?? model.bones.levels.map(() => null);
    fillRow(row, values, 1);
  }
  for (const row of all('tr[data-each]')) {
    const { each = '', take = '' } = row.dataset;
    fillRow(row, at(model, each).map((/** @type {unknown} */ entry) => at(entry, take)), row.dataset.digits);
  }
  for (const body of all('tbody[data-rows]')) fillBody(body, [at(model, body.dataset.rows ?? '')].flat());
}

/** A cell with more letters than this gets room, so that a narrow screen does not break it into single words. */
const SENTENCE = 24;

/**
 * A row an entry; `data-columns` names what each column takes, `name:digits`. Words stand to the left, numbers to the right.
 * @param {HTMLElement} body
 * @param {unknown[]} entries
 */
function fillBody(body, entries) {
  const columns = (body.dataset.columns ?? '').split(' ').map((column) => column.split(':'));
  const looks = columns.map(([path]) => {
    const lengths = entries.map((entry) => at(entry, path)).filter((value) => typeof value === 'string').map((words) => words.length);
    return lengths.length ? (Math.max(...lengths) > SENTENCE ? 'words sentence' : 'words') : '';
  });
  body.closest('table')?.querySelectorAll('thead th').forEach((heading, i) => (heading.className = looks[i]));
  body.replaceChildren(
    ...entries.map((entry) => {
      const row = document.createElement('tr');
      columns.forEach(([path, digits], i) => {
        const made = cell(shown(at(entry, path), digits).replaceAll('_', ' '), i === 0 ? 'th' : 'td');
        if (i === 0) made.setAttribute('scope', 'row');
        made.className = looks[i];
        row.append(made);
      });
      return row;
    }),
  );
}
