// The course as a list: each lesson with its mode and how far the learner is.

import { chooser } from '../base/chooser.js';
import { button, byId, make } from '../base/dom.js';
import { save } from '../base/save.js';
import { texts } from '../words/texts.js';
import { lesson as t } from '../words/lesson.js';
import { course, lessonDesk, shipped } from './desk.js';
import { begun, doneOf, exported, takeIn } from '../base/progress.js';

/**
 * @import { LessonEntry } from '../pkg/values.js'
 *
 * A lesson of the course: its name, its file, and what the engine says of it.
 * @typedef {{ id: string, json: string, info: LessonEntry }} CourseLesson
 */

/**
 * Lessons of the course, read once.
 * @type {CourseLesson[] | null}
 */
let read = null;

/** The course with what is known of each lesson. Throws one sentence. */
export async function lessons() {
  const [Desk, ids] = await Promise.all([lessonDesk(), course()]);
  read ??= await Promise.all(ids.map(async (id) => {
    const json = await shipped(id);
    return { id, json, info: Desk.read(json, texts.language) };
  }));
  return read;
}

/**
 * A file field behind a button: `take(text)` what was chosen, `bad()` when it has more than `most` bytes.
 * @param {HTMLElement} button
 * @param {number} most
 * @param {(text: string) => void} take
 * @param {() => void} bad
 */
function opener(button, most, take, bad) {
  const input = make('input', { type: 'file', accept: '.json,application/json', hidden: true });
  button.after(input);
  chooser(button, input, async ([file]) => (file.size > most ? bad() : take(await file.text())));
}

/**
 * Shows the list in `holder`.
 * @param {HTMLElement} holder
 * @param {{ open: (json: string) => void, notice: (sentences: string[]) => void, said: (sentence: string) => void }} act
 */
export async function showList(holder, act) {
  const all = await lessons();
  const rows = all.map(({ id, json, info }) => {
    const done = doneOf(info.sha256);
    const waits = begun(info.sha256);
    const row = button('', () => act.open(json), { class: 'lesson-row', id: `lesson-${id}` });
    row.append(make('span', { class: 'lesson-title' }, info.title), make('span', { class: 'lesson-state' }, `${t.mode[info.mode]}, ${t.standing(done, waits)}`));
    return make('li', { 'data-done': done?.passed ? 'passed' : waits ? 'begun' : done ? 'tried' : 'new' }, make('span', { class: 'stage-mark', 'aria-hidden': 'true' }), row);
  });
  /** @type {(text: string, id: string) => HTMLButtonElement} */
  const fileButton = (text, id) => make('button', { type: 'button', class: 'button', id }, text);
  const [file, openButton] = [fileButton(t.open, 'lesson-file'), fileButton(t.progress.open, 'progress-open')];
  const saveButton = button(t.progress.save, () => save('downbeam-progress.json', exported()), { id: 'progress-save' });
  holder.replaceChildren(make('p', { class: 'quiet' }, all.length ? t.intro : t.none), make('ol', { class: 'lesson-list' }, ...rows), make('div', { class: 'row' }, file, saveButton, openButton),
    make('p', { class: 'teachers' }, `${t.teach.heading} `, make('a', { href: 'check.html' }, t.teach.check), ' ', make('a', { href: 'author.html' }, t.teach.author)));
  opener(file, 32 * 1024, act.open, () => act.notice([t.unreadable(t.tooLarge)]));
  const bad = () => act.notice([t.progress.bad]);
  opener(openButton, 5_000_000, async (text) => {
    let count = null;
    try {
      count = await takeIn(JSON.parse(text));
    } catch {
      // What is no JSON holds no progress.
    }
    if (count === null) return bad();
    await showList(holder, act);
    byId('progress-open').focus();
    act.said(t.progress.opened(count));
  }, bad);
}
