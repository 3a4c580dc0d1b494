// A view's criteria from the engine's report: one row each, and one for the whole.

import { make, say } from '../base/dom.js';

/** The view of that name in a report, if it is scored at this level. */
export const viewOf = (report, name) => report?.views.find((v) => v.view === name);

/** The criteria that make a view, as the report has them. */
export const criteriaOf = (report, view) => view.criteria.map((id) => report.criteria.find((c) => c.id === id)).filter(Boolean);

/** A name, a value, a bar and a word for a score. `words` is the `checks` table of the texts. */
export function scoreRow(id, words) {
  const name = make('span', { class: 'check-name' });
  const value = make('span', { class: 'check-value', id: `${id}-value` });
  const bar = make('span', { class: 'bar', 'aria-hidden': 'true' }, make('span', { class: 'bar-fill' }));
  const word = make('span', { class: 'check-word', id: `${id}-word` });
  const element = make('div', { class: `check ${id === 'total' ? 'total' : ''}`, id: `check-${id}` }, make('div', { class: 'check-line' }, name, value), bar, make('div', { class: 'check-line' }, word));
  return {
    element,
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

/** One row a criterion in `list`; `rows` (a Map) keeps them from one time to the next. */
export function showCriteria(list, rows, criteria, words) {
  for (const criterion of criteria) {
    if (!rows.has(criterion.id)) {
      const row = scoreRow(criterion.id, words);
      row.advice = make('p', { class: 'advice' });
      row.tolerance = make('span', { class: 'check-tolerance' });
      row.element.lastChild.append(row.tolerance);
      row.element.append(row.advice);
      row.item = make('li', {}, row.element);
      list.append(row.item);
      rows.set(criterion.id, row);
    }
    const row = rows.get(criterion.id);
    row.show(words.criterion(criterion), words.value(criterion), criterion.score);
    say(row.tolerance, words.tolerance(criterion));
    say(row.advice, words.sentence(criterion));
  }
  // In the order of the view; moved only when it differs, so that a screen reader keeps its place.
  const wanted = criteria.map((c) => rows.get(c.id).item);
  const standing = [...list.children].filter((item) => wanted.includes(item));
  if (wanted.some((item, i) => item !== standing[i])) list.append(...wanted);
  const shown = new Set(criteria.map((c) => c.id));
  for (const [id, row] of rows) row.item.hidden = !shown.has(id);
}
