// A page to print when a lesson is done: who, what, when as given, marks, gates and engine. It can be checked by nobody, and says so.

import { button, make } from '../base/dom.js';
import { gateList } from '../injection/gate-list.js';
import { markTable } from '../injection/marks-table.js';
import { texts } from '../words/texts.js';
import { lesson as t } from '../words/lesson.js';

/**
 * @import { DrawnEntry, LessonEntry, Standing } from '../pkg/values.js'
 *
 * What the page is about; `engine` as the receipt names it.
 * @typedef {{ info: LessonEntry, drawn: DrawnEntry, score: Standing, exposures: boolean, engine: { version: string, scoring: string } | null }} Done
 */

/** Today where the learner is, as a date field has it. */
function today() {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}

/**
 * A day in words; as it was given where it is no day.
 * @param {string} day
 */
function inWords(day) {
  const date = new Date(`${day}T12:00:00`);
  return Number.isNaN(date.getTime()) ? day : new Intl.DateTimeFormat(texts.language, { dateStyle: 'long' }).format(date);
}

/**
 * The part of a result that makes the page: name and date to fill in, and the button. Neither name nor date is kept or leaves the page.
 * @param {Done} done
 */
export function completion(done) {
  const name = make('input', { type: 'text', id: 'completion-name', maxlength: 120, autocomplete: 'name' });
  const day = make('input', { type: 'date', id: 'completion-date' });
  day.value = today();
  const press = () => {
    putSheet(sheet(done, name.value.trim(), day.value));
    print();
  };
  /** @type {(input: HTMLInputElement, label: string) => HTMLElement} */
  const field = (input, label) => make('div', { class: 'choice' }, make('label', { for: input.id }, label), input);
  return make('details', { class: 'more completion' }, make('summary', { id: 'completion-open' }, t.completion.open),
    make('p', { class: 'quiet' }, t.completion.note), field(name, t.completion.name), field(day, t.completion.day), make('div', { class: 'row' }, button(t.completion.print, press, { id: 'completion-print' })));
}

/**
 * The sheet stands at the end of the page, unseen, until it is printed; then it is all that is.
 * @param {HTMLElement} content
 */
function putSheet(content) {
  document.getElementById('completion-sheet')?.remove();
  document.body.append(content);
  document.body.dataset.printing = 'completion';
  addEventListener('afterprint', () => {
    delete document.body.dataset.printing;
    content.remove();
  }, { once: true });
}

/**
 * @param {Done} done
 * @param {string} name
 * @param {string} day
 */
function sheet({ info, drawn, score, exposures, engine }, name, day) {
  const c = t.completion;
  const marks = make('div', {});
  markTable(marks).update(score, true, exposures);
  gateList(marks).update(score.gates);
  // What stands on the page under these names stays the only one.
  for (const element of marks.querySelectorAll('[id]')) element.removeAttribute('id');
  /** @type {[string, string | null][]} */
  const rows = [
    [c.name, name],
    [c.code, drawn.learner],
    [c.lesson, info.title],
    [c.patient, c.patientLine(drawn, texts.case.patientName(drawn.patient))],
    [c.dayGiven, day && inWords(day)],
    [c.engine, engine && c.engineLine(engine.version, engine.scoring, info.sha256.slice(0, 12))],
  ];
  return make('section', { id: 'completion-sheet', class: 'completion-sheet' },
    make('h1', {}, c.heading(score.passed)),
    make('dl', {}, ...rows.flatMap(([label, value]) => (value ? [make('dt', {}, label), make('dd', {}, value)] : []))),
    make('p', { class: 'completion-total' }, t.done(score.total, score.passed)), ...(score.complete ? [] : [make('p', {}, t.incomplete)]),
    marks,
    make('p', { class: 'completion-caution' }, c.caution));
}
