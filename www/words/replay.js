// What an attempt that is played back says. Sentences in texts/…/replay.ftl.

import { pageSayer } from './language.js';
import { replay as english } from '../pkg/texts/en/replay.js';
import { texts } from './injection.js';
import { view } from './view-page.js';

/**
 * @import { ContactReport, Gate, Step } from '../pkg/values.js'
 *
 * What is said of a moment, and of a place where marks were lost: a step, a gate, or something touched (replay/track.js).
 * @typedef {{ tick: number, line: string, arm: { oblique_deg: number, tilt_deg: number }, depth_mm: number | null }} Moment
 * @typedef {{ step: Step } | { gate: Gate } | { contact: ContactReport }} Lost
 */

const say = pageSayer('replay', english);
/** @param {{ oblique_deg: number, tilt_deg: number }} arm */
const angles = (arm) => ({ oblique: view.oblique.words(arm.oblique_deg), tilt: view.tilt.words(arm.tilt_deg) });
/** @param {number} mm */
const whole = (mm) => say.number(mm, 0);
/** @param {string | undefined} count */
const tenths = (count) => say.number(Math.abs(Number(count)) / 10, 1);

/**
 * What a line of the log says was done.
 * @param {string} line without its tick
 */
function did(line) {
  if (line === '') return say('begin');
  const [name, ...given] = line.split(' ');
  switch (name) {
    case 'orient':
      return say('did-orient', angles({ oblique_deg: Number(given[0]) / 10, tilt_deg: Number(given[1]) / 10 }));
    case 'keep':
    case 'recall':
      return say(`did-${name}`, { view: given[0] });
    case 'rotate_image':
      return say('did-rotate_image', { deg: tenths(given[0]) });
    case 'roll':
      return say('did-roll', { deg: tenths(given[0]) });
    case 'advance':
    case 'withdraw':
      return say(`did-${name}`, { mm: tenths(given[0]) });
    case 'inject':
      return say('did-inject', { ml: say.number(Number(given[0]) / 100, 1) });
    case 'fluoroscopy':
      return say('did-fluoroscopy', { n: Number(given[0]) });
    default:
      return say(`did-${name}`);
  }
}

/** @param {number} tick */
function clock(tick) {
  const seconds = Math.floor(tick / 20);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

/**
 * Why marks were lost there.
 * @param {Lost} lost
 * @returns {string}
 */
function why(lost) {
  if ('contact' in lost) return texts.remarks.contact(lost.contact);
  if ('gate' in lost) return say('lostGate', { gate: texts.remarks.gate(lost.gate.id), why: texts.remarks.one(lost.gate.reason) });
  return say('lostStep', { step: texts.step(lost.step), marks: texts.needle.stage.marks(lost.step.score ?? 0), why: texts.remarks.all(lost.step.reasons) });
}

export const replay = say.tree({
  clock,
  did,
  why,
  /** @type {(percent: number) => string} */
  reading: (percent) => say('reading', { percent }),
  /** @type {(n: number) => string} */
  times: (n) => say('times', { n }),
  /** @type {(moment: Moment, n: number, all: number) => string} */
  value: (moment, n, all) => say('value', { clock: clock(moment.tick), n, all, what: did(moment.line) }),
  /** @type {(moment: Moment) => string} */
  stands: ({ arm, depth_mm }) => `${say('arm', angles(arm))} ${depth_mm === null ? say('noNeedle') : say('needle', { mm: whole(depth_mm) })}`,
  /** @type {(lost: Lost) => string} */
  lostHere: (lost) => say('lostHere', { what: why(lost) }),
  /** @type {(why: string) => string} */
  notMarked: (reason) => say('notMarked', { why: reason }),
  /** @type {(steps: Step[]) => string} */
  undone: (steps) => say('undone', { steps: steps.map((step) => texts.step(step)).join(', ') }),
  /** @type {(moment: Moment) => string} */
  besideNow: ({ arm, depth_mm }) => say('besideNow', { ...angles(arm), depth: depth_mm === null ? say('besideNone') : say('besideDepth', { mm: whole(depth_mm) }) }),
  /** @type {(why: string) => string} */
  bad: (reason) => say('bad', { why: reason }),
});
