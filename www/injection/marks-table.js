// The marks of an injection: a table of its steps with weight, marks and reason.

import { make } from '../base/dom.js';
import { texts } from '../words/injection.js';

/** @import { Score, Step } from '../pkg/values.js' */

/**
 * Builds it in `holder`.
 * @param {HTMLElement} holder
 */
export function markTable(holder) {
  const t = texts.needle.score;
  const body = make('tbody', {});
  const table = make('table', { class: 'marks', id: 'marks' },
    make('caption', {}, t.heading),
    make('thead', {}, make('tr', {}, ...t.columns.map((name) => make('th', { scope: 'col' }, name)))), body);
  holder.append(table);
  let shown = '';
  return {
    /**
     * @param {Pick<Score, 'steps' | 'total'> | null | undefined} score
     * @param {boolean} open whether it may be shown
     * @param {boolean} exposures whether pictures come from exposures only
     */
    update(score, open, exposures) {
      table.hidden = !score || !open;
      if (!score || !open) return;
      const now = JSON.stringify(score);
      if (now === shown) return;
      shown = now;
      const marks = (/** @type {number | null} */ share) => (share === null ? t.none : texts.needle.stage.marks(share));
      const worth = (/** @type {Step} */ step) => (step.id === 'radiation' && !exposures ? t.notCounted : marks(step.score));
      body.replaceChildren(
        ...score.steps.flatMap((step) => [
          make('tr', { class: 'marks-step', 'data-step': step.id }, make('th', { scope: 'row' }, texts.step(step)), make('td', {}, texts.number(step.weight, 1)), make('td', { class: 'marks-score' }, worth(step))),
          make('tr', { class: 'marks-reason' }, make('td', { colspan: 3 }, texts.remarks.all(step.reasons))),
        ]),
        make('tr', { class: 'marks-total', 'data-step': 'total' }, make('th', { scope: 'row', colspan: 2 }, t.total), make('td', { class: 'marks-score', 'data-total': score.total.toFixed(4) }, marks(score.total))),
      );
    },
  };
}
