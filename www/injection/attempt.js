// The attempt at a whole injection as the page holds it: its clock, its actions, and what the engine says of it. No elements here.

import { reason } from '../engine/room.js';
import { texts } from '../words/injection.js';

const TICK_MS = 50;
/** What a saved attempt holds. */
const KEYS = ['patient', 'seed', 'changed', 'case', 'log'];
/** For so long after its last drop contrast may still be moving, s. */
const FLOWING_S = 4;

/**
 * Keeps the attempt in `app.room`. `patient` is from `shaping`; `act`: `notice(sentences)`, `said(sentence)` for the live line,
 * `fresh()` when pictures by exposure begin anew.
 */
export function attemptKeeper(app, patient, act) {
  let begun_ms = 0;
  let begunFor = '';
  let revision = 0;
  let report = null;
  // By exposure: what the engine said of the needle when the picture that is shown was taken.
  let pictured = null;
  let score = { of: -1, value: null };
  // The attempt before this one, so that no slip of a hand loses it.
  let last = null;
  // A file that waits for its patient to be shaped, and what to go back to if it does not fit.
  let waiting = null;
  let replaying = false;
  // Whether the attempt that is on belongs to a lesson.
  let inLesson = false;

  const keyOf = ({ patient: name, seed, changed, level, side, start, byExposure, lesson }) => [name, seed, changed, level, side, start, byExposure, lesson].join();
  const tick = () => Math.max(0, Math.floor((performance.now() - begun_ms) / TICK_MS));
  const on = () => Boolean(app.room) && app.state.injection && begunFor !== '';

  const patientNow = () => ({ patient: app.state.patient, seed: app.state.seed, changed: app.state.changed });
  const isOf = (trace) => Object.entries(patientOf(trace)).every(([key, value]) => app.state[key] === value);

  function begin() {
    if (app.lesson) app.room.beginCase(app.lesson.drawn.case);
    else app.room.newAttempt({ exposures: app.state.byExposure });
    if (app.state.byExposure) act.fresh();
    begun_ms = performance.now();
    begunFor = keyOf(app.state);
    inLesson = Boolean(app.lesson);
    report = pictured = null;
    revision += 1;
    if (app.lesson?.resume) goOn(app.lesson.resume);
  }

  /** Takes a lesson up where its log left it. */
  function goOn(lines) {
    app.lesson.resume = null;
    try {
      app.room.resumeLog(lines);
    } catch (error) {
      return act.notice([texts.needle.file.notResumed(reason(error))]);
    }
    begun_ms -= Number.parseInt(lines.at(-1), 10) * TICK_MS;
    const table = tableOf(lines);
    if (table) app.change({ tableX: table[0], tableZ: table[2] });
    takeOver();
    act.said(texts.needle.file.opened);
  }

  /** Keeps what has been done, if anything has; to be called before the engine hears of another case. */
  function putAside() {
    if (replaying || !app.room || begunFor === '' || inLesson || !report || report.actions === 0) return;
    try {
      last = { key: begunFor, trace: app.room.attemptTrace() };
    } catch {
      // Without a trace there is nothing to come back to; the new attempt goes on.
    }
  }

  /** Takes over where the engine says that C-arm, table and case stand. */
  function takeOver() {
    const { orientation } = app.room.report();
    const tenth = (x) => Math.round(x * 10) / 10;
    app.change({ oblique: tenth(orientation.oblique), tilt: tenth(orientation.tilt), rotation: tenth(orientation.image_rotation), ownView: null });
  }

  /** Replays a trace in the engine; throws its sentence. */
  function replay(trace) {
    app.room.loadAttempt(trace);
    const { target } = trace.case;
    const lines = app.room.attemptLog();
    patient.aimedAt(target.level, target.side);
    const table = tableOf(lines) ?? [0, 0, 0];
    replaying = true;
    app.change({ injection: true, level: target.level, side: target.side, byExposure: Boolean(trace.case.exposures), tableX: table[0], tableZ: table[2] });
    begunFor = keyOf(app.state);
    inLesson = false;
    begun_ms = performance.now() - Number.parseInt(lines.at(-1) ?? '0', 10) * TICK_MS;
    pictured = null;
    revision += 1;
    if (app.state.byExposure) act.fresh();
    takeOver();
    replaying = false;
    report = app.room.procedure(tick());
  }

  const keeper = {
    on,
    tick,
    /** Changes with everything that is done. */
    revision: () => revision,
    /** What the engine says of the attempt as it stands, or null. */
    report: () => (on() ? report : null),
    /** What may be said of the picture: as it stands where pictures are free, as of the last exposure otherwise. */
    seen: () => (!on() ? null : app.state.byExposure ? pictured : report),
    /** Whether contrast may still be moving in the picture. */
    flowing: () => on() && report?.injected.some((i) => i.age_s < FLOWING_S),
    /** The marks so far. */
    score() {
      if (!on()) return null;
      if (score.of !== revision) score = { of: revision, value: app.lesson ? app.lesson.standing(app.room.attemptLog()) : app.room.score() };
      return score.value;
    },

    /** Whether the attempt that is on belongs to the lesson that is open. */
    inLesson: () => on() && inLesson && Boolean(app.lesson),
    /** The log, a line an event. */
    lines: () => app.room.attemptLog(),
    /** How long it has taken. */
    seconds: () => Math.round((tick() * TICK_MS) / 1000),

    /** Before a frame: begins an attempt where there should be one, leaves it where there should be none, and asks how it stands. */
    refresh() {
      if (waiting && !isOf(waiting.trace)) waiting = null;
      const key = app.state.injection ? keyOf(app.state) : '';
      if (key !== begunFor && !waiting) {
        if (key === '') {
          app.room.newAttempt({});
          begunFor = '';
        } else if (last?.key === key && begunFor === '') {
          try {
            replay(last.trace);
          } catch {
            begin();
          }
        } else {
          begin();
        }
      }
      report = on() ? app.room.procedure(tick()) : null;
    },
    /** The engine is gone, and the attempt with it. */
    forget() {
      begunFor = '';
      report = pictured = waiting = null;
    },
    /** Another case is about to be taken up. */
    putAside,
    /** Begins again at the same case. */
    restart() {
      putAside();
      if (on()) begin();
    },

    /** Does an action. Returns the report, or null after saying why it was not done. */
    act(action) {
      if (!on() || !patient.ready()) return null;
      try {
        patient.aim();
        report = app.room.act(tick(), action);
      } catch (error) {
        act.notice([sentence(reason(error))]);
        return null;
      }
      revision += 1;
      if (['recall', 'orient'].includes(action.do)) takeOver();
      app.touch();
      return report;
    },
    /** Takes the last action back without a word, to put another in its place. */
    takeBack() {
      app.room.undo();
      revision += 1;
      report = app.room.procedure(tick());
    },
    undo: () => step('undo'),
    redo: () => step('redo'),
    /** The C-arm has come to rest. */
    settled() {
      if (!on() || !patient.ready() || app.state.ownView) return;
      patient.aim();
      try {
        app.room.settle(tick());
        revision += 1;
        report = app.room.procedure(tick());
      } catch (error) {
        act.notice([sentence(reason(error))]);
      }
    },
    /** An exposure was taken: the numbers are of this picture. */
    exposed() {
      if (!on()) return;
      report = pictured = app.room.procedure(tick());
      revision += 1;
    },
    /** A mark was set on the picture that is shown. */
    marked() {
      if (pictured && report) pictured = { ...pictured, mark_mm: report.mark_mm, area_mm: report.area_mm };
    },

    trace: () => (on() ? app.room.attemptTrace() : null),
    /** Whether there is an attempt to bring back. */
    hasLast: () => Boolean(last),
    bringBack() {
      const { trace } = last;
      if (report?.actions > 0) putAside();
      else last = null;
      keeper.open(trace);
    },
    /** Opens a trace from outside. One sentence when it cannot be; the attempt that stands is kept. */
    open(trace) {
      const words = texts.needle.file;
      const problem = misshapen(trace, app.catalogue);
      if (problem) return void act.notice([words.bad(problem)]);
      if (isOf(trace)) return settle(trace, app.room.attemptTrace());
      waiting = { trace, back: { patient: patientNow(), trace: on() ? app.room.attemptTrace() : null } };
      app.change(patientOf(trace));
    },
    /** The patient that a file waited for is there. */
    patientReady() {
      if (!waiting || !isOf(waiting.trace)) return;
      const { trace, back } = waiting;
      waiting = null;
      try {
        replay(trace);
        act.said(words().opened);
      } catch (error) {
        act.notice([words().bad(reason(error))]);
        if (back.trace) waiting = { trace: back.trace, back: { patient: back.patient, trace: null } };
        app.change(back.patient);
      }
    },
  };
  const words = () => texts.needle.file;

  function settle(trace, back) {
    try {
      putAside();
      replay(trace);
      act.said(words().opened);
    } catch (error) {
      act.notice([words().bad(reason(error))]);
      // The engine changes nothing on an error.
      if (begunFor !== keyOf(app.state) && back) replay(back);
    }
    app.touch();
  }

  function step(name) {
    if (!on() || !patient.ready() || app.lesson?.noUndo(report?.finished)) return;
    const done = app.room[name]();
    revision += 1;
    if (done) takeOver();
    report = app.room.procedure(tick());
    act.said(done ? texts.needle.did[name] : texts.needle.did[`no_${name}`]);
    app.touch();
  }

  return keeper;
}

/** The patient of a trace as the page's state has it. */
const patientOf = ({ patient, seed, changed }) => ({ patient, seed: seed ?? null, changed: changed && Object.keys(changed).length > 0 ? JSON.stringify(changed) : '' });

/** What is wrong with an object that should be an attempt, before the engine is asked; null if nothing. */
function misshapen(trace, catalogue) {
  const words = texts.needle.file;
  if (typeof trace !== 'object' || trace === null || !Array.isArray(trace.log) || typeof trace.case?.target !== 'object') return words.noAttempt;
  const strange = Object.keys(trace).find((key) => !KEYS.includes(key));
  if (strange !== undefined) return words.strange(strange.slice(0, 40));
  if (!catalogue.patients.some((p) => p.name === trace.patient)) return words.noPatient(String(trace.patient).slice(0, 40));
  return null;
}

/** Where a log leaves the table, [left, back, head] in mm; undefined when it was not moved. */
const tableOf = (lines) => lines.findLast((line) => line.split(' ')[1] === 'move_table')?.split(' ').slice(2).map((n) => Number(n) / 10);

/** The engine's reason as a sentence. */
function sentence(text) {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
