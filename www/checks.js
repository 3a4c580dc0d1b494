// How close the view is: one row a criterion, from the engine's report and nothing else.

import { byId, make, say, segments } from './page.js';
import { texts } from './texts.js';

const VIEWS = ['true_ap', 'oblique', 'lateral'];

/** The view of that name in a report, if it is scored at this level. */
export const viewOf = (report, name) => report?.views.find((v) => v.view === name);

/** Builds the panel. Returns an update function `(state, report, revealed)`. */
export function checksPanel(app) {
  const body = byId('checks-body');
  const showView = segments(byId('views'), 'view', VIEWS.map((v) => [v, texts.checks.views[v]]), (view) => app.change({ view }));
  const total = scoreRow('total');
  const rows = new Map();
  const list = make('ul', { class: 'criteria' });
  const plain = make('p', { class: 'quiet' });
  const count = make('p', { class: 'quiet', id: 'check-count' });
  body.append(total.element, list, plain, count);
  const selfTest = byId('self-test');
  selfTest.addEventListener('change', () => app.change({ selfTest: selfTest.checked }));
  byId('check').addEventListener('click', () => app.check());
  byId('best').addEventListener('click', () => app.toggleBest());

  return (state, report, test) => {
    showView(state.view);
    selfTest.checked = state.selfTest;
    const view = viewOf(report, state.view);
    const open = Boolean(view) && (!state.selfTest || test.revealed);
    total.element.hidden = list.hidden = !open;
    plain.hidden = open;
    say(plain, !report ? texts.checks.none : !view ? texts.checks.notHere : texts.checks.hidden);
    count.hidden = !state.selfTest;
    say(count, texts.checks.count(test.used));
    if (open) {
      total.show(texts.checks.scoreLabel, texts.checks.score(view.score), view.score);
      showCriteria(list, rows, view.criteria.map((id) => report.criteria.find((c) => c.id === id)).filter(Boolean));
    }
    const check = byId('check');
    check.hidden = !state.selfTest;
    check.disabled = !view || test.revealed;
    const best = byId('best');
    const locked = state.selfTest && test.used === 0;
    say(best, state.ownView ? texts.checks.back : texts.checks.best);
    best.disabled = !view || locked;
    say(byId('best-note'), bestNote(state, view, locked));
  };
}

function bestNote(state, view, locked) {
  if (!state.ownView) return locked ? texts.checks.bestLocked : '';
  const short = view && !view.reached ? ` ${texts.checks.notReached}` : '';
  const words = state.byExposure ? texts.checks.standsAtBest : texts.checks.showingBest;
  return words(texts.checks.views[state.view]) + short;
}

/** A name, a value, a bar and a word for a score. */
function scoreRow(id) {
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
      say(word, texts.checks.word(score));
      bar.style.setProperty('--score', String(Math.max(0, Math.min(1, score))));
      element.classList.toggle('full', score >= 1);
      element.dataset.score = String(score);
    },
  };
}

function showCriteria(list, rows, criteria) {
  for (const criterion of criteria) {
    if (!rows.has(criterion.id)) {
      const row = scoreRow(criterion.id);
      row.advice = make('p', { class: 'advice' });
      row.tolerance = make('span', { class: 'check-tolerance' });
      row.element.lastChild.append(row.tolerance);
      row.element.append(row.advice);
      row.item = make('li', {}, row.element);
      list.append(row.item);
      rows.set(criterion.id, row);
    }
    const row = rows.get(criterion.id);
    row.show(criterion.name, texts.checks.value(criterion), criterion.score);
    say(row.tolerance, texts.checks.tolerance(criterion));
    say(row.advice, criterion.sentence);
  }
  // In the order of the view; moved only when it differs, so that a screen reader keeps its place.
  const wanted = criteria.map((c) => rows.get(c.id).item);
  const standing = [...list.children].filter((item) => wanted.includes(item));
  if (wanted.some((item, i) => item !== standing[i])) list.append(...wanted);
  const shown = new Set(criteria.map((c) => c.id));
  for (const [id, row] of rows) row.item.hidden = !shown.has(id);
}
