// The lesson that is open, before and while it runs: what is known of it, what the page's state becomes for it, what is kept of it and what is
// handed in. No elements here.

import { tableStart } from '../controls/table.js';
import { choiceOf } from '../state/positioning.js';
import { startPosition } from '../state/start.js';
import { wantsMark } from '../injection/stages.js';
import { lesson as t } from '../words/lesson.js';
import { lessons } from './list.js';

/**
 * @import { LessonDesk } from '../pkg/lessons.js'
 * @import { DrawnEntry, ExerciseEntry, Label, LessonEntry, Score, Standing } from '../pkg/values.js'
 * @import { App, PageState, RunningLesson } from '../state/page-state.js'
 * @import { AttemptKeeper } from '../injection/attempt.js'
 * @import { Delivery } from '../delivery/choose.js'
 *
 * A lesson that was begun: what the page knows of it, and the engine's desk.
 * @typedef {RunningLesson & { desk: LessonDesk }} OpenLesson
 *
 * The part of the exercise of naming parts that a lesson asks (naming.js).
 * @typedef {{ lit: (exercise: ExerciseEntry | null | undefined) => Label | null, verdict: (answer: ExerciseEntry) => string }} Exercise
 *
 * @typedef {object} Run
 * @property {App} app
 * @property {AttemptKeeper} attempt
 * @property {Delivery | null} delivery
 * @property {OpenLesson | null} open
 * @property {number} runs how many were begun on this page
 * @property {boolean} handedIn
 * @property {{ revision: number, at_ms: number, timer: ReturnType<typeof setTimeout> | 0 }} kept the attempt as it was kept last, and when
 */

/** The log is kept a second at most behind. */
const KEEP_MS = 1000;
const nothingKept = () => ({ revision: -1, at_ms: 0, timer: /** @type {0} */ (0) });

/**
 * With no lesson open.
 * @param {App} app
 * @param {AttemptKeeper} attempt
 * @returns {Run}
 */
export const noRun = (app, attempt) => ({ app, attempt, delivery: null, open: null, runs: 0, handedIn: false, kept: nothingKept() });

/**
 * Opens a lesson as drawn for a learner.
 * @param {Run} run
 * @param {{ json: string, info: LessonEntry, desk: LessonDesk, drawn: DrawnEntry, lines: string[] | null }} begun
 * @param {Exercise} exercise
 */
export function openLesson(run, begun, exercise) {
  run.runs += 1;
  run.open = opened(run, begun, exercise);
  run.handedIn = false;
  run.kept = nothingKept();
  return run.open;
}

/**
 * What the attempt and its panel know of the lesson.
 * @param {Run} run
 * @param {{ json: string, info: LessonEntry, desk: LessonDesk, drawn: DrawnEntry, lines: string[] | null }} begun
 * @param {Exercise} exercise
 * @returns {OpenLesson}
 */
function opened(run, { json, info, desk, drawn, lines }, exercise) {
  const asks = new Set(info.steps.map((s) => s.id));
  const named = () => /** @type {Standing | null} */ (run.attempt.score())?.exercise ?? null;
  return {
    json, info, desk, drawn,
    resume: lines,
    asks,
    assessment: info.mode === 'assessment',
    wantsMark: wantsMark(asks),
    openApproach: info.open_approach,
    /** The marks for a log, from the desk. */
    standing: (log) => desk.standing(log),
    /** Where the naming of parts stands, or null. */
    naming: named,
    lit: () => exercise.lit(named()),
    verdict: (answer) => exercise.verdict(answer),
    /** Where to look for the part that is asked for. */
    hintPart() {
      const part = named()?.asks;
      return part ? t.naming.hint(part) : t.hintDone;
    },
    hintDone: t.hintDone,
    hintOpen: t.hintOpen,
    noUndo: (finished) => Boolean(run.open?.assessment && finished),
  };
}

/**
 * What the page's state becomes when it begins.
 * @param {Run} run
 * @param {OpenLesson} open
 * @returns {Partial<PageState>}
 */
export function stateFor(run, open) {
  const { info, drawn, asks, assessment } = open;
  const start = 1 + (drawn.seed % 9998);
  const from = startPosition(start);
  // The parts are named from the needle's side.
  if (asks.has('name_parts')) from.oblique_deg = Math.abs(from.oblique_deg) * (drawn.side === 'left' ? 1 : -1);
  return {
    lessons: false, injection: true, lesson: `${info.sha256} ${drawn.learner} ${run.runs}`, ...choiceOf(drawn), level: drawn.level, side: drawn.side,
    byExposure: info.exposures, selfTest: assessment, guided: info.mode === 'guided', ownView: null, labels: false,
    outlines: asks.has('name_parts') || (!assessment && run.app.state.outlines), start, ...from, rotation_deg: 0, ...tableStart({ lesson: open }),
  };
}

/**
 * Keeps the log, if anything has been done since it was kept last.
 * @param {Run} run
 */
export function keepNow(run) {
  const { attempt, kept } = run;
  clearTimeout(kept.timer);
  kept.timer = 0;
  if (!run.app.lesson || run.handedIn || !attempt.on() || !attempt.inLesson() || kept.revision === attempt.revision()) return;
  kept.revision = attempt.revision();
  kept.at_ms = performance.now();
  const lines = attempt.lines();
  if (lines.length > 0) run.delivery?.keep(lines);
}

/**
 * Keeps the log within a second of when it was kept last.
 * @param {Run} run
 */
export function keepSoon(run) {
  const { attempt, kept } = run;
  if (attempt.revision() === kept.revision || kept.timer) return;
  kept.timer = setTimeout(() => keepNow(run), Math.max(0, kept.at_ms + KEEP_MS - performance.now()));
}

/**
 * Hands the result in. Resolves to what the place says of it.
 * @param {Run} run
 * @param {OpenLesson} open
 * @param {Standing} score
 * @param {string} receipt empty where there is none
 */
export function handIn(run, { info }, score, receipt) {
  clearTimeout(run.kept.timer);
  return run.delivery?.finish({
    lesson: info.id, title: info.title, score: score.total, passed: score.passed, complete: score.complete, seconds: run.attempt.seconds(),
    steps: score.steps.map(({ id, name, score: share }) => ({ id, name, score: share })), receipt, lines: run.attempt.lines(),
  });
}

/**
 * A name for the file of the receipt.
 * @param {OpenLesson} open
 */
export const receiptName = ({ info, drawn }) => `receipt-${info.id}${drawn.learner ? `-${drawn.learner.replace(/[^\p{L}\p{N}._-]+/gu, '_')}` : ''}.json`;

/**
 * The lesson of the course after the one of that hash, or null.
 * @param {string} sha256
 */
export async function following(sha256) {
  const all = await lessons();
  const at = all.findIndex((l) => l.info.sha256 === sha256);
  return at < 0 ? null : (all[at + 1] ?? null);
}
