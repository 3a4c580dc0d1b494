// The receipts of a class one by one: a table that can be sorted and narrowed to a status or a lesson.

import { byId, choices, make, say } from '../base/dom.js';
import { remarks } from '../words/remark.js';
import { teach } from '../words/teach.js';

const t = teach.check.rows;
const STATUS = /** @type {const} */ (['verified', 'altered', 'unknown_engine', 'unknown_lesson', 'unreadable']);

/**
 * @import { GateId, RowEntry, RowStep } from '../pkg/values.js'
 *
 * A receipt as the report has it, or one that is another's copy.
 * @typedef {typeof STATUS[number] | 'copies'} Status
 *
 * A row of the report with its number, its lesson's title, and how its learner is called.
 * @typedef {RowEntry & { number: number, title: string | null, called: string | null }} ClassRow
 *
 * @typedef {keyof typeof KEYS} Column
 */

/**
 * The signs that stand before a status' word.
 * @type {Record<string, string>}
 */
export const SIGNS = { verified: '✓', altered: '≠', unknown_engine: '◇', unknown_lesson: '□', unreadable: '×', copies: '=' };
/** Rows that are put on the page at once. */
const PAGE = 100;

/** What a status means, in a word. */
const nameOfStatus = (/** @type {string} */ status) => /** @type {Record<string, string>} */ (teach.check.status)[status];

/** A status as sign and word. */
export const statusTag = (/** @type {string} */ status) => make('span', { class: `status ${status}` }, make('span', { class: 'sign', 'aria-hidden': 'true' }, SIGNS[status]), nameOfStatus(status));

/**
 * The step with the fewest marks, the first of equals; null where nothing is missing.
 * @param {ClassRow} row
 */
function weakest(row) {
  const least = row.steps.reduce((/** @type {RowStep | null} */ low, step) => (low === null || (step.score ?? 0) < (low.score ?? 0) ? step : low), null);
  return least && (least.score ?? 0) < 1 ? least : null;
}

/** What a column sorts by; text and numbers alike, null last. */
const KEYS = {
  number: (/** @type {ClassRow} */ row) => row.number,
  learner: (/** @type {ClassRow} */ row) => row.called,
  lesson: (/** @type {ClassRow} */ row) => row.title,
  status: (/** @type {ClassRow} */ row) => STATUS.findIndex((status) => status === row.status),
  total: (/** @type {ClassRow} */ row) => row.total,
  weakest: (/** @type {ClassRow} */ row) => nameOf(weakest(row)),
  note: (/** @type {ClassRow} */ row) => notes(row).join(' ') || null,
  source: (/** @type {ClassRow} */ row) => t.place(row.source, row.line),
};

/**
 * What is to be known of a row, a sentence each.
 * @param {ClassRow} row
 * @returns {string[]}
 */
export function notes(row) {
  const gates = row.gates_failed.length > 0 && t.gatesFailed(row.gates_failed.map(remarks.gate));
  return [gates, row.note && `${row.note[0].toUpperCase()}${row.note.slice(1)}.`.replace(/\.\.$/, '.'), row.same_log_as && t.sameLog(row.same_log_as), row.alike && t.alike(row.alike, row.alike_share ?? 0), row.repeat_of && t.repeat(row.repeat_of)].flatMap((note) => note || []);
}

/**
 * @param {Column} by
 * @param {boolean} falling
 */
function inOrder(by, falling) {
  const collator = new Intl.Collator(teach.language, { numeric: true });
  return (/** @type {ClassRow} */ a, /** @type {ClassRow} */ b) => {
    const [left, right] = [KEYS[by](a), KEYS[by](b)];
    if (left === null || right === null) return Number(left === null) - Number(right === null) || a.number - b.number;
    const order = typeof left === 'number' && typeof right === 'number' ? left - right : collator.compare(String(left), String(right));
    return (falling ? -order : order) || a.number - b.number;
  };
}

/** Keeps the table. Returns `show(rows)`. */
export function rowsTable() {
  const head = make('tr', { role: 'row' });
  const body = make('tbody', { role: 'rowgroup' });
  byId('rows').append(make('thead', { role: 'rowgroup' }, head), body);
  /** @type {ClassRow[]} */
  let rows = [];
  /** @type {{ by: Column, falling: boolean }} */
  let sort = { by: 'number', falling: false };
  let status = 'all';
  let lesson = 'all';
  let limit = PAGE;

  // In the order of the cells of a line; that of the texts is another.
  for (const by of /** @type {Column[]} */ (Object.keys(KEYS))) {
    const name = t.columns[by];
    const button = make('button', { type: 'button', class: 'sort', id: `sort-${by}` }, make('span', { class: 'unseen' }, t.sort('')), name, make('span', { class: 'arrow', 'aria-hidden': 'true' }));
    button.addEventListener('click', () => {
      sort = { by, falling: sort.by === by && !sort.falling };
      update();
    });
    head.append(make('th', { scope: 'col', role: 'columnheader', class: `of-${by}` }, button));
  }
  byId('more-rows').addEventListener('click', () => {
    const first = Math.min(limit, body.children.length);
    limit += PAGE;
    update();
    // The button may be gone: the first of the new rows takes the focus.
    const next = body.children[first];
    if (!(next instanceof HTMLElement)) return;
    next.setAttribute('tabindex', '-1');
    next.focus();
  });
  addEventListener('beforeprint', () => update(Infinity));
  addEventListener('afterprint', () => update());

  const fits = (/** @type {ClassRow} */ row) => (status === 'all' || (status === 'copies' ? row.same_log_as !== null || row.alike !== null : row.status === status)) && (lesson === 'all' || row.lesson === lesson);

  function update(most = limit) {
    for (const th of head.children) {
      const on = th.classList.contains(`of-${sort.by}`);
      if (on) th.setAttribute('aria-sort', sort.falling ? 'descending' : 'ascending');
      else th.removeAttribute('aria-sort');
    }
    const fitting = rows.filter(fits).sort(inOrder(sort.by, sort.falling));
    body.replaceChildren(...fitting.slice(0, most).map(line));
    if (fitting.length === 0) body.append(make('tr', { role: 'row' }, make('td', { role: 'cell', colspan: Object.keys(t.columns).length }, t.none)));
    say(byId('rows-shown'), t.shown(fitting.length, rows.length));
    const left = fitting.length - Math.min(most, fitting.length);
    byId('more-rows').hidden = left === 0;
    say(byId('more-rows'), t.more(Math.min(left, PAGE)));
  }

  /** The choices of the two filters, with what there is. */
  function filters() {
    /** @type {string[]} */
    const counted = [...STATUS.filter((s) => rows.some((r) => r.status === s)), ...(rows.some((r) => r.same_log_as !== null || r.alike !== null) ? ['copies'] : [])];
    if (!counted.includes(status)) status = 'all';
    choices(byId('filter-status', HTMLSelectElement), [['all', t.all], ...counted.map((s) => /** @type {const} */ ([s, nameOfStatus(s)]))], (value) => narrow({ status: value }))(status);
    const titles = new Map(rows.flatMap((r) => (r.lesson === null ? [] : [/** @type {const} */ ([r.lesson, r.title ?? r.lesson])])));
    if (!titles.has(lesson)) lesson = 'all';
    choices(byId('filter-lesson', HTMLSelectElement), [['all', t.all], ...titles], (value) => narrow({ lesson: value }))(lesson);
  }

  /** @param {{ status?: string, lesson?: string }} to */
  function narrow(to) {
    status = to.status ?? status;
    lesson = to.lesson ?? lesson;
    limit = PAGE;
    update();
  }

  return (/** @type {ClassRow[]} */ given) => {
    rows = given;
    limit = PAGE;
    filters();
    update();
  };
}

/** @param {ClassRow} row */
function line(row) {
  /**
   * @param {Column} by
   * @param {...(Node | string)} content
   */
  const cell = (by, ...content) => make('td', { role: 'cell', class: `of-${by}`, 'data-name': t.columns[by] }, ...content);
  const passed = row.passed === null ? '' : row.passed ? t.passed : row.complete ? t.notPassed : t.incomplete;
  const weak = weakest(row);
  return make('tr', { role: 'row', 'data-status': row.status },
    cell('number', String(row.number)),
    make('th', { scope: 'row', role: 'rowheader', class: 'of-learner', 'data-name': t.columns.learner }, row.called || make('span', { class: 'quiet' }, row.learner === null ? t.noLearner : t.noCode)),
    cell('lesson', row.title ?? ''),
    cell('status', statusTag(row.status)),
    cell('total', ...(row.total === null ? [] : [make('strong', {}, scoreOf(row.total)), make('span', { class: 'passed' }, passed)])),
    cell('weakest', weak ? t.weakest(teach.stepName(weak), weak.score ?? 0) : ''),
    cell('note', ...notes(row).map((note) => make('p', {}, note))),
    cell('source', t.place(row.source, row.line)));
}

/** One decimal, as `downbeam grade` prints it. */
const scoreOf = teach.percentFine;
const nameOf = (/** @type {RowStep | null} */ step) => (step ? teach.stepName(step) : null);
