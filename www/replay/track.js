// An attempt as moments on a time line: how C-arm and needle stood after each action, and where marks were lost. All of it is the engine's: the log
// is replayed as far as each action, and the score asked for there. Where a step's marks last changed, there what they lack was lost.

import { rest } from '../base/frame.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { AttemptFile, ContactReport, Gate, Score, Step } from '../pkg/values.js'
 *
 * After an action (the first: before any). `at_s` is when it is played, `tick` when it was done, `line` what was done, as the log has it; angles in
 * degrees, the table in mm to the left, up and to the head, hub and tip in mm from the target's centre.
 * @typedef {object} Moment
 * @property {number} tick
 * @property {number} at_s
 * @property {string} line
 * @property {{ oblique_deg: number, tilt_deg: number, rotation_deg: number }} arm
 * @property {[number, number, number]} table_mm
 * @property {[number[], number[]] | null} needle
 * @property {number | null} depth_mm
 *
 * Where marks were lost, by the moment's number: a step with what it has and why, a gate that fails it, or something touched that should not be.
 * @typedef {{ moment: number, step: Step } | { moment: number, gate: Gate } | { moment: number, contact: ContactReport }} Lost
 *
 * @typedef {object} Track
 * @property {string[]} lines
 * @property {AttemptFile} trace
 * @property {Moment[]} moments
 * @property {number} long_s how long it is played
 * @property {Lost[]} lost
 * @property {Step[]} undone
 *
 * Marks for a log, as the attempt's lesson or the engine gives them: steps and gates. Null where they are not asked for.
 * @typedef {((lines: string[]) => Pick<Score, 'steps' | 'gates'>) | null} Marks
 */

export const TICKS_PER_S = 20;
/** A pause is played no longer than this, s. A choice, no source. */
const PAUSE_S = 2;
/** So long the page may be busy at a stretch, ms. */
const SLICE_MS = 30;

/**
 * Takes a whole attempt apart. `room` has its patient. `share(done)` hears how far it is, 0 to 1; `gone()` says that nobody waits any more. Throws the
 * engine's sentence where the attempt cannot be replayed.
 * @param {TeachingRoom} room
 * @param {AttemptFile} given
 * @param {{ marks: Marks, exposures: boolean, share: (done: number) => void, gone: () => boolean }} how
 * @returns {Promise<Track>}
 */
export async function trackOf(room, given, { marks, exposures, share, gone }) {
  room.loadAttempt(given);
  const trace = room.attemptTrace();
  const lines = room.attemptLog();
  room.beginReplay(trace);
  /** @type {Moment[]} */
  const moments = [];
  /** @type {(Pick<Score, 'steps' | 'gates'> | null)[]} */
  const scores = [];
  /** @type {ContactReport[]} */
  let contacts = [];
  let since = performance.now();
  for (let k = 0; k <= lines.length && !gone(); k++) {
    const part = lines.slice(0, k);
    room.standAfter(k);
    const tick = Number.parseInt(part.at(-1) ?? '0', 10);
    const before = moments.at(-1);
    const report = room.procedure(tick);
    contacts = report.met;
    const line = part.at(-1)?.replace(/^\d+ /, '') ?? '';
    // A report on the view takes longer than all else, and where nothing turned it is known.
    const arm = before && !TURNS.test(line) ? before.arm : armOf(room);
    moments.push({
      tick,
      at_s: before ? before.at_s + Math.min(PAUSE_S, (tick - before.tick) / TICKS_PER_S) : 0,
      line,
      arm,
      table_mm: /** @type {[number, number, number]} */ ([...room.tableShift()]),
      needle: report.needle ? [report.needle.hub_patient_mm, report.needle.tip_patient_mm] : null,
      depth_mm: report.needle?.depth_mm ?? null,
    });
    scores.push(marks?.(part) ?? null);
    if (performance.now() - since < SLICE_MS) continue;
    share(k / (lines.length || 1));
    await rest();
    since = performance.now();
  }
  const last = scores.at(-1);
  return {
    lines, trace, moments,
    long_s: (moments.at(-1)?.at_s ?? 0) + 1,
    lost: last ? lostMarks(/** @type {Pick<Score, 'steps' | 'gates'>[]} */ (scores), contacts, moments, exposures) : [],
    undone: last?.steps.filter((step) => step.score === null && (exposures || step.id !== 'radiation')) ?? [],
  };
}

/** Actions that the C-arm or the picture turns by. */
const TURNS = /^(orient|rotate_image|recall)\b/;

/**
 * How the C-arm and the picture stand.
 * @param {TeachingRoom} room
 * @returns {Moment['arm']}
 */
function armOf(room) {
  const { oblique, tilt, image_rotation } = room.report().orientation;
  return { oblique_deg: oblique, tilt_deg: tilt, rotation_deg: image_rotation };
}

/**
 * The last moment at which something became what it is at the end.
 * @template T
 * @param {readonly T[]} values
 */
function lastChange(values) {
  const end = JSON.stringify(values.at(-1));
  let k = values.length - 1;
  while (k > 0 && JSON.stringify(values[k - 1]) === end) k -= 1;
  return k;
}

/**
 * Where marks were lost, in the order of the moments.
 * @param {Pick<Score, 'steps' | 'gates'>[]} scores one a moment
 * @param {ContactReport[]} contacts
 * @param {Moment[]} moments
 * @param {boolean} exposures whether radiation counts
 * @returns {Lost[]}
 */
export function lostMarks(scores, contacts, moments, exposures) {
  const end = scores[scores.length - 1];
  const harms = contacts.filter((contact) => contact.harm);
  /** @type {Lost[]} */
  const lost = harms.map((contact) => ({ moment: Math.max(0, moments.findIndex(({ tick, line }) => line !== '' && tick >= contact.tick)), contact }));
  end.steps.forEach((step, i) => {
    if (step.score === null || step.score >= 1 || (step.id === 'radiation' && !exposures)) return;
    // Each contact has its own place.
    if (step.id === 'contacts' && harms.length > 0) return;
    lost.push({ moment: lastChange(scores.map(({ steps }) => [steps[i].score, steps[i].reasons])), step });
  });
  // Of what was not done the gates say no more than that.
  const whole = end.steps.every((step) => step.score !== null || step.id === 'radiation');
  end.gates.forEach((gate, i) => {
    if (!whole || gate.passed) return;
    // A step that lacks marks for the same reason has its place already.
    const same = lost.find((one) => 'step' in one && one.step.reasons.some((r) => JSON.stringify(r) === JSON.stringify(gate.reason)));
    // What stood so from the beginning is lost at the end, when nothing more is done about it.
    const changed = lastChange(scores.map(({ gates }) => [gates[i].passed, gates[i].reason])) || scores.length - 1;
    lost.push({ moment: same?.moment ?? changed, gate });
  });
  return lost.sort((a, b) => a.moment - b.moment);
}

/**
 * The moment that is played at a time: the last one that has begun.
 * @param {Moment[]} moments
 * @param {number} at_s
 */
export function momentAt(moments, at_s) {
  let [low, high] = [0, moments.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (moments[middle].at_s <= at_s + 1e-6) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The actions that two attempts at one case are laid beside each other by. */
const ANCHORS = ['keep true_ap', 'keep oblique', 'mark', 'place', 'keep lateral', 'aspirate', 'inject', 'finish'];

/**
 * The time in another attempt that goes with a time in this one: both are at their first common views, mark, needle and contrast together, and between
 * these they go evenly.
 * @param {Track} own
 * @param {Track} other
 * @returns {(at_s: number) => number}
 */
export function besideOf(own, other) {
  /** @type {(track: Track, name: string) => number | undefined} */
  const first = (track, name) => track.moments.find(({ line }) => `${line} `.startsWith(`${name} `))?.at_s;
  /** @type {[number, number][]} */
  const pairs = [[0, 0]];
  for (const name of ANCHORS) {
    const [a, b] = [first(own, name), first(other, name)];
    const [lastA, lastB] = pairs[pairs.length - 1];
    if (a !== undefined && b !== undefined && a > lastA && b > lastB) pairs.push([a, b]);
  }
  const [lastA, lastB] = pairs[pairs.length - 1];
  pairs.push([Math.max(own.long_s, lastA + 1e-3), Math.max(other.long_s, lastB)]);
  return (at_s) => {
    const next = Math.max(1, pairs.findIndex(([a]) => a > at_s));
    const [from, to] = at_s >= pairs[pairs.length - 1][0] ? [pairs[pairs.length - 1], pairs[pairs.length - 1]] : [pairs[next - 1], pairs[next]];
    const share = to[0] === from[0] ? 0 : (at_s - from[0]) / (to[0] - from[0]);
    return from[1] + share * (to[1] - from[1]);
  };
}
