// A view's criteria from the engine's report: one row each, and one for the whole.

import { make, say } from '../base/dom.js';

/**
 * @import { Criterion, Report, ViewScore } from '../pkg/values.js'
 *
 * The `checks` table of the texts, as far as it goes with rows.
 * @typedef {{ word: (score: number) => string, criterion: (c: Criterion) => string, value: (c: Criterion) => string, tolerance: (c: Criterion) => string, sentence: (c: Criterion) => string }} CheckWords
 *
 * A row of a criterion, with its item in the list.
 * @typedef {ReturnType<typeof scoreRow> & { advice: HTMLElement, tolerance: HTMLElement, item: HTMLElement }} CriterionRow
 */

/**
 * The view of that name in a report, if it is scored at this level.
 * @param {Report | null | undefined} report
 * @param {string} name
 */
export const viewOf = (report, name) => report?.views.find((v) => v.view === name);

/**
 * The criteria that make a view, as the report has them.
 * @param {Report} report
 * @param {ViewScore} view
 */
export const criteriaOf = (report, view) => view.criteria.flatMap((id) => report.criteria.find((c) => c.id === id) ?? []);

/**
 * The first criterion without full marks, of those wanted and scored, in the order wanted; or null.
 * @param {Report} report
 * @param {readonly string[]} wanted
 */
export const unmetOf = (report, wanted) => wanted.flatMap((id) => report.criteria.find((c) => c.id === id) ?? []).find((c) => c.score < 1) ?? null;

/**
 * A name, a value, a bar and a word for a score.
 * @param {string} id
 * @param {Pick<CheckWords, 'word'>} words
 */
export function scoreRow(id, words) {
  const name = make('span', { class: 'check-name' });
  const value = make('span', { class: 'check-value', id: `${id}-value` });
  const bar = make('span', { class: 'bar', 'aria-hidden': 'true' }, make('span', { class: 'bar-fill' }));
  const word = make('span', { class: 'check-word', id: `${id}-word` });
  const lastLine = make('div', { class: 'check-line' }, word);
  const element = make('div', { class: `check ${id === 'total' ? 'total' : ''}`, id: `check-${id}` }, make('div', { class: 'check-line' }, name, value), bar, lastLine);
  return {
    element,
    lastLine,
    /**
     * @param {string} nameText
     * @param {string} valueText
     * @param {number} score
     */
    show(nameText, valueText, score) {
      say(name, nameText);
      say(value, valueText);
      say(word, words.word(score));
      bar.style.setProperty('--score', String(Math.max(0, Math.min(1, score))));
      element.classList.toggle('full', score >= 1);
      element.dataset.score = String(score);
    },
  };
}

/**
 * A row with what is allowed and what to do, as an item of a list.
 * @param {string} id
 * @param {Pick<CheckWords, 'word'>} words
 * @returns {CriterionRow}
 */
function criterionRow(id, words) {
  const row = scoreRow(id, words);
  const advice = make('p', { class: 'advice' });
  const tolerance = make('span', { class: 'check-tolerance' });
  row.lastLine.append(tolerance);
  row.element.append(advice);
  return { ...row, advice, tolerance, item: make('li', {}, row.element) };
}

/**
 * One row a criterion in `list`; `rows` keeps them from one time to the next.
 * @param {HTMLElement} list
 * @param {Map<string, CriterionRow>} rows
 * @param {Criterion[]} criteria
 * @param {CheckWords} words
 */
export function showCriteria(list, rows, criteria, words) {
  for (const criterion of criteria) {
    const row = rows.get(criterion.id) ?? criterionRow(criterion.id, words);
    if (!rows.has(criterion.id)) list.append(row.item);
    rows.set(criterion.id, row);
    row.show(words.criterion(criterion), words.value(criterion), criterion.score);
    say(row.tolerance, words.tolerance(criterion));
    say(row.advice, words.sentence(criterion));
  }
  // In the order of the view; moved only when it differs, so that a screen reader keeps its place.
  /** @type {Element[]} */
  const wanted = criteria.flatMap((c) => rows.get(c.id)?.item ?? []);
  const standing = [...list.children].filter((item) => wanted.includes(item));
  if (wanted.some((item, i) => item !== standing[i])) list.append(...wanted);
  /** @type {Set<string>} */
  const shown = new Set(criteria.map((c) => c.id));
  for (const [id, row] of rows) row.item.hidden = !shown.has(id);
}
