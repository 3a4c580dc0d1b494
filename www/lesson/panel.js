// What the panel of lessons shows: before a lesson, while it runs, and when it is done.

import { gateList } from '../injection/gate-list.js';
import { markTable } from '../injection/marks-table.js';
import { button, byId, make, say } from '../base/dom.js';
import { store, stored } from '../base/storage.js';
import { texts } from '../words/injection.js';
import { lesson as t } from '../words/lesson.js';
import { completion } from './completion.js';

/**
 * @import { LessonEntry, Standing } from '../pkg/values.js'
 * @import { Delivery } from '../delivery/choose.js'
 * @import { OpenLesson } from './run.js'
 *
 * @typedef {'list' | 'begin' | 'running' | 'done'} Phase
 */

/** Where the learner's last code is kept. */
const CODE = 'downbeam.code';

/**
 * Keeps a code for the next lesson. A browser that keeps nothing has it typed again.
 * @param {string} code
 */
export const keepCode = (code) => store(CODE, code);

/**
 * The panel: `show(phase, heading, …content)`, `body`, `hide()`, `toPanel()`. `single()`: whether there is no list to go back to.
 * @param {() => void} onLeave
 * @param {() => boolean} single
 */
export function lessonPanel(onLeave, single) {
  const panel = byId('lesson');
  const title = byId('lesson-heading');
  const body = byId('lesson-body');
  const leave = byId('lesson-leave');
  leave.addEventListener('click', onLeave);
  return {
    body,
    /** @type {(phase: Phase, heading: string, ...content: (Node | string)[]) => void} */
    show(phase, heading, ...content) {
      panel.hidden = false;
      panel.dataset.phase = phase;
      document.body.dataset.lesson = phase;
      say(title, heading);
      leave.hidden = phase === 'list' || (phase !== 'running' && single());
      say(leave, phase === 'running' ? t.leave : t.toList);
      body.replaceChildren(...content);
    },
    hide: () => void (panel.hidden = true),
    /** The eye and the keys to the panel, without a jump where it is in sight. */
    toPanel() {
      title.focus({ preventScroll: true });
      panel.scrollIntoView({ block: 'nearest' });
    },
  };
}

/**
 * Before a lesson: what it is, whose it is, and whether something is to be gone on with. Resolves once that is known. `start(code, lines)`
 * begins, or goes on with a log.
 * @param {LessonEntry} info
 * @param {Delivery} where
 * @param {(code: string, lines: string[] | null) => void} start
 */
export async function beginForm(info, where, start) {
  const code = make('input', { type: 'text', id: 'lesson-code', maxlength: 64, autocomplete: 'off', spellcheck: 'false', 'aria-describedby': 'lesson-code-note', required: info.asks_code });
  code.value = where.learner ?? stored(CODE) ?? '';
  code.readOnly = where.learner !== null;
  const buttons = make('div', { class: 'row' });
  const form = make('form', { class: 'lesson-begin' }, ...about(info, where),
    make('div', { class: 'choice' }, make('label', { for: 'lesson-code' }, t.code), code),
    make('p', { class: 'quiet', id: 'lesson-code-note' }, info.asks_code ? t.codeHint : t.codeOptional), buttons);
  // The enter key; a sandboxed frame may have no forms, so the button works without.
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    start(code.value, null);
  });
  // One button stays while a code is typed: whoever has tabbed to it keeps the focus.
  const begin = button(t.begin, () => start(code.value, null), { class: 'button strong', id: 'lesson-begin' });
  buttons.append(begin);
  /** @type {HTMLButtonElement | null} */
  let goOn = null;
  let asked = 0;
  const offer = async () => {
    const mine = ++asked;
    where.opened?.({ sha256: info.sha256, learner: code.value.trim() });
    const lines = await where.resume().catch(() => null);
    if (mine !== asked) return;
    goOn?.remove();
    goOn = lines && button(t.goOn(lines.length), () => start(code.value, lines), { class: 'button strong', id: 'lesson-go-on' });
    if (goOn) begin.before(goOn);
    say(begin, lines ? t.beginAnew : t.begin);
    begin.classList.toggle('strong', !lines);
  };
  code.addEventListener('input', offer);
  await offer();
  return form;
}

/**
 * What a lesson asks for, and under what rules.
 * @param {LessonEntry} info
 * @param {Delivery} where
 */
function about(info, where) {
  const rules = [info.exposures && info.mode !== 'assessment' ? t.exposures : '', t.passMark(info.pass_mark), where.keepsProgress ? '' : t.notHeldHere];
  return [
    make('p', {}, info.intro), make('p', { class: 'quiet' }, t.modeNote[info.mode]),
    make('h3', { class: 'keys-heading' }, t.steps), make('ul', { class: 'lesson-steps' }, ...info.steps.map((s) => make('li', {}, texts.step(s)))),
    make('details', { class: 'more' }, make('summary', {}, t.gates), make('ul', { class: 'lesson-gates' }, ...info.gates.map((id) => make('li', {}, texts.remarks.gate(id))))),
    make('p', { class: 'quiet' }, rules.filter(Boolean).join(' ')),
  ];
}

/**
 * While it runs: what was drawn, and what is asked for by name.
 * @param {OpenLesson} open
 * @param {HTMLElement} ask of the exercise of naming parts
 */
export function runningContent({ info, drawn, asks }, ask) {
  const what = make('p', { class: 'quiet' }, `${t.drawn(drawn, texts.case.patientName(drawn.patient))} ${t.modeNote[info.mode]}`);
  return asks.has('name_parts') ? [what, ask] : [what];
}

/**
 * When it is done: the marks, and what can be handed in. `trouble` is said where there is no receipt; `act`: `save()` the receipt, `again()`.
 * Returns `{ content, row }`; `row` holds the buttons.
 * @param {OpenLesson} open
 * @param {Standing} score
 * @param {string} receipt empty where there is none
 * @param {string} trouble
 * @param {{ save: () => void, again: () => void }} act
 */
export function doneContent({ info, drawn }, score, receipt, trouble, act) {
  const holder = make('div', {});
  gateList(holder).update(score.gates);
  markTable(holder).update(score, true, info.exposures);
  const row = make('div', { class: 'row' });
  if (receipt) row.append(button(t.receipt, act.save, { class: 'button strong', id: 'lesson-receipt' }));
  row.append(button(t.again, act.again, { id: 'lesson-again' }));
  const content = [
    make('p', { class: 'lesson-total', role: 'status' }, t.done(score.total, score.passed)),
    ...(score.complete ? [] : [make('p', {}, t.incomplete)]),
    holder,
    ...(trouble ? [make('p', { role: 'alert' }, trouble)] : []),
    row,
    ...(receipt ? [make('p', { class: 'quiet' }, t.receiptNote)] : []),
    completion({ info, drawn, score, exposures: info.exposures, engine: receipt ? JSON.parse(receipt).engine : null }),
  ];
  return { content, row };
}
