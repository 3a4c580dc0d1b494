// What is made of a view once it stands still: steps ticked, advice said, the self-test, and the best view beside the learner's own.

import { criteriaOf, viewOf } from './criterion-rows.js';
import { byId, say } from '../base/dom.js';
import { placeOf } from '../state/positioning.js';
import { texts } from '../words/texts.js';

/**
 * @import { Report } from '../pkg/values.js'
 * @import { App } from '../state/page-state.js'
 * @import { Steps } from './steps.js'
 */

/**
 * Reviews `app.report` against `steps`. `words` is called after a change that shows; `mayTell()` says whether advice may be given unasked.
 * @param {App} app
 * @param {Steps} steps
 * @param {() => void} words
 * @param {() => boolean} mayTell
 */
export function viewReview(app, steps, words, mayTell) {
  // What the self-test has seen: checks used, and whether the present view has been asked for.
  const test = { used: 0, revealed: false };

  /** Whether values and advice may be seen. */
  const open = () => Boolean(app.report) && mayTell() && (!app.state.selfTest || test.revealed);

  /** The sentences for the view being checked. */
  function advice() {
    const view = viewOf(app.report, app.state.view);
    return app.report && view ? criteriaOf(app.report, view).map(texts.checks.sentence) : [texts.checks.notHere];
  }

  /** @param {Report} report */
  function tick(report) {
    const before = steps.view();
    const ticked = steps.settle(app.state, report);
    const after = steps.view();
    if (ticked.length > 0) {
      if (after !== before) app.state.view = after;
      words();
    }
    announce(ticked.map(texts.steps.ticked));
  }

  /**
   * Says in the live region what a screen reader user needs to hear once the view stands still.
   * @param {string[]} first
   */
  function announce(first) {
    const view = viewOf(app.report, app.state.view);
    const said = view ? [texts.checks.said(texts.checks.nameOf(view.view), view.score, advice().join(' '))] : [];
    say(byId('status'), [...first, ...said].join(' '));
  }

  return {
    test,
    /** What may be said of the view as it stands. */
    seen: () => (open() ? advice().join(' ') : app.report ? texts.checks.hidden : texts.checks.none),
    /** The steps begin again. */
    restart() {
      steps.reset();
      Object.assign(test, { used: 0, revealed: false });
      app.state.view = steps.view();
      say(byId('status'), '');
    },
    /** The view is another one. */
    turned() {
      test.revealed = false;
      if (app.state.selfTest) say(byId('status'), '');
    },
    /** The learner has stopped turning. */
    settled() {
      // In an injection the stages take the place of the steps.
      if (app.report && open() && !app.state.ownView && !app.state.injection) tick(app.report);
      else if (app.report && open()) announce([]);
    },
    /** Takes the view as it stands at once, if it is what the step asks for. Returns whether it was. */
    keep() {
      if (!app.report || app.state.ownView || app.state.injection) return false;
      const before = steps.current();
      tick(app.report);
      return steps.current() !== before;
    },
    /** Self-test: show the checks for the view as it stands, and count it. */
    check() {
      if (!app.report) return;
      test.used += 1;
      test.revealed = true;
      if (app.state.ownView || app.state.injection) announce([]);
      else tick(app.report);
      words();
    },
    /** Goes to the best view this machine reaches, or back to the learner's own. */
    toggleBest() {
      const { state } = app;
      const revealed = test.revealed;
      if (state.ownView) {
        app.change({ ...state.ownView, ownView: null });
      } else {
        const best = viewOf(app.report, state.view)?.best;
        if (!best) return;
        app.change({ ...placeOf(best), ownView: { oblique_deg: state.oblique_deg, tilt_deg: state.tilt_deg } });
      }
      test.revealed = revealed;
    },
  };
}
