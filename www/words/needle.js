// The whole injection. Sentences in texts/…/needle.ftl; what the engine says of an attempt is in remark.js.

import { tenth } from '../base/tenth.js';
import { pageSayer } from './language.js';
import { needle as english } from '../pkg/texts/en/needle.js';
import { points } from './view.js';

const say = pageSayer('needle', english);

/** Millimetres, degrees and seconds to a tenth, without sign. */
export const one = (x) => say.number(tenth(Math.abs(x)), 1);
export const whole = (mm) => say.number(mm, 0);
const marks = (score) => say('stage-marks', { points: points(score) });

/** An hour of the clock in words, to the half hour. */
function hour(h) {
  const halves = Math.round(h * 2) % 24;
  return say(halves % 2 ? 'hourHalf' : 'hour', { hour: Math.floor(halves / 2) || 12 });
}

/** A way on the screen: `2.1 mm right, 0.3 mm up`. */
function offset([right, up]) {
  const parts = [];
  if (Math.abs(right) >= 0.05) parts.push(say('offset-across', { mm: one(right), way: right > 0 ? 'right' : 'left' }));
  if (Math.abs(up) >= 0.05) parts.push(say('offset-along', { mm: one(up), way: up > 0 ? 'up' : 'down' }));
  return parts.join(', ');
}

const HEIGHTS = [[0, 'above'], [1 / 3, 'upper'], [2 / 3, 'middle']];
/** A height as a share of the foramen's, from its top. */
const height = (share) => say(`hand-height-${HEIGHTS.find(([end]) => share < end)?.[1] ?? (share > 1 ? 'below' : 'lower')}`);

const placed = (n) => say('stage-placed', { gauge: n.device.gauge, mm: n.device.length_mm, colour: n.hub_colour });
const hubOff = (c) => (offset(c.hub_offset_mm) ? say('hand-hubOff', { offset: offset(c.hub_offset_mm) }) : say('hand-hubOver'));

export const needle = say.tree({
  progress: (done, all) => say('progress', { done, all }),
  offset,
  hour,
  stage: {
    marks,
    now: (score) => say('stage-now', { marks: marks(score) }),
    list: {
      true_ap: { act: (s) => say('stage-list-true_ap-act', { level: s.level }) },
      oblique: { act: (s) => say(`stage-list-oblique-act${s.level === 'S1' ? 'S1' : s.approach === 'infraneural' ? 'Root' : 'Lumbar'}`, { side: s.side }) },
      lateral: { act: (s) => say('stage-list-lateral-act', { side: s.side }) },
      align: { done: (deg) => say('stage-list-align-done', { deg: one(deg) }) },
      steer: { done: (mm) => say('stage-list-steer-done', { mm: whole(mm) }) },
      contrast: { cautions: ['live', 'aspirate', 'subtraction', 'fluid', 'steroid'].map((name) => say(`stage-list-contrast-caution-${name}`)) },
    },
    ended: (title, result) => say('stage-ended', { title, result }),
    next: (title) => say('stage-next', { title }),
    keep: (view) => say('stage-keep', { view }),
    keepAgain: (view) => say('stage-keepAgain', { view }),
    gaugeName: (gauge) => say('stage-gaugeName', { gauge }),
    lengthName: (mm) => say('stage-lengthName', { mm }),
    hubColour: (gauge) => say('stage-hubColour', { gauge }),
    placed,
  },
  next: { look: (view) => say('next-look', { view }), notch: (h) => say('next-notch', { hour: hour(h) }) },
  hand: {
    notch: (h) => say('hand-notch', { hour: hour(h) }),
    notchFine: (h) => say('hand-notchFine', { hour: hour(h), to: hour(h + 6) }),
    drift: (h) => say('hand-drift', { to: hour(h + 6) }),
    depth: (n) => say('hand-depth', { mm: one(n.depth_mm) }),
    left: (n) => say('hand-left', { mm: one(n.outside_mm) }),
    by: (mm) => say.number(mm, Number.isInteger(mm) ? 0 : 1),
    advanceBy: (mm) => say('hand-advanceBy', { mm }),
    withdrawBy: (mm) => say('hand-withdrawBy', { mm }),
    percent: (n) => say('hand-percent', { n }),
    hubBy: (way) => say('hand-hubBy', { way }),
    beam: (c) => say('hand-beam', { deg: one(c.angle_deg) }),
    hubOff,
    offMark: (mm) => (offset(mm) ? say('hand-offMark', { offset: offset(mm) }) : say('hand-onMark')),
    ap: (c) => say('hand-ap', { hour: hour(c.hour), mm: one(c.medial_mm), way: c.medial_mm > 0 ? 'medial' : 'lateral' }),
    lateral: (l) => say('hand-lateral', { mm: one(l.behind_wall_mm), way: l.behind_wall_mm > 0 ? 'behind' : 'front', height: height(l.height) }),
  },
  contrast: {
    inject: (ml) => say('contrast-inject', { ml }),
    in: (ml) => say('contrast-in', { ml: say.number(Math.round(ml * 100) / 100, 1) }),
    right: (name, sign) => say('contrast-right', { name, sign }),
    wrong: (name, truth, sign) => say('contrast-wrong', { name, truth, sign }),
  },
  score: {
    columns: ['step', 'weight', 'marks'].map((name) => say(`score-columns-${name}`)),
    said: (total) => say('score-said', { marks: marks(total) }),
  },
  gates: { failed: (n) => say('gates-failed', { n }) },
  file: {
    notResumed: (why) => say('file-notResumed', { why }),
    bad: (why) => say('file-bad', { why }),
    strange: (key) => say('file-strange', { key }),
    noPatient: (name) => say('file-noPatient', { name }),
  },
  picture: {
    cross: (mm) => (offset(mm) ? say('picture-cross', { offset: offset(mm) }) : say('picture-crossMiddle')),
    words: (n, open) =>
      say(open ? 'picture-wordsOpen' : 'picture-words', { gauge: n.device.gauge, mm: whole(n.depth_mm), hub: open ? hubOff(n.coaxial) : '' }),
  },
  did: {
    keep: (view) => say('did-keep', { view }),
    recall: (view) => say('did-recall', { view }),
    orient: (view) => say('did-orient', { view }),
    choose: (approach) => say('did-choose', { approach }),
    place: (n) => say('did-place', { needle: placed(n) }),
  },
});
