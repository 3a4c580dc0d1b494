// The whole injection. Sentences in texts/…/needle.ftl; what the engine says of an attempt is in remark.js.

import { tenth } from '../base/tenth.js';
import { pageSayer } from './language.js';
import { needle as english } from '../pkg/texts/en/needle.js';
import { points } from './view.js';

/**
 * @import { Clock, Coaxial, LateralReading, NeedleReport } from '../pkg/values.js'
 */

const say = pageSayer('needle', english);

/** Millimetres, degrees and seconds to a tenth, without sign. */
export const one = (/** @type {number} */ x) => say.number(tenth(Math.abs(x)), 1);
export const whole = (/** @type {number} */ mm) => say.number(mm, 0);
const marks = (/** @type {number} */ score) => say('stage-marks', { points: points(score) });

/**
 * An hour of the clock in words, to the half hour.
 * @param {number} h
 */
function hour(h) {
  const halves = Math.round(h * 2) % 24;
  return say(halves % 2 ? 'hourHalf' : 'hour', { hour: Math.floor(halves / 2) || 12 });
}

/**
 * A way on the screen: `2.1 mm right, 0.3 mm up`.
 * @param {[number, number]} way
 */
function offset([right, up]) {
  const parts = [];
  if (Math.abs(right) >= 0.05) parts.push(say('offset-across', { mm: one(right), way: right > 0 ? 'right' : 'left' }));
  if (Math.abs(up) >= 0.05) parts.push(say('offset-along', { mm: one(up), way: up > 0 ? 'up' : 'down' }));
  return parts.join(', ');
}

/** @type {[number, string][]} */
const HEIGHTS = [[0, 'above'], [1 / 3, 'upper'], [2 / 3, 'middle']];
/** A height as a share of the foramen's, from its top. */
const height = (/** @type {number} */ share) => say(`hand-height-${HEIGHTS.find(([end]) => share < end)?.[1] ?? (share > 1 ? 'below' : 'lower')}`);

const placed = (/** @type {NeedleReport} */ n) => say('stage-placed', { gauge: n.device.gauge, mm: n.device.length_mm, colour: n.hub_colour });
const hubOff = (/** @type {Coaxial} */ c) => (offset(c.hub_offset_mm) ? say('hand-hubOff', { offset: offset(c.hub_offset_mm) }) : say('hand-hubOver'));

export const needle = say.tree({
  progress: (/** @type {number} */ done, /** @type {number} */ all) => say('progress', { done, all }),
  offset,
  hour,
  stage: {
    marks,
    now: (/** @type {number} */ score) => say('stage-now', { marks: marks(score) }),
    list: {
      centre: { act: (/** @type {{ level: string }} */ s) => say('stage-list-centre-act', { level: s.level }) },
      true_ap: { act: (/** @type {{ level: string }} */ s) => say('stage-list-true_ap-act', { level: s.level }) },
      oblique: { act: (/** @type {{ level: string, approach: string, side: string }} */ s) => say(`stage-list-oblique-act${s.level === 'S1' ? 'S1' : s.approach === 'infraneural' ? 'Root' : 'Lumbar'}`, { side: s.side }) },
      lateral: { act: (/** @type {{ side: string }} */ s) => say('stage-list-lateral-act', { side: s.side }) },
      align: { done: (/** @type {number} */ deg) => say('stage-list-align-done', { deg: one(deg) }) },
      steer: { done: (/** @type {number} */ mm) => say('stage-list-steer-done', { mm: whole(mm) }) },
      contrast: { cautions: ['live', 'aspirate', 'subtraction', 'fluid', 'steroid'].map((name) => say(`stage-list-contrast-caution-${name}`)) },
    },
    ended: (/** @type {string} */ title, /** @type {string} */ result) => say('stage-ended', { title, result }),
    next: (/** @type {string} */ title) => say('stage-next', { title }),
    keep: (/** @type {string} */ view) => say('stage-keep', { view }),
    keepAgain: (/** @type {string} */ view) => say('stage-keepAgain', { view }),
    gaugeName: (/** @type {string} */ gauge) => say('stage-gaugeName', { gauge }),
    lengthName: (/** @type {number} */ mm) => say('stage-lengthName', { mm }),
    hubColour: (/** @type {string} */ gauge) => say('stage-hubColour', { gauge }),
    placed,
  },
  next: { look: (/** @type {string} */ view) => say('next-look', { view }), notch: (/** @type {number} */ h) => say('next-notch', { hour: hour(h) }) },
  hand: {
    notch: (/** @type {number} */ h) => say('hand-notch', { hour: hour(h) }),
    notchFine: (/** @type {number} */ h) => say('hand-notchFine', { hour: hour(h), to: hour(h + 6) }),
    drift: (/** @type {number} */ h) => say('hand-drift', { to: hour(h + 6) }),
    depth: (/** @type {NeedleReport} */ n) => say('hand-depth', { mm: one(n.depth_mm) }),
    left: (/** @type {{ outside_mm: number }} */ n) => say('hand-left', { mm: one(n.outside_mm) }),
    by: (/** @type {number} */ mm) => say.number(mm, Number.isInteger(mm) ? 0 : 1),
    advanceBy: (/** @type {number} */ mm) => say('hand-advanceBy', { mm }),
    withdrawBy: (/** @type {number} */ mm) => say('hand-withdrawBy', { mm }),
    percent: (/** @type {number} */ n) => say('hand-percent', { n }),
    hubBy: (/** @type {string} */ way) => say('hand-hubBy', { way }),
    beam: (/** @type {Coaxial} */ c) => say('hand-beam', { deg: one(c.angle_deg) }),
    hubOff,
    offMark: (/** @type {[number, number]} */ mm) => (offset(mm) ? say('hand-offMark', { offset: offset(mm) }) : say('hand-onMark')),
    ap: (/** @type {Clock} */ c) => say('hand-ap', { hour: hour(c.hour), mm: one(c.medial_mm), way: c.medial_mm > 0 ? 'medial' : 'lateral' }),
    lateral: (/** @type {LateralReading} */ l) => say('hand-lateral', { mm: one(l.behind_wall_mm), way: l.behind_wall_mm > 0 ? 'behind' : 'front', height: height(l.height) }),
  },
  contrast: {
    inject: (/** @type {number} */ ml) => say('contrast-inject', { ml }),
    in: (/** @type {number} */ ml) => say('contrast-in', { ml: say.number(Math.round(ml * 100) / 100, 1) }),
    right: (/** @type {string} */ name, /** @type {string} */ sign) => say('contrast-right', { name, sign }),
    wrong: (/** @type {string} */ name, /** @type {string} */ truth, /** @type {string} */ sign) => say('contrast-wrong', { name, truth, sign }),
  },
  score: {
    columns: ['step', 'weight', 'marks'].map((name) => say(`score-columns-${name}`)),
    said: (/** @type {number} */ total) => say('score-said', { marks: marks(total) }),
  },
  gates: { failed: (/** @type {number} */ n) => say('gates-failed', { n }) },
  file: {
    notResumed: (/** @type {string} */ why) => say('file-notResumed', { why }),
    bad: (/** @type {string} */ why) => say('file-bad', { why }),
    strange: (/** @type {string} */ key) => say('file-strange', { key }),
    noPatient: (/** @type {string} */ name) => say('file-noPatient', { name }),
  },
  picture: {
    cross: (/** @type {[number, number]} */ mm) => (offset(mm) ? say('picture-cross', { offset: offset(mm) }) : say('picture-crossMiddle')),
    words: (/** @type {NeedleReport} */ n, /** @type {boolean} */ open) =>
      say(open ? 'picture-wordsOpen' : 'picture-words', { gauge: n.device.gauge, mm: whole(n.depth_mm), hub: open ? hubOff(n.coaxial) : '' }),
  },
  did: {
    keep: (/** @type {string} */ view) => say('did-keep', { view }),
    recall: (/** @type {string} */ view) => say('did-recall', { view }),
    orient: (/** @type {string} */ view) => say('did-orient', { view }),
    choose: (/** @type {string} */ approach) => say('did-choose', { approach }),
    place: (/** @type {NeedleReport} */ n) => say('did-place', { needle: placed(n) }),
  },
});
