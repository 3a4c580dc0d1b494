// How close the view is: one row a criterion, from the engine's report and nothing else.

import { criteriaOf, scoreRow, showCriteria, viewOf } from './criterion-rows.js';
import { byId, make, say, segments } from '../base/dom.js';
import { texts } from '../words/texts.js';

const VIEWS = ['true_ap', 'oblique', 'lateral'];

/** Builds the panel. Returns an update function `(state, report, test, mayTell)`; `mayTell`: whether values may stand there unasked. */
export function checksPanel(app) {
  const body = byId('checks-body');
  const showView = segments(byId('views'), 'view', VIEWS.map((v) => [v, texts.checks.views[v]]), (view) => app.change({ view }));
  const total = scoreRow('total', texts.checks);
  const rows = new Map();
  const list = make('ul', { class: 'criteria' });
  const plain = make('p', { class: 'quiet' });
  const count = make('p', { class: 'quiet', id: 'check-count' });
  body.append(total.element, list, plain, count);
  const selfTest = byId('self-test');
  selfTest.addEventListener('change', () => app.change({ selfTest: selfTest.checked }));
  byId('check').addEventListener('click', () => app.check());
  byId('best').addEventListener('click', () => app.toggleBest());

  return (state, report, test, mayTell) => {
    showView(state.view);
    selfTest.checked = state.selfTest;
    const view = viewOf(report, state.view);
    const open = Boolean(view) && mayTell && (!state.selfTest || test.revealed);
    total.element.hidden = list.hidden = !open;
    plain.hidden = open;
    say(plain, !report ? texts.checks.none : !view ? texts.checks.notHere : texts.checks.hidden);
    count.hidden = !state.selfTest;
    say(count, texts.checks.count(test.used));
    if (open) {
      total.show(texts.checks.scoreLabel, texts.checks.score(view.score), view.score);
      showCriteria(list, rows, criteriaOf(report, view), texts.checks);
    }
    const check = byId('check');
    say(check, state.selfTest ? texts.checks.ask : texts.steps.keep);
    check.disabled = !view || (state.selfTest && test.revealed);
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
