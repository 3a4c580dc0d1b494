// What the page and the course element both say: the picture, the angles, the checks, loading. Sentences in texts/…/view.ftl.

import { tenth } from '../base/tenth.js';

const isZero = (deg) => Math.abs(deg) < 0.05;
const size = (deg) => Math.abs(tenth(deg));
const upper = (text) => text.replace(/^./, (c) => c.toUpperCase());

/** A share as points of 100: one short of full marks must not read as 100. */
export const points = (score) => (score >= 1 ? 100 : Math.min(99, Math.round(score * 100)));

/** The engine's units as the messages tell them apart: of a value, and of what a limit is a part. */
const UNITS = {
  degrees: ['degrees', 'degrees'],
  mm: ['mm', 'mm'],
  '% of pedicle spacing': ['percent', 'pedicle_spacing'],
  '% of pedicle width': ['percent', 'pedicle_width'],
  '% of half the end plate': ['percent', 'half_plate'],
};

/** The table of a language; `say` is a sayer of its `view` part. */
export function viewWords(say) {
  const patientName = (name) => say('case-patientName', { name, given: upper(name.replaceAll('-', ' ')) });
  const place = (s) => say('place', s);
  const oblique = angle('oblique', 'zero', 'turned', (deg) => (deg > 0 ? 'left' : 'right'));
  const tilt = angle('tilt', 'zero', 'tilted', (deg) => (deg > 0 ? 'cephalad' : 'caudad'));
  /** An angle in short and as it is read out. */
  function angle(name, zero, turned, way) {
    return {
      words: (deg) => (isZero(deg) ? say(`${name}-${zero}`) : say(`${name}-${turned}`, { deg: size(deg), way: way(deg) })),
      spoken: (deg) => (isZero(deg) ? say(`${name}-${zero}Spoken`) : say(`${name}-${turned}Spoken`, { deg: size(deg), way: way(deg) })),
    };
  }
  const number = (value, unit) => say.number(value, unit.startsWith('%') || Number.isInteger(value) ? 0 : 1);
  const move = ({ control, direction, amount_deg }) =>
    say(`checks-move-${control}`, { direction, amount: amount_deg < 1 ? say('checks-less') : say('checks-degrees', { n: Math.round(amount_deg) }) });

  const criterion = (c) => say('checks-criterion', { id: c.id, given: c.name });
  const value = (c) => (c.value === null ? say('checks-undefined') : say('checks-measure', { unit: UNITS[c.unit][0], n: number(Math.abs(c.value), c.unit) }));
  const tolerance = (c) => say('checks-within', { of: UNITS[c.unit][1], n: number(c.tolerance.full, c.unit) });

  return say.tree({
    language: say.tag,
    /** A number with so many decimals. */
    number: say.number,
    place,
    /** A step as the engine gives it, or a patient of its list. */
    step: (s) => say('step', { id: s.id, given: s.name }),
    case: { patientName, patientSentence: (p) => say('case-patientSentence', { name: p.name, given: p.sentence }) },
    /** What a rule (rules.js) allows. */
    allowed: (rule) => (rule.kind === 'number' ? say(rule.whole ? 'allowedWhole' : 'allowedNumber', { low: rule.low, high: rule.high }) : rule.values.join(', ')),
    picture: {
      caption: (s) => say('picture-caption', { place: place(s), patient: patientName(s.patient), oblique: oblique.words(s.oblique_deg), tilt: tilt.words(s.tilt_deg) }),
      alternative: (s) => say('picture-alternative', { oblique: oblique.spoken(s.oblique_deg), tilt: tilt.spoken(s.tilt_deg) }),
      keyPosterior: (s) => say('picture-keyPosterior', { level: s.level }),
      keyBelow: (s, below) => say('picture-keyBelow', { below }),
      keyTarget: (s) => say('picture-keyTarget', { level: s.level }),
      dogHeading: (s) => say('picture-dogHeading', { level: s.level }),
      dogName: (d, s) => say(d.level === s.level ? 'picture-dogName' : 'picture-dogNext', { name: d.dog_name }),
      dogPart: (dog, part, level) => say('picture-dogPart', { dog, part, level }),
      part: (name) => say('picture-part', { name, given: name.replaceAll('_', ' ') }),
    },
    loading: {
      percent: (n) => say('loading-percent', { n }),
      patient: (name) => say('loading-patient', { patient: patientName(name) }),
      status: (code) => say('loading-status', { code }),
    },
    turn: {
      number: (name) => say('turn-number', { name }),
      outOfRange: (name, low, high) => say('turn-outOfRange', { name, low, high }),
      notNumber: (name) => say('turn-notNumber', { name }),
    },
    oblique,
    tilt,
    checks: {
      score: (score) => say('checks-score', { points: points(score) }),
      criterion,
      value,
      tolerance,
      /** All three in one. */
      told: (c) => say('checks-told', { criterion: criterion(c), value: value(c), tolerance: tolerance(c) }),
      /** The engine's finding about a criterion. */
      sentence: (c) => (c.finding === 'move' ? move(c.advice) : say(`checks-${c.finding}`)),
      word: (score) => say(`checks-word-${score >= 1 ? 'full' : score >= 0.75 ? 'close' : score >= 0.35 ? 'part' : score > 0 ? 'far' : 'none'}`),
      said: (view, score, advice) => say('checks-said', { view, points: points(score), advice }),
    },
  });
}
