// The gates of an attempt: what fails it whatever its marks, and why.

import { make } from '../base/dom.js';
import { texts } from '../words/injection.js';

/** @import { Gate } from '../pkg/values.js' */

/**
 * Builds it in `holder`. Returns `update(gates)`; null hides it.
 * @param {HTMLElement} holder
 */
export function gateList(holder) {
  const t = texts.needle.gates;
  const said = make('p', { class: 'gates-said' });
  const list = make('ul', { class: 'gates' });
  const whole = make('section', { class: 'gates-part', id: 'gates', 'aria-label': t.heading, hidden: true }, said, list);
  holder.append(whole);
  const row = (/** @type {Gate} */ { id, passed, reason }) => make('li', { 'data-gate': id, 'data-held': String(passed) },
    make('span', { class: 'gate-sign', 'aria-hidden': 'true' }, passed ? '✓' : '×'),
    make('span', {}, make('strong', {}, texts.remarks.gate(id)), make('span', { class: 'unseen' }, ` (${passed ? t.isHeld : t.isFailed})`), passed ? '' : `: ${texts.remarks.one(reason)}`));
  return {
    /** @param {Gate[] | null | undefined} gates */
    update(gates) {
      whole.hidden = !gates;
      if (!gates) return;
      const failed = gates.filter((g) => !g.passed);
      said.textContent = failed.length ? t.failed(failed.length) : t.held;
      const held = gates.filter((g) => g.passed);
      list.replaceChildren(...failed.map(row), ...held.map(row));
    },
  };
}
