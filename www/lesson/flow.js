// A lesson from the list to the receipt: choose, begin, run, done. The attempt itself is the injection's; what it scores is the desk's. The
// lesson that is open is in run.js, what is shown of it in panel.js; here they are joined.

import { connect } from '../delivery/choose.js';
import { button, byId, make, within } from '../base/dom.js';
import { reason } from '../engine/room.js';
import { saveText } from '../base/save.js';
import { texts } from '../words/injection.js';
import { lesson as t } from '../words/lesson.js';
import { lessonDesk, shipped } from './desk.js';
import { interrupted, noteRunning } from './interrupted.js';
import { lessons, showList } from './list.js';
import { naming } from './naming.js';
import { beginForm, doneContent, keepCode, lessonPanel, runningContent } from './panel.js';
import { following, handIn, keepNow, keepSoon, noRun, openLesson, receiptName, stateFor } from './run.js';

/**
 * @import { Label, LessonEntry, Standing } from '../pkg/values.js'
 * @import { App } from '../state/page-state.js'
 * @import { AttemptKeeper } from '../injection/attempt.js'
 * @import { Run } from './run.js'
 *
 * What lessons need of the injection.
 * @typedef {{ attempt: AttemptKeeper, perform: (action: import('../pkg/values.js').Action) => void, restart: () => void, field_mm: () => number }} Needle
 *
 * @typedef {ReturnType<typeof lessonFlow>} LessonFlow
 *
 * @typedef {{ notice: (sentences: string[]) => void, said: (sentence: string) => void, leaveAddress: () => void }} FlowActs
 *
 * Everything that the steps of the flow share.
 * @typedef {{ app: App, needle: Needle, act: FlowActs, run: Run, panel: ReturnType<typeof lessonPanel>, exercise: ReturnType<typeof naming> }} Flow
 */

/** The state when no lesson is open. */
const NO_LESSON = { lesson: '', seed: null, changed: '' };

/**
 * See `on-demand.js`.
 * @param {App} app
 * @param {Needle} needle
 * @param {FlowActs} act
 */
export function lessonFlow(app, needle, act) {
  const run = noRun(app, needle.attempt);
  const flow = {
    app, needle, act, run,
    // A package holds one lesson: there is no list to go back to.
    panel: lessonPanel(() => leaveForList(flow), () => run.delivery?.lesson != null),
    exercise: exerciseOf(app, needle, act, run),
  };
  addEventListener('pagehide', () => {
    keepNow(run);
    run.delivery?.leave();
  });
  return {
    list: () => list(flow),
    arrive: (/** @type {string} */ fragment) => arrive(flow, fragment),
    delivered: () => delivered(flow),
    /** After a reload: the lesson that was under way, with the offer to go on. */
    resume: () => begin(flow, interrupted() ?? ''),
    leave: () => leave(flow),
    after: () => after(flow),
  };
}

/**
 * The exercise of naming parts, in its stage.
 * @param {App} app
 * @param {Needle} needle
 * @param {FlowActs} act
 * @param {Run} run
 */
function exerciseOf(app, needle, act, run) {
  const { attempt } = needle;
  return naming(within(byId('stage-parts'), '.stage-body'), {
    on: () => Boolean(app.lesson?.naming()?.asks) && attempt.on() && !attempt.report()?.finished,
    room: () => app.room,
    held: () => app.state.byExposure,
    field_mm: () => needle.field_mm(),
    mayShow: () => !run.open?.assessment,
    answer: (/** @type {Label} */ { level, part, side }) => needle.perform({ do: 'point', level, part, side }),
    said: act.said,
    touch: app.touch,
  });
}

/**
 * Where progress and results go; connected once.
 * @param {Flow} flow
 */
async function place({ run, act }) {
  const where = run.delivery ?? (await connect({ notice: act.notice }));
  run.delivery ??= where;
  return run.delivery;
}

/**
 * The course.
 * @param {Flow} flow
 * @returns {Promise<void>}
 */
async function list(flow) {
  const { panel, act } = flow;
  flow.run.open = null;
  panel.show('list', t.heading, make('p', { class: 'quiet', role: 'status' }, t.loading));
  try {
    await showList(panel.body, { open: (/** @type {string} */ json) => begin(flow, json), notice: act.notice, said: act.said });
  } catch (error) {
    panel.body.replaceChildren(make('p', { role: 'alert' }, t.noList(reason(error))), make('div', { class: 'row' }, button(t.retry, () => list(flow), { id: 'lesson-retry' })));
  }
}

/**
 * Before a lesson.
 * @param {Flow} flow
 * @param {string} json
 */
async function begin(flow, json) {
  const { panel, act } = flow;
  /** @type {LessonEntry} */
  let info;
  const where = await place(flow);
  try {
    info = (await lessonDesk()).read(json, texts.language);
  } catch (error) {
    act.notice([t.unreadable(reason(error))]);
    if (panel.body.childElementCount === 0) await list(flow);
    return;
  }
  const form = await beginForm(info, where, (code, lines) => start(flow, json, info, code, lines));
  panel.show('begin', info.title, form);
  panel.toPanel();
}

/**
 * Begins it for a learner's code, or goes on with a log.
 * @param {Flow} flow
 * @param {string} json
 * @param {LessonEntry} info
 * @param {string} code
 * @param {string[] | null} lines
 */
async function start(flow, json, info, code, lines) {
  const { app, needle, act, run, exercise } = flow;
  const where = await place(flow);
  if (info.asks_code && code.trim() === '') {
    act.notice([t.codeWanted]);
    return byId('lesson-code').focus();
  }
  let desk;
  try {
    desk = new (await lessonDesk())(json, code);
  } catch (error) {
    return act.notice([t.unreadable(reason(error))]);
  }
  const drawn = desk.drawn();
  keepCode(drawn.learner);
  where.opened?.({ sha256: info.sha256, learner: drawn.learner });
  const open = openLesson(run, { json, info, desk, drawn, lines }, exercise);
  exercise.forget();
  app.lesson = open;
  noteRunning(json);
  showRunning(flow);
  const state = stateFor(run, open);
  needle.restart();
  app.change(state);
  app.touch();
  flow.panel.toPanel();
}

/** @param {Flow} flow */
function showRunning({ run, panel, exercise }) {
  if (run.open) panel.show('running', run.open.info.title, ...runningContent(run.open, exercise.ask));
}

/**
 * The attempt has been finished: the marks, and what is handed in.
 * @param {Flow} flow
 */
async function finished(flow) {
  const { run, panel, act, needle } = flow;
  const { open } = run;
  if (!open) return;
  run.handedIn = true;
  noteRunning(null);
  const score = /** @type {Standing} */ (needle.attempt.score());
  let [receipt, trouble] = ['', ''];
  try {
    receipt = open.desk.receipt(needle.attempt.lines());
  } catch (error) {
    trouble = t.bad(reason(error));
  }
  const { content, row } = doneContent(open, score, receipt, trouble, {
    save: () => saveText(receiptName(open), receipt, 'application/json'),
    again: () => begin(flow, open.json),
  });
  panel.show('done', open.info.title, ...content);
  const answer = await handIn(run, open, score, receipt);
  if (answer?.said) act.notice([answer.said]);
  const next = run.delivery?.lesson === null ? await following(open.info.sha256).catch(() => null) : null;
  if (next) row.append(button(t.next(next.info.title), () => begin(flow, next.json), { id: 'lesson-next' }));
}

/**
 * Ends the lesson, and the picture stays.
 * @param {Flow} flow
 */
function leave({ app, run, panel }) {
  // What was not gone on with after a reload is not offered again.
  noteRunning(null);
  if (!app.lesson) return;
  keepNow(run);
  app.lesson = null;
  run.open = null;
  panel.hide();
  document.body.dataset.lesson = '';
  app.change({ ...NO_LESSON });
}

/** @param {Flow} flow */
function leaveForList(flow) {
  const { app, act, run } = flow;
  const ran = Boolean(app.lesson) && !run.handedIn;
  leave(flow);
  act.leaveAddress();
  app.change({ lessons: true, injection: false, selfTest: false });
  if (ran) act.said(t.left);
  const own = run.delivery?.lesson ?? null;
  if (own === null) list(flow);
  else begin(flow, own);
}

/**
 * The page was brought by a place outside: the lesson that it carries, or else the page as it is.
 * @param {Flow} flow
 */
async function delivered(flow) {
  const { lesson } = await place(flow);
  if (lesson !== null) return begin(flow, lesson);
  flow.panel.hide();
  flow.app.change({ lessons: false });
  flow.app.touch();
}

/**
 * The lesson that an address carries or names.
 * @param {Flow} flow
 * @param {string} fragment
 */
async function arrive(flow, fragment) {
  const { app, act } = flow;
  leave(flow);
  app.change({ lessons: true, injection: false });
  const { lesson } = await place(flow);
  if (lesson !== null) return begin(flow, lesson);
  const [, kind, value] = /^#(lesson|open)=(.*)$/.exec(fragment) ?? [];
  try {
    if (kind === 'lesson') return await begin(flow, (await lessonDesk()).fromLink(fragment));
    const known = (await lessons()).find((l) => l.id === decodeURIComponent(value));
    if (known) return await begin(flow, await shipped(known.id));
    act.notice([t.unknown(value.slice(0, 40))]);
  } catch (error) {
    act.notice([t.unreadable(reason(error))]);
  }
  await list(flow);
}

/**
 * After each frame: keeps the log, a second at most behind, and sees whether the attempt has been finished.
 * @param {Flow} flow
 */
function after(flow) {
  const { app, run, needle: { attempt } } = flow;
  if (!app.lesson || !attempt.inLesson()) return;
  const now = app.lesson.naming();
  if (now) flow.exercise.update(now);
  const report = attempt.report();
  if (report?.finished && !run.handedIn) return void finished(flow);
  if (run.handedIn && !report?.finished) {
    run.handedIn = false;
    noteRunning(run.open?.json ?? null);
    showRunning(flow);
  }
  keepSoon(run);
}
