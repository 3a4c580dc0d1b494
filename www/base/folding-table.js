// A table whose rows become blocks on a narrow screen (`.folds` in style/teach.css): its roles are said in full, since a block is no row to a screen reader.

import { make } from './dom.js';

/**
 * Fills a table with columns by name and rows of text, the first cell the row's heading; returns the rows' elements.
 * @param {HTMLElement} table
 * @param {readonly string[]} columns
 * @param {readonly (readonly string[])[]} rows
 * @returns {HTMLTableRowElement[]}
 */
export function fillFolding(table, columns, rows) {
  const head = columns.map((name) => make('th', { scope: 'col', role: 'columnheader' }, name));
  const lines = rows.map(([first, ...others]) => make('tr', { role: 'row' },
    make('th', { scope: 'row', role: 'rowheader', 'data-name': columns[0] }, first),
    ...others.map((text, i) => make('td', { role: 'cell', 'data-name': columns[i + 1] }, text))));
  table.setAttribute('role', 'table');
  table.classList.add('folds');
  table.replaceChildren(make('thead', { role: 'rowgroup' }, make('tr', { role: 'row' }, ...head)), make('tbody', { role: 'rowgroup' }, ...lines));
  return lines;
}
