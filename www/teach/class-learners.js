// The class by learner: the class list, which stays in this page, each one's tries and best, who has handed in nothing, and the gradebook.

import { chooser } from '../base/chooser.js';
import { attemptFragment } from '../base/attempt-link.js';
import { button, byId, make, say } from '../base/dom.js';
import { saveText } from '../base/save.js';
import { notes, statusTag } from './class-rows.js';
import { complaint } from '../controls/page-frame.js';
import { teach } from '../words/teach.js';

const t = teach.check.learners;
/** Longest list, bytes (`class::list::MOST_BYTES`). */
const MOST_BYTES = 1024 * 1024;

/**
 * @import { ClassRoom } from '../pkg/lessons.js'
 * @import { Learner, Tries } from '../pkg/values.js'
 * @import { ClassRow } from './class-rows.js'
 */

/**
 * Keeps the panel of the list and the table. `room()` is the engine's class, `afterwards(act)` waits for its turn, `titleOf(lesson)`; `listed()` is
 * called when another list has been taken in. Returns `show()`, to be called when the class has changed.
 * @param {{ room: () => ClassRoom | null, afterwards: (act: () => Promise<void>) => unknown, titleOf: (lesson: string) => string, listed: () => void }} act
 */
export function learners({ room, afterwards, titleOf, listed }) {
  const complain = (/** @type {string} */ words) => {
    say(byId('list-complaint'), words);
    byId('list-complaint').hidden = words === '';
  };

  /**
   * Reads a file and uses its text.
   * @param {File | undefined} file
   * @param {(text: string, room: ClassRoom) => void} act
   */
  async function take(file, act) {
    const there = room();
    if (!file || !there) return;
    complain('');
    try {
      if (file.size > MOST_BYTES) throw new Error(t.tooLarge);
      act(new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer()), there);
      listed();
    } catch (error) {
      complain(teach.shelf.bad(file.name, error instanceof TypeError ? t.notText : complaint(error)));
    }
  }
  chooser(byId('choose-list'), byId('list-file', HTMLInputElement), ([file]) => afterwards(() => take(file, (text, there) => say(byId('list-state'), t.state(there.setList(text))))));
  chooser(byId('choose-names'), byId('names-file', HTMLInputElement), ([file]) => afterwards(() => take(file, deal)));
  byId('save-gradebook').addEventListener('click', () => {
    const there = room();
    if (there) saveText(t.file, there.gradebook(separator(), true), 'text/csv');
  });

  const separator = () => byId('separator', HTMLSelectElement).value;

  /**
   * @param {string} names
   * @param {ClassRoom} there
   */
  function deal(names, there) {
    const [seed] = crypto.getRandomValues(new BigUint64Array(1));
    saveText(t.codesFile, there.dealCodes(names, seed, separator()), 'text/csv');
    say(byId('list-state'), t.dealt);
  }

  /**
   * Rows of the report as they were shown last.
   * @type {ClassRow[]}
   */
  let rowsOf = [];

  function show(rows = rowsOf) {
    const there = room();
    if (!there) return;
    rowsOf = rows;
    byId('one-learner').hidden = true;
    const { lessons, learners: all, missing } = there.learners();
    byId('learners').hidden = all.length === 0 || byId('result').hidden;
    const names = all.filter(({ code }) => missing.includes(code)).map(({ code, name }) => t.named(name ?? '', code));
    byId('missing').hidden = names.length === 0;
    say(byId('missing'), names.length === 0 ? '' : t.missing(names));
    const head = [t.columns.learner, ...lessons.map(titleOf), t.columns.lookAt].map((name) => make('th', { scope: 'col', role: 'columnheader' }, name));
    byId('learners-table').replaceChildren(
      make('thead', { role: 'rowgroup' }, make('tr', { role: 'row' }, ...head)),
      make('tbody', { role: 'rowgroup' }, ...all.map((one) => row(one, lessons))));
  }

  /**
   * @param {Learner} one
   * @param {string[]} lessons
   */
  function row(one, lessons) {
    const { code, name, lessons: tries, look_at: rows } = one;
    const called = name === null ? t.notListed(code) : t.named(name, code);
    const handedIn = rowsOf.some((found) => found.learner === code);
    return make('tr', { role: 'row' },
      make('th', { scope: 'row', role: 'rowheader', 'data-name': t.columns.learner }, handedIn ? button(called, () => showOne(one, called), { class: 'plain-button' }) : called),
      ...tries.map((one, i) => make('td', { role: 'cell', 'data-name': titleOf(lessons[i]) }, ...result(one))),
      make('td', { role: 'cell', 'data-name': t.columns.lookAt }, rows.length > 0 ? t.rows(rows) : ''));
  }

  /**
   * Every row of a learner, with a link that replays it.
   * @param {Learner} of
   * @param {string} called
   */
  function showOne({ code }, called) {
    const own = rowsOf.filter((found) => found.learner === code);
    const columns = t.oneColumns;
    const head = [columns.row, columns.lesson, columns.result, t.columns.lookAt, columns.replay].map((name) => make('th', { scope: 'col', role: 'columnheader' }, name));
    say(byId('one-learner-heading'), t.everyTry(called));
    byId('one-learner-table').replaceChildren(
      make('thead', { role: 'rowgroup' }, make('tr', { role: 'row' }, ...head)),
      make('tbody', { role: 'rowgroup' }, ...own.map(oneTry)));
    byId('one-learner').hidden = false;
    byId('one-learner-heading').focus();
  }

  /** @param {ClassRow} found */
  function oneTry(found) {
    const { number } = found;
    /**
     * @param {string} name
     * @param {...(Node | string)} content
     */
    const cell = (name, ...content) => make('td', { role: 'cell', 'data-name': name }, ...content);
    const columns = t.oneColumns;
    const marks = found.total === null ? [] : [make('strong', {}, teach.percentFine(found.total)), make('span', { class: 'passed' }, found.passed ? teach.check.rows.passed : teach.check.rows.notPassed)];
    return make('tr', { role: 'row', 'data-row': number },
      make('th', { scope: 'row', role: 'rowheader', 'data-name': columns.row }, String(number)),
      cell(columns.lesson, found.title ?? ''), cell(columns.result, statusTag(found.status), ' ', ...marks),
      cell(t.columns.lookAt, ...notes(found).map((text) => make('p', {}, text))), cell(columns.replay, ...replayLink(number)));
  }

  /**
   * A link to the practice page with the attempt in it; nothing where it cannot be replayed.
   * @param {number} number
   */
  function replayLink(number) {
    const desk = room();
    const attempt = desk?.attempt(number);
    if (!desk || !attempt) return [];
    const link = make('a', { target: '_blank', rel: 'noopener', 'aria-label': t.replayOf(number) }, t.replay);
    // With its lesson, whose marks are the learner's; without, those of a whole injection.
    const lesson = desk.lessonOf(number);
    const of = lesson === undefined ? null : { lesson, learner: desk.learnerOf(number) ?? '' };
    attemptFragment(of ? { ...attempt, of } : attempt).then((fragment) => (link.href = `index.html${fragment}`));
    return [link];
  }

  /**
   * The best try, and how the tries went one after the other.
   * @param {Tries} of
   */
  function result({ rows, totals, total, passed }) {
    if (rows.length === 0) return [make('span', { class: 'quiet' }, t.nothing)];
    if (total === null) return [t.noneVerified(rows.length)];
    const over = totals.length > 1 ? [make('span', { class: 'quiet tries' }, t.tries(totals))] : [];
    return [make('strong', {}, teach.percentFine(total)), make('span', { class: 'passed' }, passed ? teach.check.rows.passed : teach.check.rows.notPassed), ...over];
  }

  return show;
}
