// Which way? Asked before the first turn of each step of the views; the answer and its reason come after it, and the film shows the line and the
// arrow from then on. Who turns without answering has answered. In self-test nothing is asked and nothing shown.

import { button, byId, make, say } from '../base/dom.js';
import { CASE } from '../state/page-state.js';
import { keyOf } from '../state/positioning.js';
import { texts } from '../words/texts.js';
import { help } from '../words/help.js';

/**
 * @import { App } from '../state/page-state.js'
 * @import { Steps } from './steps.js'
 */

/** A turn so far is an answer, degrees. A choice, no source. */
const TURNED_DEG = 2;
const ENDS = { oblique: ['left', 'right'], tilt: ['cephalad', 'caudad'] };

/**
 * `steps` from `stepsPanel`. Returns `{ update(), shows(), want() }`.
 * @param {App} app
 * @param {Steps} steps
 */
export function askWay(app, steps) {
  const t = help.ask;
  const line = byId('step-said');
  const ends = [0, 1].map((i) => button('', () => answer(i), { id: `way-${i + 1}` }));
  const row = make('div', { class: 'row', id: 'way-row', hidden: true }, ...ends);
  line.after(row);
  // What is asked of which step from which start, whether it has been answered, and whether advice is wanted all along.
  let now = { of: '', answered: false, wanted: false, said: '', from: { oblique_deg: 0, tilt_deg: 0 } };
  byId('which-way').addEventListener('click', want);

  const guided = () => !app.state.selfTest && !app.state.injection && !app.state.lessons && !app.state.ownView;
  const unmet = () => (app.report && guided() ? steps.unmet(app.report) : null);

  function want() {
    Object.assign(now, { answered: true, wanted: true, said: '' });
    app.touch();
  }

  /** @param {number} i */
  function answer(i) {
    const c = unmet();
    if (!c?.advice) return;
    const right = ENDS[c.advice.control][i] === c.advice.direction;
    Object.assign(now, { answered: true, said: t[right ? 'yes' : 'no'](texts.checks.measured(c), texts.checks.sentence(c)) });
    const back = row.contains(document.activeElement);
    app.touch();
    if (back) byId('picture').focus({ preventScroll: true });
  }

  function update() {
    const { state } = app;
    const c = unmet();
    const of = `${keyOf(state, [...CASE, 'start'])},${steps.current()}`;
    if (of !== now.of) now = { of, answered: false, wanted: false, said: '', from: { oblique_deg: state.oblique_deg, tilt_deg: state.tilt_deg } };
    const turned = Math.max(.../** @type {const} */ (['oblique_deg', 'tilt_deg']).map((key) => Math.abs(state[key] - now.from[key])));
    if (turned > TURNED_DEG) {
      now.answered = true;
      now.said = '';
    }
    const asks = Boolean(c?.advice) && !now.answered;
    row.hidden = !asks;
    if (c?.advice && asks) ENDS[c.advice.control].forEach((end, i) => say(ends[i], t.end(end)));
    const text = !c ? '' : asks ? t.question : now.said || (now.wanted ? texts.checks.sentence(c) : '');
    say(line, text);
    line.hidden = text === '';
    byId('which-way').hidden = !c || now.wanted || asks;
  }

  return {
    update,
    /** Whether the film may show what is off. */
    shows: () => now.answered && guided(),
    /** The learner wants to keep a view that is not there yet, or asks. */
    want,
  };
}
