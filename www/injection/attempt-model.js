// The attempt at a whole injection as the page holds it: its clock, what the engine says of it, and what ran before it. No elements here.
// One plain object, and functions over it.

import { tenth } from '../base/tenth.js';
import { tableStart } from '../controls/table.js';
import { reason } from '../engine/room.js';
import { CASE } from '../state/page-state.js';
import { choiceOf, keyOf, only, PATIENT, placeOf } from '../state/positioning.js';
import { texts } from '../words/injection.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { Action, ProcedureReport, Score, Standing, AttemptFile } from '../pkg/values.js'
 * @import { App, PageState } from '../state/page-state.js'
 * @import { PatientChoice } from '../state/positioning.js'
 * @import { Shaping } from '../engine/shaping.js'
 *
 * What is done beside it: `notice(sentences)`, `said(sentence)` for the live line, `fresh()` when pictures by exposure begin anew.
 * @typedef {{ notice: (sentences: string[]) => void, said: (sentence: string) => void, fresh: () => void }} AttemptActs
 *
 * @typedef {object} AttemptModel
 * @property {App} app
 * @property {Shaping} patient
 * @property {AttemptActs} acts
 * @property {number} begun_ms when its clock stood at nothing
 * @property {string} begunFor the case that it was begun for (`caseKey`); nothing while there is none
 * @property {number} revision changes with everything that is done
 * @property {ProcedureReport | null} report what the engine says of it as it stands
 * @property {ProcedureReport | null} pictured by exposure: the same when the picture that is shown was taken
 * @property {{ of: number, value: Score | Standing | null }} score the marks as of a revision
 * @property {{ key: string, trace: AttemptFile } | null} last the attempt before this one, so that no slip of a hand loses it
 * @property {{ trace: AttemptFile, back: { patient: PatientChoice, trace: AttemptFile | null } } | null} waiting a file that waits for its patient to be shaped,
 *   and what to go back to if it does not fit
 * @property {boolean} replaying
 * @property {boolean} inLesson whether it belongs to a lesson
 */

const TICK_MS = 50;
/** @type {readonly (keyof PageState)[]} */
const CASE_KEYS = [...CASE, 'start', 'byExposure'];

/**
 * With nothing begun.
 * @param {App} app
 * @param {Shaping} patient
 * @param {AttemptActs} acts
 * @returns {AttemptModel}
 */
export const attemptModel = (app, patient, acts) => ({
  app, patient, acts, begun_ms: 0, begunFor: '', revision: 0, report: null, pictured: null, score: { of: -1, value: null }, last: null, waiting: null,
  replaying: false, inLesson: false,
});

/**
 * What an attempt is begun for: another case wants another attempt.
 * @param {PageState} state
 */
export const caseKey = (state) => keyOf(state, CASE_KEYS);

/**
 * The engine; to be asked for only where there is one.
 * @param {AttemptModel} m
 * @returns {TeachingRoom}
 */
export function roomOf({ app }) {
  if (!app.room) throw new Error('there is no engine');
  return app.room;
}

/** @param {AttemptModel} m */
export const isOn = ({ app, begunFor }) => Boolean(app.room) && app.state.injection && begunFor !== '';

/**
 * The tick that it is.
 * @param {AttemptModel} m
 */
export const tickOf = (m) => Math.max(0, Math.floor((performance.now() - m.begun_ms) / TICK_MS));

/**
 * How long it has taken, whole seconds.
 * @param {AttemptModel} m
 */
export const secondsOf = (m) => Math.round((tickOf(m) * TICK_MS) / 1000);

/**
 * Sets the clock so that it stands at a tick.
 * @param {AttemptModel} m
 * @param {number} tick
 */
export const setClock = (m, tick) => void (m.begun_ms = performance.now() - tick * TICK_MS);

/**
 * Something was done: asks the engine how it stands.
 * @param {AttemptModel} m
 */
export function advanced(m) {
  m.revision += 1;
  m.report = roomOf(m).procedure(tickOf(m));
  return m.report;
}

/**
 * The marks so far, or null.
 * @param {AttemptModel} m
 */
export function scoreOf(m) {
  if (!isOn(m)) return null;
  if (m.score.of !== m.revision) {
    const room = roomOf(m);
    m.score = { of: m.revision, value: m.app.lesson ? m.app.lesson.standing(room.attemptLog()) : room.score() };
  }
  return m.score.value;
}

/**
 * Takes over where the engine says that C-arm, table and case stand.
 * @param {AttemptModel} m
 */
export function takeOver(m) {
  const { orientation } = roomOf(m).report();
  const [table_x_mm, table_y_mm, table_z_mm] = roomOf(m).tableShift();
  m.app.change({ ...placeOf(orientation), table_x_mm, table_y_mm, table_z_mm, rotation_deg: tenth(orientation.image_rotation), ownView: null });
}

/**
 * Begins one at the page's case, or goes on with the lesson's.
 * @param {AttemptModel} m
 */
export function begin(m) {
  const { app } = m;
  if (app.lesson) {
    roomOf(m).beginCase(app.lesson.drawn.case);
    // The table goes back to where the lesson has it stand.
    if (app.lesson.asks.has('target_centred')) app.change(tableStart(app));
  }
  if (!app.lesson) roomOf(m).newAttempt({ exposures: app.state.byExposure });
  if (app.state.byExposure) m.acts.fresh();
  setClock(m, 0);
  m.begunFor = caseKey(app.state);
  m.inLesson = Boolean(app.lesson);
  m.report = m.pictured = null;
  m.revision += 1;
  const lines = app.lesson?.resume;
  if (app.lesson) app.lesson.resume = null;
  if (lines) goOn(m, lines);
}

/**
 * The tick of a log's last line.
 * @param {string[]} lines
 */
export const endOf = (lines) => Number.parseInt(lines.at(-1) ?? '0', 10);

/**
 * Takes a lesson up where its log left it.
 * @param {AttemptModel} m
 * @param {string[]} lines
 */
function goOn(m, lines) {
  try {
    roomOf(m).resumeLog(lines);
  } catch (error) {
    return m.acts.notice([texts.needle.file.notResumed(reason(error))]);
  }
  m.begun_ms -= endOf(lines) * TICK_MS;
  takeOver(m);
  m.acts.said(texts.needle.file.opened);
}

/**
 * Keeps what has been done, if anything has; to be called before the engine hears of another case.
 * @param {AttemptModel} m
 */
export function putAside(m) {
  if (m.replaying || !m.app.room || m.begunFor === '' || m.inLesson || !m.report || m.report.actions === 0) return;
  try {
    m.last = { key: m.begunFor, trace: m.app.room.attemptTrace() };
  } catch {
    // Without a trace there is nothing to come back to; the new attempt goes on.
  }
}

/**
 * Whether a trace is of the page's patient.
 * @param {AttemptModel} m
 * @param {AttemptFile} trace
 */
export const isOf = ({ app }, trace) => keyOf(choiceOf(trace), PATIENT) === keyOf(app.state, PATIENT);

/**
 * The page's patient.
 * @param {AttemptModel} m
 */
export const patientNow = ({ app }) => only(app.state, PATIENT);
