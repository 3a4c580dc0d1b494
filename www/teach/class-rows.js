// The receipts of a class one by one: a table that can be sorted and narrowed to a status or a lesson.

import { byId, choices, make, say } from '../base/dom.js';
import { remarks } from '../words/remark.js';
import { teach } from '../words/teach.js';

const t = teach.check.rows;
const STATUS = ['verified', 'altered', 'unknown_engine', 'unknown_lesson', 'unreadable'];
/** The signs that stand before a status' word. */
export const SIGNS = { verified: '✓', altered: '≠', unknown_engine: '◇', unknown_lesson: '□', unreadable: '×', copies: '=' };
/** Rows that are put on the page at once. */
const PAGE = 100;

/** A status as sign and word. */
export const statusTag = (status) => make('span', { class: `status ${status}` }, make('span', { class: 'sign', 'aria-hidden': 'true' }, SIGNS[status]), teach.check.status[status]);

/** The step with the fewest marks, the first of equals; null where nothing is missing. */
function weakest(row) {
  const least = row.steps.reduce((low, step) => (low === null || (step.score ?? 0) < (low.score ?? 0) ? step : low), null);
  return least && (least.score ?? 0) < 1 ? least : null;
}

/** What a column sorts by; text and numbers alike, null last. */
const KEYS = {
  number: (row) => row.number,
  learner: (row) => row.called,
  lesson: (row) => row.title,
  status: (row) => STATUS.indexOf(row.status),
  total: (row) => row.total,
  weakest: (row) => nameOf(weakest(row)),
  note: (row) => notes(row).join(' ') || null,
  source: (row) => t.place(row.source, row.line),
};

/** What is to be known of a row, a sentence each. */
export function notes(row) {
  const gates = row.gates_failed?.length > 0 && t.gatesFailed(row.gates_failed.map(remarks.gate));
  return [gates, row.note && `${row.note[0].toUpperCase()}${row.note.slice(1)}.`.replace(/\.\.$/, '.'), row.same_log_as && t.sameLog(row.same_log_as), row.alike && t.alike(row.alike, row.alike_share), row.repeat_of && t.repeat(row.repeat_of)].filter(Boolean);
}

function inOrder(by, falling) {
  const collator = new Intl.Collator(teach.language, { numeric: true });
  return (a, b) => {
    const [left, right] = [KEYS[by](a), KEYS[by](b)];
    if (left === null || right === null) return (left === null) - (right === null) || a.number - b.number;
    const order = typeof left === 'number' ? left - right : collator.compare(left, right);
    return (falling ? -order : order) || a.number - b.number;
  };
}

/** Keeps the table. Returns `show(rows)`; a row is the report's with `number`, `title`, and how the learner is `called`. */
export function rowsTable() {
  const head = make('tr', { role: 'row' });
  const body = make('tbody', { role: 'rowgroup' });
  byId('rows').append(make('thead', { role: 'rowgroup' }, head), body);
  let rows = [];
  let sort = { by: 'number', falling: false };
  let status = 'all';
  let lesson = 'all';
  let limit = PAGE;

  // In the order of the cells of a line; that of the texts is another.
  for (const by of Object.keys(KEYS)) {
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
    next?.setAttribute('tabindex', '-1');
    next?.focus();
  });
  addEventListener('beforeprint', () => update(Infinity));
  addEventListener('afterprint', () => update());

  const fits = (row) => (status === 'all' || (status === 'copies' ? row.same_log_as !== null || row.alike !== null : row.status === status)) && (lesson === 'all' || row.lesson === lesson);

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
    const counted = [...STATUS.filter((s) => rows.some((r) => r.status === s)), ...(rows.some((r) => r.same_log_as !== null || r.alike !== null) ? ['copies'] : [])];
    if (!counted.includes(status)) status = 'all';
    choices(byId('filter-status'), [['all', t.all], ...counted.map((s) => [s, teach.check.status[s]])], (value) => narrow({ status: value }))(status);
    const titles = new Map(rows.filter((r) => r.lesson !== null).map((r) => [r.lesson, r.title]));
    if (!titles.has(lesson)) lesson = 'all';
    choices(byId('filter-lesson'), [['all', t.all], ...titles], (value) => narrow({ lesson: value }))(lesson);
  }

  function narrow(to) {
    status = to.status ?? status;
    lesson = to.lesson ?? lesson;
    limit = PAGE;
    update();
  }

  return (given) => {
    rows = given;
    limit = PAGE;
    filters();
    update();
  };
}

function line(row) {
  const cell = (by, ...content) => make('td', { role: 'cell', class: `of-${by}`, 'data-name': t.columns[by] }, ...content);
  const passed = row.passed === null ? '' : row.passed ? t.passed : row.complete ? t.notPassed : t.incomplete;
  const weak = weakest(row);
  return make('tr', { role: 'row', 'data-status': row.status },
    cell('number', String(row.number)),
    make('th', { scope: 'row', role: 'rowheader', class: 'of-learner', 'data-name': t.columns.learner }, row.called || make('span', { class: 'quiet' }, row.learner === null ? t.noLearner : t.noCode)),
    cell('lesson', row.title ?? ''),
    cell('status', statusTag(row.status)),
    cell('total', ...(row.total === null ? [] : [make('strong', {}, scoreOf(row.total)), make('span', { class: 'passed' }, passed)])),
    cell('weakest', weak ? t.weakest(nameOf(weak), weak.score ?? 0) : ''),
    cell('note', ...notes(row).map((note) => make('p', {}, note))),
    cell('source', t.place(row.source, row.line)));
}

/** One decimal, as `downbeam grade` prints it. */
const scoreOf = teach.percentFine;
const nameOf = (step) => (step ? teach.stepName(step) : null);
