// What the page and the course element both say: the picture, the angles, the checks, loading. Sentences in texts/…/view.ftl.

import { tenth } from '../base/tenth.js';

/**
 * @import { Advice, Criterion, CriterionId, DogPart, Finding, Target, ViewKind } from '../pkg/values.js'
 * @import { Angles } from '../base/tenth.js'
 * @import { Rule } from '../base/rules.js'
 * @import { Sayer } from './sentences.js'
 */

const isZero = (/** @type {number} */ deg) => Math.abs(deg) < 0.05;
const size = (/** @type {number} */ deg) => Math.abs(tenth(deg));
const upper = (/** @type {string} */ text) => text.replace(/^./, (c) => c.toUpperCase());

/** A share as points of 100: one short of full marks must not read as 100. */
export const points = (/** @type {number} */ score) => (score >= 1 ? 100 : Math.min(99, Math.round(score * 100)));

/** The engine's units as the messages tell them apart: of a value, and of what a limit is a part. */
const UNITS = /** @type {Record<string, [string, string]>} */ ({
  degrees: ['degrees', 'degrees'],
  mm: ['mm', 'mm'],
  '% of pedicle spacing': ['percent', 'pedicle_spacing'],
  '% of pedicle width': ['percent', 'pedicle_width'],
  '% of half the end plate': ['percent', 'half_plate'],
});

/**
 * The table of a language; `say` is a sayer of its `view` part.
 * @param {Sayer<typeof import('../pkg/texts/en/view.js').view>} say
 */
export function viewWords(say) {
  const patientName = (/** @type {string} */ name) => say('case-patientName', { name, given: upper(name.replaceAll('-', ' ')) });
  const place = (/** @type {Target} */ s) => say('place', { level: s.level, side: s.side });
  const oblique = angle('oblique', 'zero', 'turned', (deg) => (deg > 0 ? 'left' : 'right'));
  const tilt = angle('tilt', 'zero', 'tilted', (/** @type {number} */ deg) => (deg > 0 ? 'cephalad' : 'caudad'));
  /**
   * An angle in short and as it is read out.
   * @param {string} name
   * @param {string} zero
   * @param {string} turned
   * @param {(deg: number) => string} way
   */
  function angle(name, zero, turned, way) {
    return {
      words: (/** @type {number} */ deg) => (isZero(deg) ? say(`${name}-${zero}`) : say(`${name}-${turned}`, { deg: size(deg), way: way(deg) })),
      spoken: (/** @type {number} */ deg) => (isZero(deg) ? say(`${name}-${zero}Spoken`) : say(`${name}-${turned}Spoken`, { deg: size(deg), way: way(deg) })),
    };
  }
  const number = (/** @type {number} */ value, /** @type {string} */ unit) => say.number(value, unit.startsWith('%') || Number.isInteger(value) ? 0 : 1);
  const move = (/** @type {Advice} */ { control, direction, amount_deg }) =>
    say(`checks-move-${control}`, { direction, amount: amount_deg < 1 ? say('checks-less') : say('checks-degrees', { n: Math.round(amount_deg) }) });

  const criterion = (/** @type {{ id: CriterionId, name?: string }} */ c) => say('checks-criterion', { id: c.id, given: c.name });
  const value = (/** @type {Criterion} */ c) => (c.value === null ? say('checks-undefined') : say('checks-measure', { unit: UNITS[c.unit][0], n: number(Math.abs(c.value), c.unit) }));
  const tolerance = (/** @type {Criterion} */ c) => say('checks-within', { of: UNITS[c.unit][1], n: number(c.tolerance.full, c.unit) });

  return say.tree({
    language: say.tag,
    /** A number with so many decimals. */
    number: say.number,
    place,
    /** A step as the engine gives it, or a patient of its list. */
    step: (/** @type {{ id: string, name: string }} */ s) => say('step', { id: s.id, given: s.name }),
    case: { patientName, patientSentence: (/** @type {{ name: string, sentence: string }} */ p) => say('case-patientSentence', { name: p.name, given: p.sentence }) },
    /** What a rule (rules.js) allows. */
    allowed: (/** @type {Rule} */ rule) => (rule.kind === 'number' ? say(rule.whole ? 'allowedWhole' : 'allowedNumber', { low: rule.low, high: rule.high }) : (rule.values ?? []).join(', ')),
    picture: {
      caption: (/** @type {Target & Angles & { patient: string }} */ s) => say('picture-caption', { place: place(s), patient: patientName(s.patient), oblique: oblique.words(s.oblique_deg), tilt: tilt.words(s.tilt_deg) }),
      alternative: (/** @type {Angles} */ s) => say('picture-alternative', { oblique: oblique.spoken(s.oblique_deg), tilt: tilt.spoken(s.tilt_deg) }),
      keyPosterior: (/** @type {{ level: string }} */ s) => say('picture-keyPosterior', { level: s.level }),
      keyBelow: (/** @type {unknown} */ s, /** @type {string} */ below) => say('picture-keyBelow', { below }),
      keyTarget: (/** @type {{ level: string }} */ s) => say('picture-keyTarget', { level: s.level }),
      dogHeading: (/** @type {{ level: string }} */ s) => say('picture-dogHeading', { level: s.level }),
      dogName: (/** @type {DogPart} */ d, /** @type {{ level: string }} */ s) => say(d.level === s.level ? 'picture-dogName' : 'picture-dogNext', { name: d.dog_name }),
      dogPart: (/** @type {string} */ dog, /** @type {string} */ part, /** @type {string} */ level) => say('picture-dogPart', { dog, part, level }),
      part: (/** @type {string} */ name) => say('picture-part', { name, given: name.replaceAll('_', ' ') }),
    },
    loading: {
      percent: (/** @type {number} */ n) => say('loading-percent', { n }),
      patient: (/** @type {string} */ name) => say('loading-patient', { patient: patientName(name) }),
      status: (/** @type {number} */ code) => say('loading-status', { code }),
    },
    turn: {
      number: (/** @type {string} */ name) => say('turn-number', { name }),
      outOfRange: (/** @type {string} */ name, /** @type {number} */ low, /** @type {number} */ high) => say('turn-outOfRange', { name, low, high }),
      notNumber: (/** @type {string} */ name) => say('turn-notNumber', { name }),
    },
    oblique,
    tilt,
    checks: {
      score: (/** @type {number} */ score) => say('checks-score', { points: points(score) }),
      /** A view's name; the steep oblique is the oblique of its way in. */
      nameOf: (/** @type {ViewKind} */ view) => say(`checks-views-${view === 'steep_oblique' ? 'oblique' : view}`),
      criterion,
      value,
      tolerance,
      /** All three in one. */
      measured: (/** @type {Criterion} */ c) => say('checks-measured', { criterion: criterion(c), value: value(c), tolerance: tolerance(c) }),
      /** The engine's finding about a criterion. */
      sentence: (/** @type {{ finding: Finding, advice: Advice | null }} */ c) => (c.finding === 'move' && c.advice ? move(c.advice) : say(`checks-${c.finding}`)),
      word: (/** @type {number} */ score) => say(`checks-word-${score >= 1 ? 'full' : score >= 0.75 ? 'close' : score >= 0.35 ? 'part' : score > 0 ? 'far' : 'none'}`),
      said: (/** @type {string} */ view, /** @type {number} */ score, /** @type {string} */ advice) => say('checks-said', { view, points: points(score), advice }),
    },
  });
}
