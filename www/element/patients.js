// Patients that stand in the engine. Elements with the same patient share one: it is turned to each one's aim before it draws, which
// costs nothing beside the drawing, while a patient of its own would cost its shaping and its meshes (docs/element.md has the figures).

import { painted, rest } from '../base/frame.js';
import { keyOf, TARGET } from '../state/positioning.js';

/**
 * @import { Target } from '../pkg/values.js'
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { Engine } from './shared-engine.js'
 *
 * A patient in the engine: how many elements look at it, its room once there is one, and what that is aimed at.
 * @typedef {{ engine: Engine, name: string, users: number, room: TeachingRoom | null, aimed: string, ready: Promise<void> }} Stand
 */

/** @type {[string, string]} */
const FIRST_AIM = ['L4', 'left'];

/**
 * Takes a share in the patient of that name; resolves once all its bones are there. `former` is the share that it replaces: given up
 * when the new one stands, kept when there is no such patient (the engine's sentence is thrown).
 * @param {Engine} engine
 * @param {string} name
 * @param {Stand | null} former
 */
export async function takePatient(engine, name, former) {
  let stand = engine.patients.get(name);
  if (!stand && former?.users === 1 && former.engine === engine) return reshape(former, name);
  stand ??= shape(engine, name);
  stand.users += 1;
  try {
    await stand.ready;
  } catch (error) {
    leavePatient(stand);
    throw error;
  }
  if (former) leavePatient(former);
  return stand;
}

/**
 * Gives up a share. The last one frees the patient.
 * @param {Stand} stand
 */
export function leavePatient(stand) {
  stand.users -= 1;
  if (stand.users > 0) return;
  unlist(stand);
  try {
    stand.room?.free();
  } catch {
    // An engine that has stopped frees nothing; it goes as a whole.
  }
  stand.room = null;
}

/**
 * Turns a patient to where an element's state stands.
 * @param {Stand} stand
 * @param {Target & { oblique_deg: number, tilt_deg: number, rotation_deg: number }} state
 */
export function aim(stand, state) {
  const { room } = stand;
  if (!room) return;
  const wanted = keyOf(state, TARGET);
  if (wanted !== stand.aimed) room.setTarget(state.level, state.side);
  stand.aimed = wanted;
  room.setOrientation(state.oblique_deg, state.tilt_deg);
  room.setImageRotation(state.rotation_deg);
}

/**
 * @param {Engine} engine
 * @param {string} name
 */
function shape(engine, name) {
  /** @type {Stand} */
  const stand = { engine, name, users: 0, room: null, aimed: FIRST_AIM.join(), ready: Promise.resolve() };
  stand.ready = make(stand);
  engine.patients.set(name, stand);
  return stand;
}

/** @param {Stand} stand */
async function make(stand) {
  await painted();
  if (stand.users > 0) stand.room = new stand.engine.TeachingRoom(stand.name, ...FIRST_AIM);
}

/**
 * Nobody else looks at it: the same room gets another patient, a bone at a time, so that the page goes on answering.
 * @param {Stand} stand
 * @param {string} name
 */
async function reshape(stand, name) {
  stand.room?.beginPatient(name);
  unlist(stand);
  stand.name = name;
  stand.engine.patients.set(name, stand);
  stand.ready = shapeBones(stand);
  await stand.ready;
  return stand;
}

/** @param {Stand} stand */
async function shapeBones(stand) {
  while (stand.room && stand.room.shapeBone() < 1) await rest();
}

/** @param {Stand} stand */
function unlist(stand) {
  const { patients } = stand.engine;
  if (patients.get(stand.name) === stand) patients.delete(stand.name);
}
