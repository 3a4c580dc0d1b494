// The handle on the attempt for the rest of the page: what it says of it, and what can be done with it (attempt-model.js, attempt-replay.js).

import { reason } from '../engine/room.js';
import { texts } from '../words/injection.js';
import { advanced, attemptModel, begin, caseKey, isOf, isOn, putAside, roomOf, scoreOf, secondsOf, takeOver, tickOf } from './attempt-model.js';
import { bringBack, openTrace, patientReady, replay } from './attempt-replay.js';

/**
 * @import { Action } from '../pkg/values.js'
 * @import { App } from '../state/page-state.js'
 * @import { Shaping } from '../engine/shaping.js'
 * @import { AttemptActs, AttemptModel } from './attempt-model.js'
 *
 * @typedef {ReturnType<typeof attemptKeeper>} AttemptKeeper
 */

/** For so long after its last drop contrast may still be moving, s. */
const FLOWING_S = 4;

/**
 * Keeps the attempt in `app.room`. `patient` is from `shaping`.
 * @param {App} app
 * @param {Shaping} patient
 * @param {AttemptActs} acts
 */
export function attemptKeeper(app, patient, acts) {
  const m = attemptModel(app, patient, acts);
  return {
    on: () => isOn(m),
    tick: () => tickOf(m),
    /** Changes with everything that is done. */
    revision: () => m.revision,
    /** What the engine says of the attempt as it stands, or null. */
    report: () => (isOn(m) ? m.report : null),
    /** What may be said of the picture: as it stands where pictures are free, as of the last exposure otherwise. */
    seen: () => (!isOn(m) ? null : app.state.byExposure ? m.pictured : m.report),
    /** Whether contrast may still be moving in the picture. */
    flowing: () => isOn(m) && m.report?.injected.some((i) => i.age_s < FLOWING_S),
    /** The marks so far. */
    score: () => scoreOf(m),
    /** Whether the attempt that is on belongs to the lesson that is open. */
    inLesson: () => isOn(m) && m.inLesson && Boolean(app.lesson),
    /** The log, a line an event. */
    lines: () => roomOf(m).attemptLog(),
    /** How long it has taken. */
    seconds: () => secondsOf(m),
    refresh: () => refresh(m),
    /** The engine is gone, and the attempt with it. */
    forget() {
      m.begunFor = '';
      m.report = m.pictured = m.waiting = null;
    },
    /** Another case is about to be taken up. */
    putAside: () => putAside(m),
    /** Begins again at the same case. */
    restart() {
      putAside(m);
      if (isOn(m)) begin(m);
    },
    /** Does an action. Returns the report, or null after saying why it was not done. @param {Action} action */
    act: (action) => perform(m, action),
    /** Takes the last action back without a word, to put another in its place. */
    takeBack() {
      roomOf(m).undo();
      advanced(m);
    },
    undo: () => step(m, 'undo'),
    redo: () => step(m, 'redo'),
    settled: () => settled(m),
    /** An exposure was taken: the numbers are of this picture. */
    exposed() {
      if (isOn(m)) m.pictured = advanced(m);
    },
    /** A mark was set on the picture that is shown. */
    marked() {
      if (m.pictured && m.report) m.pictured = { ...m.pictured, mark_mm: m.report.mark_mm, area_mm: m.report.area_mm };
    },
    trace: () => (isOn(m) ? roomOf(m).attemptTrace() : null),
    /** Whether there is an attempt to bring back. */
    hasLast: () => Boolean(m.last),
    bringBack: () => bringBack(m),
    /** Opens a trace from outside. @param {unknown} trace */
    open: (trace) => openTrace(m, trace),
    patientReady: () => patientReady(m),
  };
}

/**
 * Before a frame: begins an attempt where there should be one, leaves it where there should be none, and asks how it stands.
 * @param {AttemptModel} m
 */
function refresh(m) {
  const { app } = m;
  if (m.waiting && !isOf(m, m.waiting.trace)) m.waiting = null;
  const key = app.state.injection ? caseKey(app.state) : '';
  if (key !== m.begunFor && !m.waiting) {
    if (key === '') {
      roomOf(m).newAttempt({});
      m.begunFor = '';
    } else if (m.last?.key === key && m.begunFor === '') {
      try {
        replay(m, m.last.trace);
      } catch {
        begin(m);
      }
    } else {
      begin(m);
    }
  }
  m.report = isOn(m) ? roomOf(m).procedure(tickOf(m)) : null;
}

/**
 * Does an action. Returns the report, or null after saying why it was not done.
 * @param {AttemptModel} m
 * @param {Action} action
 */
function perform(m, action) {
  if (!isOn(m) || !m.patient.ready()) return null;
  try {
    m.patient.aim();
    m.report = roomOf(m).act(tickOf(m), action);
  } catch (error) {
    m.acts.notice([sentence(reason(error))]);
    return null;
  }
  m.revision += 1;
  if (['recall', 'orient'].includes(action.do)) takeOver(m);
  m.app.touch();
  return m.report;
}

/**
 * The C-arm has come to rest.
 * @param {AttemptModel} m
 */
function settled(m) {
  if (!isOn(m) || !m.patient.ready() || m.app.state.ownView) return;
  m.patient.aim();
  try {
    roomOf(m).settle(tickOf(m));
    advanced(m);
  } catch (error) {
    m.acts.notice([sentence(reason(error))]);
  }
}

/**
 * Takes back what was done last, or does it again.
 * @param {AttemptModel} m
 * @param {'undo' | 'redo'} name
 */
function step(m, name) {
  if (!isOn(m) || !m.patient.ready() || m.app.lesson?.noUndo(m.report?.finished)) return;
  const done = roomOf(m)[name]();
  if (done) takeOver(m);
  advanced(m);
  m.acts.said(done ? texts.needle.did[name] : texts.needle.did[`no_${name}`]);
  m.app.touch();
}

/**
 * The engine's reason as a sentence.
 * @param {string} text
 */
const sentence = (text) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
