// Attempts from outside and from before: replayed in the engine, or refused in one sentence with nothing lost.

import { reason } from '../engine/room.js';
import { advanced, caseKey, endOf, isOf, isOn, patientNow, putAside, roomOf, setClock, takeOver } from './attempt-model.js';
import { choiceOf } from '../state/positioning.js';
import { texts } from '../words/injection.js';

/**
 * @import { AttemptFile } from '../pkg/values.js'
 * @import { Catalogue } from '../state/page-state.js'
 * @import { AttemptModel } from './attempt-model.js'
 */

/** What a saved attempt holds. */
const KEYS = ['patient', 'seed', 'changed', 'case', 'log'];
const words = () => texts.needle.file;

/**
 * Replays a trace in the engine; throws its sentence.
 * @param {AttemptModel} m
 * @param {AttemptFile} trace
 */
export function replay(m, trace) {
  const { app } = m;
  roomOf(m).loadAttempt(trace);
  const { target } = trace.case;
  const lines = roomOf(m).attemptLog();
  m.patient.aimedAt(target.level, target.side);
  m.replaying = true;
  app.change({ injection: true, level: target.level, side: target.side, byExposure: Boolean(trace.case.exposures) });
  m.begunFor = caseKey(app.state);
  m.inLesson = false;
  setClock(m, endOf(lines));
  m.pictured = null;
  if (app.state.byExposure) m.acts.fresh();
  takeOver(m);
  m.replaying = false;
  advanced(m);
}

/**
 * Opens a trace from outside. One sentence when it cannot be; the attempt that stands is kept.
 * @param {AttemptModel} m
 * @param {unknown} given
 */
export function openTrace(m, given) {
  const { app } = m;
  const problem = misshapen(given, app.catalogue);
  if (problem) return m.acts.notice([words().bad(problem)]);
  const trace = /** @type {AttemptFile} */ (given);
  const now = isOn(m) || isOf(m, trace) ? roomOf(m).attemptTrace() : null;
  if (isOf(m, trace)) return replayOr(m, trace, now);
  m.waiting = { trace, back: { patient: patientNow(m), trace: now } };
  app.change(choiceOf(trace));
}

/**
 * Replays a trace of the present patient, or goes back to what stood.
 * @param {AttemptModel} m
 * @param {AttemptFile} trace
 * @param {AttemptFile | null} back
 */
function replayOr(m, trace, back) {
  try {
    putAside(m);
    replay(m, trace);
    m.acts.said(words().opened);
  } catch (error) {
    m.acts.notice([words().bad(reason(error))]);
    // The engine changes nothing on an error.
    if (m.begunFor !== caseKey(m.app.state) && back) replay(m, back);
  }
  m.app.touch();
}

/**
 * The patient that a file waited for is there.
 * @param {AttemptModel} m
 */
export function patientReady(m) {
  if (!m.waiting || !isOf(m, m.waiting.trace)) return;
  const { trace, back } = m.waiting;
  m.waiting = null;
  try {
    replay(m, trace);
    m.acts.said(words().opened);
  } catch (error) {
    m.acts.notice([words().bad(reason(error))]);
    if (back.trace) m.waiting = { trace: back.trace, back: { patient: back.patient, trace: null } };
    m.app.change(back.patient);
  }
}

/**
 * Brings the attempt before this one back.
 * @param {AttemptModel} m
 */
export function bringBack(m) {
  if (!m.last) return;
  const { trace } = m.last;
  if (m.report && m.report.actions > 0) putAside(m);
  else m.last = null;
  openTrace(m, trace);
}

/**
 * What is wrong with an object that should be an attempt, before the engine is asked; null if nothing.
 * @param {unknown} given
 * @param {Catalogue} catalogue
 */
function misshapen(given, catalogue) {
  if (typeof given !== 'object' || given === null) return words().noAttempt;
  const trace = /** @type {{ log?: unknown, case?: { target?: unknown }, patient?: unknown }} */ (given);
  if (!Array.isArray(trace.log) || typeof trace.case?.target !== 'object') return words().noAttempt;
  const strange = Object.keys(trace).find((key) => !KEYS.includes(key));
  if (strange !== undefined) return words().strange(strange.slice(0, 40));
  if (!catalogue.patients.some((p) => p.name === trace.patient)) return words().noPatient(String(trace.patient).slice(0, 40));
  return null;
}
