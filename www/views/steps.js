// The way to the view, step by step. A step is ticked from the engine's criteria only, and only in its turn.

import { levelBelow } from '../engine/catalogue.js';
import { unmetOf, viewOf } from './criterion-rows.js';
import { byId, make, say } from '../base/dom.js';
import { texts } from '../words/texts.js';

/**
 * @import { CriterionId, Level, Report, ViewKind } from '../pkg/values.js'
 * @import { PageState } from '../state/page-state.js'
 *
 * @typedef {ReturnType<typeof stepsPanel>} Steps
 *
 * What a step asks to be at full marks, and which view it works towards.
 * @typedef {{ id: string, view: ViewKind, needs: CriterionId[] }} Step
 */

/** @type {readonly Step[]} */
const STEPS = [
  { id: 'true_ap', view: 'true_ap', needs: ['spinous_centred'] },
  { id: 'square', view: 'true_ap', needs: ['spinous_centred', 'squared'] },
  { id: 'oblique', view: 'oblique', needs: ['facet_under_pedicle', 'foramen_aligned'] },
  { id: 'square_again', view: 'oblique', needs: ['facet_under_pedicle', 'foramen_aligned', 'squared'] },
];

/**
 * Whether a report fulfils a step: every criterion it needs that this level has, and at least one of them.
 * @param {Step} step
 * @param {Report} report
 */
export function fulfils(step, report) {
  const asked = report.criteria.filter((c) => step.needs.includes(c.id));
  return asked.length > 0 && asked.every((c) => c.score >= 1);
}

/** Builds the panel. */
export function stepsPanel() {
  let done = 0;
  /** @type {ReturnType<typeof stepRow>[]} */
  let rows = [];
  let builtFor = '';
  // What each step that is done was worth, and why.
  /** @type {string[]} */
  let results = [];

  return {
    /** Starts over. */
    reset() {
      done = 0;
      results = [];
      builtFor = '';
    },
    /** The view the current step works towards. */
    view: () => STEPS[Math.min(done, STEPS.length - 1)].view,
    /**
     * Ticks what this report fulfils, in order. Returns the titles of the steps ticked by it.
     * @param {PageState} state
     * @param {Report} report
     */
    settle(state, report) {
      const ticked = [];
      while (done < STEPS.length && fulfils(STEPS[done], report)) {
        ticked.push(texts.steps.list[STEPS[done].id].title(state));
        results.push(resultOf(STEPS[done], report));
        done += 1;
      }
      return ticked;
    },
    finished: () => done === STEPS.length,
    /** The name of the step in hand. */
    current: () => STEPS[done]?.id ?? '',
    /** The first criterion that the step in hand asks to be at full marks and that is not, or null. */
    unmet: (/** @type {Report} */ report) => unmetOf(report, STEPS[done]?.needs ?? []),
    /**
     * Shows the steps for this case.
     * @param {PageState} state
     */
    update(state) {
      const now = `${state.level} ${state.side} ${done} ${state.selfTest}`;
      if (now === builtFor) return;
      const list = byId('step-list');
      if (rows.length === 0) {
        rows = STEPS.map(stepRow);
        list.replaceChildren(...rows.map((row) => row.item));
      }
      const below = levelBelow(state.level);
      rows.forEach((row, i) => row.show(state, below, i < done ? 'done' : i === done ? 'current' : 'later', results[i] ?? ''));
      say(byId('steps-progress'), texts.steps.progress(done, STEPS.length));
      const finished = done === STEPS.length;
      byId('check').hidden = finished && !state.selfTest;
      byId('next-start').hidden = !finished;
      const note = byId('steps-note');
      const text = done === STEPS.length ? texts.steps.allDone : state.selfTest ? texts.steps.testHint : '';
      note.hidden = text === '';
      say(note, text);
      builtFor = now;
    },
  };
}

/**
 * What a step is worth and why: the marks of its view where it makes one, and the values that it asks for.
 * @param {Step} step
 * @param {Report} report
 */
function resultOf(step, report) {
  const view = viewOf(report, step.view);
  const whole = view?.criteria.every((id) => step.needs.includes(id)) ? [`${texts.checks.nameOf(view.view)}: ${texts.checks.score(view.score)}`] : [];
  const values = report.criteria.filter((c) => step.needs.includes(c.id)).map((c) => texts.checks.measured(c));
  return [...whole, ...values].map((line) => `${line}.`).join(' ');
}

/** @param {Step} step */
function stepRow(step) {
  const text = texts.steps.list[step.id];
  const mark = make('span', { class: 'step-mark', 'aria-hidden': 'true' });
  const title = make('h3', { class: 'step-title' });
  const phase = make('span', { class: 'step-phase unseen' });
  const act = make('p', {});
  const look = make('p', { class: 'look' });
  const body = make('div', { class: 'step-body' }, act, look);
  const outcome = make('p', { class: 'step-result quiet' });
  const head = make('div', {}, title, phase);
  const item = make('li', { class: 'step', id: `step-${step.id}` }, mark, head, body, outcome);
  return {
    item,
    /**
     * @param {PageState} state
     * @param {Level | null} below
     * @param {'done' | 'current' | 'later'} phaseNow
     * @param {string} result
     */
    show(state, below, phaseNow, result) {
      item.dataset.phase = phaseNow;
      head.className = phaseNow === 'current' ? 'step-head' : 'unseen';
      if (phaseNow === 'current') item.setAttribute('aria-current', 'step');
      else item.removeAttribute('aria-current');
      say(title, text.title(state));
      mark.title = text.title(state);
      say(phase, texts.steps[phaseNow]);
      say(act, text.act(state));
      look.replaceChildren(make('strong', {}, `${texts.steps.lookFor}: `), text.look(state, below));
      say(outcome, result);
      outcome.hidden = result === '';
      body.hidden = phaseNow !== 'current';
    },
  };
}
