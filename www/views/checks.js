// How close the view is: one row a criterion, from the engine's report and nothing else.

import { criteriaOf, scoreRow, showCriteria, viewOf } from './criterion-rows.js';
import { byId, make, say, segments } from '../base/dom.js';
import { texts } from '../words/texts.js';

/**
 * @import { Report, ViewScore } from '../pkg/values.js'
 * @import { App, PageState } from '../state/page-state.js'
 */

const VIEWS = /** @type {const} */ (['true_ap', 'oblique', 'lateral']);

/**
 * Builds the panel. Returns an update function `(state, report, test, mayTell)`; `mayTell`: whether values may stand there unasked.
 * @param {App} app
 */
export function checksPanel(app) {
  const body = byId('checks-body');
  const showView = segments(byId('views'), 'view', VIEWS.map((v) => [v, texts.checks.nameOf(v)]), (view) => app.change({ view }));
  const total = scoreRow('total', texts.checks);
  const rows = new Map();
  const list = make('ul', { class: 'criteria' });
  const whyHidden = make('p', { class: 'quiet' });
  const count = make('p', { class: 'quiet', id: 'check-count' });
  body.append(total.element, list, whyHidden, count);
  const selfTest = byId('self-test', HTMLInputElement);
  selfTest.addEventListener('change', () => app.change({ selfTest: selfTest.checked }));
  byId('check').addEventListener('click', () => app.check());
  byId('best').addEventListener('click', () => app.toggleBest());

  return (/** @type {PageState} */ state, /** @type {Report | null} */ report, /** @type {{ revealed: boolean, used: number }} */ test, /** @type {boolean} */ mayTell) => {
    showView(state.view);
    selfTest.checked = state.selfTest;
    const view = viewOf(report, state.view);
    const open = mayTell && (!state.selfTest || test.revealed) ? view : undefined;
    total.element.hidden = list.hidden = !open;
    whyHidden.hidden = Boolean(open);
    say(whyHidden, !report ? texts.checks.none : !view ? texts.checks.notHere : texts.checks.hidden);
    count.hidden = !state.selfTest;
    say(count, texts.checks.count(test.used));
    if (report && open) {
      total.show(texts.checks.scoreLabel, texts.checks.score(open.score), open.score);
      showCriteria(list, rows, criteriaOf(report, open), texts.checks);
    }
    const check = byId('check', HTMLButtonElement);
    say(check, state.selfTest ? texts.checks.ask : texts.steps.keep);
    check.disabled = !view || (state.selfTest && test.revealed);
    const best = byId('best', HTMLButtonElement);
    const locked = state.selfTest && test.used === 0;
    say(best, state.ownView ? texts.checks.back : texts.checks.best);
    best.disabled = !view || locked;
    say(byId('best-note'), bestNote(state, view, locked));
  };
}

/**
 * @param {PageState} state
 * @param {ViewScore | undefined} view
 * @param {boolean} locked
 */
function bestNote(state, view, locked) {
  if (!state.ownView) return locked ? texts.checks.bestLocked : '';
  const short = view && !view.reached ? ` ${texts.checks.notReached}` : '';
  const words = state.byExposure ? texts.checks.standsAtBest : texts.checks.showingBest;
  return words(texts.checks.nameOf(state.view)) + short;
}
