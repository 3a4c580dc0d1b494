// The engine and the patient in it: loading, shaping the first patient, and shaping another while the page goes on answering.

import { byId } from '../base/dom.js';
import { painted, rest } from '../base/frame.js';
import { keyOf, PATIENT, TARGET } from '../state/positioning.js';
import { loadFirstPart, reason } from './room.js';
import { texts } from '../words/texts.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { Level, Side } from '../pkg/values.js'
 * @import { App } from '../state/page-state.js'
 *
 * What stands over the film while there is none (film/film-state.js).
 * @typedef {{ loading: (sentence: string, percent?: number | null) => void, clear: () => void }} Cover
 *
 * @typedef {ReturnType<typeof shaping>} Shaping
 */

/**
 * Keeps `app.room`. `act`: `offered()` once the engine's own lists are in `app.catalogue`, `made()` once the first patient stands, `shaped()` once another does,
 * `fail(sentence)`.
 * @param {App} app
 * @param {Cover} film
 * @param {{ offered: () => void, made: () => void, shaped: () => void, fail: (sentence: string) => void }} act
 */
export function shaping(app, film, act) {
  // The patient that stands in the engine or is being shaped, and whether that is still going on.
  let shaped = '';
  let unfinished = false;
  // What the engine is aimed at: telling it the same again would begin the attempt again.
  let target = '';
  // The rest of the engine: how it is added, whether someone has asked for it, and whether it is there.
  /** @type {(() => Promise<void>) | null} */
  let addRest = null;
  let restAsked = false;
  let whole = false;

  /** Loads the engine and shapes the first patient. Never throws: a failure is shown in the film. */
  async function start() {
    let loading = true;
    /** @param {number | null} percent */
    const progress = (percent) => loading && film.loading(percent === null ? texts.loading.engine : texts.loading.percent(percent), percent);
    progress(null);
    try {
      const first = await loadFirstPart(progress);
      const { TeachingRoom } = first.glue;
      addRest = first.addRest;
      whole = false;
      loading = false;
      app.catalogue = { levels: TeachingRoom.levels(), patients: TeachingRoom.patients(), range: TeachingRoom.ranges(), beam: TeachingRoom.beamChoices() };
      act.offered();
      await makeRoom(TeachingRoom);
    } catch (error) {
      loading = false;
      act.fail(String(Object(error).message ?? error));
    }
  }

  /** @param {typeof TeachingRoom} Room */
  async function makeRoom(Room) {
    const { patient, level, side } = app.state;
    film.loading(texts.loading.patient(patient));
    await painted();
    // What has come in the meantime takes the engine for whole.
    if (restAsked) await bringRest();
    app.room = new Room(patient, level, side);
    target = keyOf(app.state, TARGET);
    act.made();
    shaped = keyOf({ patient, seed: null, changed: '' }, PATIENT);
    unfinished = false;
    film.clear();
    app.touch();
    requestAnimationFrame(() => performance.mark('downbeam:first-picture'));
  }

  /**
   * Adds the rest of the engine; where there is no engine yet, the one that comes is whole before anyone meets it.
   * @returns {Promise<void>}
   */
  async function bringRest() {
    restAsked = true;
    if (!addRest || whole) return;
    const mine = addRest;
    await mine();
    // Another engine may have begun meanwhile.
    if (mine !== addRest) return bringRest();
    whole = true;
    app.touch();
  }

  /** Shapes another patient a bone at a time, so that the page goes on answering. A later choice overtakes an earlier one. */
  async function reshape() {
    const { room, state } = app;
    if (!room) return;
    const { patient, seed, changed } = state;
    const wanted = keyOf(state, PATIENT);
    shaped = wanted;
    unfinished = true;
    app.report = null;
    film.loading(texts.loading.patient(patient));
    await painted();
    try {
      room.beginPatient(patient, { seed: seed ?? undefined, changed: changed ? JSON.parse(changed) : undefined });
      while (room.shapeBone() < 1) {
        await rest();
        if (shaped !== wanted) return;
      }
      unfinished = false;
      film.clear();
      act.shaped();
      app.touch();
    } catch (error) {
      act.fail(texts.loading.failedRun(reason(error)));
    }
  }

  return {
    start,
    reshape,
    bringRest,
    /** Turns the engine to where the page's state stands. */
    aim() {
      const { room, state } = app;
      if (!room) return;
      const wanted = keyOf(state, TARGET);
      if (wanted !== target) room.setTarget(state.level, state.side);
      target = wanted;
      room.setOrientation(state.oblique_deg, state.tilt_deg);
      room.setImageRotation(state.rotation_deg);
      room.setTableShift(state.table_x_mm, state.table_y_mm, state.table_z_mm);
      room.setWindow(state.contrast / 100, state.brightness / 100);
    },
    /**
     * The engine has taken another aim by itself.
     * @param {Level} level
     * @param {Side} side
     */
    aimedAt: (level, side) => void (target = keyOf({ level, side }, TARGET)),
    /** Whether another patient is wanted than the one in the engine. */
    stale: () => Boolean(app.room) && shaped !== keyOf(app.state, PATIENT),
    /** Whether there is a patient with all bones. */
    whole: () => Boolean(app.room) && !unfinished,
    /** Whether an exposure can be taken: the whole engine is there, and so is the patient. */
    ready: () => Boolean(app.room) && whole && shaped === keyOf(app.state, PATIENT) && Boolean(byId('film-state').hidden),
  };
}
