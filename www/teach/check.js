// The teacher's page: takes receipts in, has them replayed in slices, and shows the class. Nothing leaves the page.

import { chooser } from '../base/chooser.js';
import { lessonModule } from '../lesson/desk.js';
import { byId, make, say } from '../base/dom.js';
import { saveText } from '../base/save.js';
import { bandPatterns, classSection } from './class-chart.js';
import { rowsTable, statusTag } from './class-rows.js';
import { learners } from './class-learners.js';
import { rest } from '../base/frame.js';
import { beginPage, complaint } from '../controls/page-frame.js';
import { lessonText, shippedLessons } from './lesson-shelf.js';
import { chosen, dropped, placeOf, receiptsIn, sorted } from './receipt-files.js';
import { teach } from '../words/teach.js';

const t = teach.check;
/** How long the page may be busy at a stretch, ms. */
const SLICE_MS = 24;
const NAMED = 20;
/** As `practice_receipt::PracticeReceipt::is_meant` has it: asked before the module is there. */
const PRACTICE = /"downbeam-practice-receipt-/;
const STATUS = /** @type {const} */ (['verified', 'altered', 'unknown_engine', 'unknown_lesson', 'unreadable']);

/**
 * @import { ClassRoom } from '../pkg/lessons.js'
 * @import { LessonSummary } from '../pkg/values.js'
 * @import { Status } from './class-rows.js'
 * @import { Given } from './receipt-files.js'
 */

const notice = beginPage(t.title);
document.body.append(bandPatterns());
const showRows = rowsTable();
/**
 * Titles of the lessons by id, and how many of them came with the page and how many did not.
 * @type {Map<string, string>}
 */
const titles = new Map();
const lessons = { shipped: 0, own: 0 };
const titleOf = (/** @type {string} */ id) => titles.get(id) ?? id;
/** @type {Awaited<ReturnType<typeof lessonModule>> | null} */
let engine = null;
/** @type {ClassRoom | null} */
let room = null;
/** Receipts in the engine, and those of them that are not checked yet. */
let given = 0;
let left = 0;
let cancelled = false;
/**
 * Takes receipts of practice in, once there were any.
 * @type {((files: { name: string, text: string }[]) => Promise<void>) | null}
 */
let addCurves = null;
/**
 * One thing after the other: what is given meanwhile waits.
 * @type {Promise<unknown>}
 */
let work = begin();
work.catch((error) => notice(complaint(error), { again: !room }));

async function begin() {
  say(byId('lessons-state'), teach.loading);
  try {
    engine = await lessonModule(teach.noEngine);
  } catch (error) {
    say(byId('lessons-state'), complaint(error));
    throw error;
  }
  room = new engine.ClassRoom();
  const shelf = await shippedLessons();
  for (const { id, text } of shelf.lessons) {
    try {
      addLesson(text);
      lessons.shipped += 1;
    } catch (error) {
      shelf.problems.push(teach.shelf.bad(id, complaint(error)));
    }
  }
  if (shelf.problems.length > 0) notice(shelf.problems.join(' '));
  sayLessons();
  document.documentElement.dataset.settled = 'yes';
}

/** What there is once the engine has come. */
function there() {
  if (!engine || !room) throw new Error(teach.loading);
  return { engine, room };
}

/** @param {string} json */
function addLesson(json) {
  const { engine, room } = there();
  const title = room.addLesson(json, teach.language);
  titles.set(engine.LessonDesk.read(json, teach.language).id, title);
  return title;
}

const sayLessons = () => say(byId('lessons-state'), t.lessonsState(lessons.shipped, lessons.own));

/**
 * Does a thing once what is under way has come to its end; without an engine it only says so.
 * @template T
 * @param {() => T | Promise<T>} act
 * @returns {Promise<T | void>}
 */
function afterwards(act) {
  const done = work.then(act).catch((error) => notice(complaint(error)));
  work = done;
  return done;
}

const showLearners = learners({ room: () => room, afterwards, titleOf, listed: () => (byId('result').hidden ? showLearners() : show()) });

// Lessons of one's own.

chooser(byId('choose-lessons'), byId('lesson-files', HTMLInputElement), (files) => afterwards(() => ownLessons(files.map((file) => async () => ({ name: file.name, text: await lessonText(file) })))));
const linkField = byId('lesson-link', HTMLInputElement);
byId('add-link').addEventListener('click', addLink);
linkField.addEventListener('keydown', (event) => event.key === 'Enter' && addLink());

// The author's page hands over a lesson in the address of this one.
if (/^#lesson=/.test(location.hash)) {
  const link = location.href;
  afterwards(() => ownLessons([fromLink(link)]));
}

function addLink() {
  const link = linkField.value.trim();
  if (link === '') return linkField.focus();
  afterwards(() => ownLessons([fromLink(link)])).then((added) => added && (linkField.value = ''));
}

/** The lesson in a link, which has no name of its own. */
function fromLink(/** @type {string} */ link) {
  return async () => ({ name: '', text: there().engine.LessonDesk.fromLink(link) });
}

/**
 * Adds lessons and checks again what has been checked. Returns whether all could be used.
 * @param {(() => Promise<{ name: string, text: string }>)[]} sources
 */
async function ownLessons(sources) {
  if (!room) return false;
  /** @type {string[]} */
  const bad = [];
  /** @type {string[]} */
  const done = [];
  for (const source of sources) {
    try {
      const { name, text } = await source();
      try {
        done.push(addLesson(text));
      } catch (error) {
        bad.push(name ? teach.shelf.bad(name, complaint(error)) : complaint(error));
      }
    } catch (error) {
      bad.push(complaint(error));
    }
  }
  lessons.own += done.length;
  byId('own-lessons').append(...done.map((title) => make('li', {}, title)));
  say(byId('lesson-complaint'), bad.join(' '));
  byId('lesson-complaint').hidden = bad.length === 0;
  sayLessons();
  if (done.length > 0) {
    say(byId('status'), done.map(t.added).join(' '));
    left = room.check(0);
    if (left > 0) await checkAll();
  }
  return bad.length === 0;
}

// Receipts.

chooser(byId('choose-files'), byId('files', HTMLInputElement), (files) => take(async () => chosen(files)));
chooser(byId('choose-folder'), byId('folder', HTMLInputElement), (files) => take(async () => chosen(files)));
for (const type of /** @type {const} */ (['dragenter', 'dragover'])) {
  addEventListener(type, (event) => {
    if (![...(event.dataTransfer?.types ?? [])].includes('Files')) return;
    event.preventDefault();
    byId('drop').dataset.over = 'yes';
  });
}
addEventListener('dragleave', (event) => {
  if (!event.relatedTarget) delete byId('drop').dataset.over;
});
addEventListener('drop', (event) => {
  delete byId('drop').dataset.over;
  if (!event.dataTransfer?.items?.length) return;
  event.preventDefault();
  // What was dropped can only be asked for now.
  const found = dropped(event.dataTransfer);
  take(() => found);
});
byId('cancel').addEventListener('click', () => (cancelled = true));
byId('go-on').addEventListener('click', () => afterwards(checkAll));
byId('clear').addEventListener('click', () => {
  cancelled = true;
  afterwards(clear);
});

const take = (/** @type {() => Promise<Given[]>} */ find) => afterwards(async () => room && readAll(await find()));

/**
 * Reads the files into the engine, then checks.
 * @param {Given[]} files
 */
async function readAll(files) {
  const { engine, room } = there();
  cancelled = false;
  progress(t.waiting, null);
  const { used, leftOut } = await sorted(files, engine.ClassRoom);
  showLeftOut(leftOut);
  /** @type {{ name: string, text: string }[]} */
  const practice = [];
  let read = 0;
  let since = performance.now();
  reading: for (const one of used) {
    const place = placeOf(one);
    for await (const { line, text, why } of receiptsIn(one, engine.ClassRoom)) {
      if (why === undefined && PRACTICE.test(text)) {
        practice.push({ name: t.rows.place(place, line), text });
        continue;
      }
      if (why === undefined) room.addReceipt(place, line, text);
      else room.addUnreadable(place, line, why);
      given += 1;
      if (performance.now() - since > SLICE_MS) {
        progress(t.reading(read + 1, used.length), read / used.length);
        await rest();
        since = performance.now();
      }
      if (cancelled) break reading;
    }
    read += 1;
  }
  if (practice.length > 0) await showPractice(practice);
  left = room.check(0);
  if (cancelled) {
    show();
    say(byId('status'), t.stoppedReading(read, used.length));
    notice(t.stoppedReading(read, used.length));
    return;
  }
  if (left === 0 && practice.length > 0) return void show();
  if (left === 0) {
    progress('', undefined);
    return void notice(t.nothing);
  }
  await checkAll();
}

/**
 * Receipts of practice are asked again by the module for practice, which comes when the first one does.
 * @param {{ name: string, text: string }[]} receipts
 */
async function showPractice(receipts) {
  const { practiceModule, fillPractice } = await import('../practice/module.js');
  const { classCurves } = await import('../practice/class-curves.js');
  fillPractice();
  addCurves ??= classCurves(await practiceModule());
  byId('result').hidden = false;
  await addCurves(receipts);
}

/** Checks all that is left, a slice at a time. */
async function checkAll() {
  const { room } = there();
  cancelled = false;
  while (left > 0 && !cancelled) {
    const until = performance.now() + SLICE_MS;
    do left = room.check(1);
    while (left > 0 && performance.now() < until);
    progress(t.checking(given - left, given), (given - left) / given);
    await rest();
  }
  show();
  say(byId('status'), left > 0 ? t.stopped(given - left, left) : t.done(given));
}

async function clear() {
  there().room.clear();
  given = left = 0;
  byId('result').hidden = byId('after').hidden = byId('left-out').hidden = true;
  progress('', undefined);
  say(byId('status'), t.cleared);
  byId('choose-files').focus();
}

/**
 * Shows how far it is: a share, null while that is not known, undefined when it is over.
 * @param {string} words
 * @param {number | null | undefined} share
 */
function progress(words, share) {
  byId('progress').hidden = share === undefined;
  if (share === undefined) return;
  say(byId('progress-text'), words);
  const bar = byId('progress-bar', HTMLProgressElement);
  if (share === null) bar.removeAttribute('value');
  else bar.value = share;
  byId('drop').hidden = true;
  byId('after').hidden = true;
}

/** @param {string[]} paths */
function showLeftOut(paths) {
  byId('left-out').hidden = paths.length === 0;
  say(byId('left-out-text'), t.leftOut(paths.length));
  byId('left-out-list').replaceChildren(...some(paths));
}

/**
 * The first of a list as list items, and how many more there are.
 * @param {string[]} texts
 */
function some(texts) {
  const more = texts.length - NAMED;
  return [...texts.slice(0, NAMED), ...(more > 0 ? [t.more(more)] : [])].map((text) => make('li', {}, text));
}

// The class.

function show() {
  progress('', undefined);
  byId('drop').hidden = false;
  byId('after').hidden = false;
  byId('go-on').hidden = left === 0;
  const report = there().room.report();
  const called = names();
  const rows = report.rows.map((row, i) => ({ ...row, number: i + 1, title: row.lesson === null ? null : titleOf(row.lesson), called: row.learner && called(row.learner) }));
  byId('result').hidden = false;
  say(byId('counts-heading'), left > 0 ? t.countsStopped(rows.length, left) : t.countsHeading(rows.length));
  const count = (/** @type {Status} */ status, /** @type {number} */ n) => make('div', { class: 'count', 'data-status': status, 'data-none': n === 0 }, make('dt', {}, statusTag(status)), make('dd', {}, make('strong', {}, String(n)), make('span', { class: 'quiet' }, t.statusMeans[status])));
  byId('counts').replaceChildren(...STATUS.map((status) => count(status, report.counts[status])), count('copies', report.copies));
  const unread = rows.filter((row) => row.status === 'unreadable').map((row) => teach.shelf.bad(t.rows.place(row.source, row.line), row.note));
  byId('unread').hidden = unread.length === 0;
  byId('unread-list').replaceChildren(...some(unread));
  byId('classes').replaceChildren(...report.lessons.map((lesson, i) => classSection(byName({ ...lesson, title: titleOf(lesson.lesson) }, called), i)));
  showRows(rows);
  showLearners(rows);
}

/** How a learner of a code is called: by name too where the class list has one. */
function names() {
  const listed = new Map(there().room.learners().learners.map(({ code, name }) => [code, t.learners.named(name ?? '', code)]));
  return (/** @type {string} */ code) => listed.get(code) ?? code;
}

/**
 * A lesson's class with its learners as they are called.
 * @param {LessonSummary} lesson
 * @param {(code: string) => string} called
 */
function byName(lesson, called) {
  const steps = lesson.steps.map((step) => ({ ...step, below_pass: step.below_pass.map(called) }));
  return { ...lesson, steps, gates: lesson.gates.map((gate) => ({ ...gate, failed: gate.failed.map(called) })) };
}

byId('save-csv').addEventListener('click', () => saveText(t.file.csv, there().room.csv(byId('separator', HTMLSelectElement).value, true), 'text/csv'));
byId('save-ndjson').addEventListener('click', () => saveText(t.file.ndjson, there().room.ndjson(), 'application/x-ndjson'));
byId('print').addEventListener('click', () => print());
