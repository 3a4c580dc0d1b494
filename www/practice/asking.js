// A question on the page: its sentence, its answers by button, key and touch, its form in words, the reason afterwards.

import { button, byId, make, say } from '../base/dom.js';
import { practice as t } from '../words/practice.js';

/**
 * @import { ShownQuestion, AnswerReport } from '../pkg/values.js'
 *
 * @typedef {ReturnType<typeof asking>} Asking
 */

/** Takes the learner to the question, with its film in sight. */
export function toQuestion() {
  byId('question').focus({ preventScroll: true });
  byId('asking').scrollIntoView({ block: 'start' });
}

/**
 * Puts a question before the learner. `choose(index)` is called once at most for each question; `leaveOut()` where it cannot be said in words.
 * @param {(index: number) => void} choose
 * @param {() => void} [leaveOut]
 */
export function asking(choose, leaveOut) {
  /** @type {{ question: ShownQuestion, picked: boolean } | null} */
  let open = null;

  /** @param {number} index */
  function pick(index) {
    if (!open || open.picked || index >= open.question.choices.length) return;
    open.picked = true;
    choose(index);
  }

  addEventListener('keydown', (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || (event.target instanceof Element && event.target.closest('input, textarea, select, summary'))) return;
    const index = '1234'.indexOf(event.key);
    if (index >= 0 && event.key !== '') pick(index);
  });

  return {
    /**
     * Shows a question; `n` of `all`.
     * @param {ShownQuestion} question
     * @param {number} n
     * @param {number} all
     */
    show(question, n, all) {
      open = { question, picked: false };
      say(byId('where'), `${t.progress(n, all)} · ${t.placeStage(question)}`);
      say(byId('question'), t.asked(question));
      byId('answers').replaceChildren(
        ...question.choices.map((choice, i) =>
          make('li', {}, button(t.choice(choice), () => pick(i), { class: 'button answer', 'aria-keyshortcuts': String(i + 1), 'data-choice': i })),
        ),
      );
      byId('reason').replaceChildren();
      const words = question.seen.map((fact) => make('p', {}, t.fact(fact)));
      byId('described-part', HTMLDetailsElement).open = false;
      byId('described').replaceChildren(...(words.length ? words : undescribed()));
      const caution = question.kind === 'spread' || question.kind === 'stop' ? t.caution[question.kind] : '';
      byId('reason').dataset.caution = caution;
    },
    /**
     * Marks the answers; nobody may have picked one.
     * @param {number | null} picked
     * @param {AnswerReport} verdict as the engine gives it
     */
    tell(picked, verdict) {
      if (!open) return;
      for (const answer of byId('answers').querySelectorAll('button')) {
        const index = Number(answer.dataset.choice);
        answer.disabled = true;
        if (index === verdict.answer) answer.dataset.mark = 'right';
        else if (index === picked) answer.dataset.mark = 'wrong';
      }
      const sentence = picked === null ? null : verdict.right ? t.right : t.wrong(t.choice(open.question.choices[verdict.answer]));
      const caution = byId('reason').dataset.caution;
      byId('reason').replaceChildren(
        ...(sentence ? [make('p', { class: 'verdict', 'data-right': String(verdict.right) }, sentence)] : []),
        ...verdict.reason.map((fact) => make('p', {}, t.fact(fact))),
        make('p', { class: 'quiet' }, t.margin(verdict.margin)),
        ...(caution ? [make('p', { class: 'quiet' }, caution)] : []),
      );
    },
    /** No answer can be given any more. */
    close() {
      if (open) open.picked = true;
      for (const answer of byId('answers').querySelectorAll('button')) answer.disabled = true;
    },
  };

  function undescribed() {
    return [make('p', {}, t.undescribed), ...(leaveOut ? [button(t.leaveOut, () => {
      if (!open || open.picked) return;
      open.picked = true;
      leaveOut();
    })] : [])];
  }
}
