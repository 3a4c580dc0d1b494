// What stands in the picture, in words: facts from the engine's report, sentences from facts, and what to say when they change.
// No elements here and no text: numbers and words only come together in the `describe` table of the texts.
//
// How much is told. Free practice: whole degrees and percent, and “midway” is what the checks give full marks for. Where the
// learner judges (self-test, by exposure, assessment) only what the eye sees in the last picture: whole millimetres, twentieths of
// a spacing, no degrees, no tolerances, nothing of marks or advice. So a learner who does not see has what the others see, and no more.
// Where parts are to be named, none is placed.

import { levelBelow } from '../engine/catalogue.js';

/** Beyond so many degrees of oblique left and right pedicles do not stand side by side, and from so many they run together. */
const FROM_BEHIND_DEG = 55;
const FROM_THE_SIDE_DEG = 60;
/** Rims nearer than this are seen as one line, mm on the detector: two widths of the outline. Our choice. */
const ONE_LINE_MM = 1.5;
/** From the side the rims that part are left and right: there the angle tells, degrees. Our choice. */
const ONE_LINE_DEG = 2;
/** What an eye tells of a spacing, percent. Our choice. */
const EYE_PERCENT = 5;
/** A body so far off the middle of the film is not in the middle, mm on the detector: what full marks for it leave, magnified. */
const MIDDLE_MM = 13;
const FIELD_MM = 512 * 0.4;

/**
 * @import { ContactReport, Criterion, Level, LandmarkReport, ProcedureReport, Report, Side } from '../pkg/values.js'
 *
 * Right and up in the picture, whole mm on the detector.
 * @typedef {[number, number]} Mm
 *
 * An end plate: one line or two, how far it is from square, how far its rims are apart.
 * @typedef {{ level: Level, lines: 1 | 2, deg: number | null, gap_mm: number | null }} Plate
 *
 * What stands in a picture. What does not apply is null, and everything is left out where parts are to be named.
 * @typedef {object} Facts
 * @property {Level} level
 * @property {Side} side
 * @property {Level} below
 * @property {boolean} judged
 * @property {boolean} naming
 * @property {Mm | null} [middle]
 * @property {{ percent: number, way: 'left' | 'right', midway: boolean } | null} [spinous]
 * @property {Plate} [upper]
 * @property {Plate | null} [lower]
 * @property {{ below: Level, third: 'lateral' | 'medial' | 'middle' | null, widths: number, way: 'lateral' | 'medial', below_mm: number } | null} [process]
 * @property {{ apart_mm: number } | null} [foramen]
 * @property {{ apart_mm: number, wall_mm: number } | null} [lateral]
 * @property {Mm | null} [pedicle]
 * @property {Mm | null} [joint]
 * @property {Level[] | null} [crest]
 *
 * The `describe` table of the texts.
 * @typedef {typeof import('../words/help.js').help.describe} Words
 *
 * A landmark's place in the picture, if it has one.
 * @typedef {(name: string, of?: Level, on?: Side | null) => Mm | null} Point
 */

const whole = (/** @type {number} */ x) => Math.round(x) + 0;
/** @type {(at: Mm, from: Mm) => Mm} */
const between = (at, from) => [whole(at[0] - from[0]), whole(at[1] - from[1])];

/**
 * The facts of a picture. `report`: the engine's, of that picture; `judged`: whether the learner is to judge it; `naming`: whether
 * its parts are to be named; `field_mm`: the picture's width on the detector.
 * @param {Report} report
 * @param {{ judged?: boolean, naming?: boolean, field_mm?: number }} how
 * @returns {Facts}
 */
export function factsOf(report, { judged = false, naming = false, field_mm = FIELD_MM } = {}) {
  const { level, side } = report;
  const facts = { level, side, below: levelBelow(level), judged, naming };
  if (naming) return facts;
  const criterion = (/** @type {string} */ id) => report.criteria.find((c) => c.id === id);
  /** @type {Point} */
  const point = (name, of = level, on = null) => report.landmarks.find((l) => l.name === name && l.level === of && l.side === on)?.detector_mm ?? null;
  const across = Math.abs(report.orientation.oblique);
  const { measures } = report;
  const pedicle = point('pedicle_centre', level, side);
  const behind = across <= FROM_BEHIND_DEG;
  const aside = across >= FROM_THE_SIDE_DEG;
  const body = point('body_centre');
  const sides = aside ? apart(criterion('lateral')?.value) : null;
  return {
    ...facts,
    middle: body && Math.hypot(...body) > MIDDLE_MM ? between(body, [0, 0]) : null,
    spinous: behind ? spinousOf(criterion('spinous_centred'), judged) : null,
    upper: { level, ...plateOf(criterion('squared')?.value ?? 0, aside ? null : measures.upper_rim_gap_mm, judged) },
    lower: measures.lower_plate_deg === null ? null : { level, ...plateOf(measures.lower_plate_deg, aside ? null : rimGap(report, level), judged) },
    process: behind ? processOf(criterion('facet_under_pedicle')?.value ?? null, measures.facet_below_pedicle_mm, side, facts.below) : null,
    foramen: behind && level === 'S1' ? apart(criterion('foramen_aligned')?.value) : null,
    lateral: sides && measures.posterior_wall_mm !== null ? { ...sides, wall_mm: whole(measures.posterior_wall_mm) } : null,
    pedicle: pedicle && behind ? between(pedicle, [0, 0]) : null,
    joint: jointOf(point('superior_facet', facts.below, side), pedicle, behind && level !== 'S1'),
    crest: crestOf(report, point, field_mm),
  };
}

/**
 * @param {Criterion | undefined} criterion
 * @param {boolean} judged
 * @returns {Facts['spinous']}
 */
function spinousOf(criterion, judged) {
  if (!criterion || criterion.value === null) return null;
  const grain = judged ? EYE_PERCENT : 1;
  const percent = Math.abs(Math.round(criterion.value / grain) * grain);
  return { percent, way: criterion.value > 0 ? 'left' : 'right', midway: judged ? percent === 0 : criterion.score >= 1 };
}

/**
 * @param {number} deg
 * @param {number | null} gap_mm
 * @param {boolean} judged
 * @returns {Omit<Plate, 'level'>}
 */
function plateOf(deg, gap_mm, judged) {
  const one = gap_mm === null ? Math.abs(deg) < ONE_LINE_DEG : gap_mm < ONE_LINE_MM;
  return { lines: one ? 1 : 2, deg: judged ? null : Math.abs(whole(deg)), gap_mm: gap_mm === null ? null : whole(gap_mm) };
}

/**
 * Front and back rim of the lower plate apart along the picture's height, mm on the detector.
 * @param {Report} report
 * @param {Level} level
 */
function rimGap(report, level) {
  /** @type {(name: string, side?: Side) => LandmarkReport | undefined} */
  const find = (name, side) => report.landmarks.find((l) => l.name === name && l.level === level && (!side || l.side === side));
  const [front, back] = [find('lower_plate_front'), find('lower_plate_back')];
  const [left, right] = [find('pedicle_centre', 'left'), find('pedicle_centre', 'right')];
  if (!front || !back || !left || !right) return 0;
  // Across the plate as it lies in the picture: along the line of its pedicles, which the tilt of the picture does not change.
  const [du, dv] = [0, 1].map((i) => left.detector_mm[i] - right.detector_mm[i]);
  const length = Math.hypot(du, dv);
  const [u, v] = [0, 1].map((i) => back.detector_mm[i] - front.detector_mm[i]);
  return length < 10 ? Math.abs(v) : Math.abs(u * dv - v * du) / length;
}

/**
 * @param {number | null} percent
 * @param {number | null} below_mm
 * @param {Side} side
 * @param {Level} below
 * @returns {Facts['process']}
 */
function processOf(percent, below_mm, side, below) {
  if (percent === null || below_mm === null) return null;
  // More than half a width to a side it stands beside the pedicle, not under it.
  const lateral = side === 'left' ? percent : -percent;
  const third = Math.abs(lateral) > 50 ? null : lateral > 100 / 6 ? 'lateral' : lateral < -100 / 6 ? 'medial' : 'middle';
  return { below, third, widths: Math.round(Math.abs(lateral) / 10) / 10, way: lateral > 0 ? 'lateral' : 'medial', below_mm: whole(below_mm) };
}

const apart = (/** @type {number | null | undefined} */ mm) => (mm === null || mm === undefined ? null : { apart_mm: Math.abs(whole(mm)) });

const jointOf = (/** @type {Mm | null} */ facet, /** @type {Mm | null} */ pedicle, /** @type {boolean} */ applies) => (applies && facet && pedicle ? between(facet, pedicle) : null);

/**
 * The levels between whose plates the crest's top is seen; one where it is a body's, none where it is off the picture.
 * @param {Report} report
 * @param {Point} point
 * @param {number} field_mm
 * @returns {Level[] | null}
 */
function crestOf(report, point, field_mm) {
  const crest = report.landmarks.find((l) => l.name === 'crest_top' && l.side === report.side)?.detector_mm;
  if (!crest) return null;
  if (crest.some((x) => Math.abs(x) > field_mm / 2)) return [];
  const levels = [...new Set(report.landmarks.filter((l) => l.name === 'upper_plate_centre').map((l) => l.level))];
  const rows = levels.map((level) => ({ level, top: point('upper_plate_centre', level)?.[1] ?? Infinity, bottom: point('lower_plate_centre', level)?.[1] ?? -Infinity })).sort((a, b) => b.top - a.top);
  const body = rows.find((r) => crest[1] <= r.top && crest[1] >= r.bottom);
  if (body) return [body.level];
  const under = rows.findIndex((r) => crest[1] > r.top);
  return under > 0 ? [rows[under - 1].level, rows[under].level] : null;
}

/**
 * The facts of the needle in a picture. `report`: of that picture; `seen`: the attempt's report of it (`attempt.seen()`), or null;
 * `open`: whether readings may be told.
 * @param {Report} report
 * @param {ProcedureReport | null} seen
 * @param {boolean} open
 */
export function needleFactsOf(report, seen, open) {
  if (!seen) return null;
  const pedicle = report.landmarks.find((l) => l.name === 'pedicle_centre' && l.level === report.level && l.side === report.side)?.detector_mm;
  const { needle } = seen;
  return {
    mark: seen.mark_mm && pedicle ? between(seen.mark_mm, pedicle) : null,
    placed: needle && { gauge: needle.device.gauge, depth_mm: whole(needle.depth_mm) },
    hub: needle ? between(needle.hub_mm, needle.tip_mm) : null,
    tip: needle && pedicle ? between(needle.tip_mm, pedicle) : null,
    bone: Boolean(needle?.on_bone),
    contact: open ? (seen.met.at(-1) ?? null) : null,
  };
}

/**
 * The facts as sentences, by topic.
 * @param {Facts} facts
 * @param {Words} words
 * @returns {[topic: string, sentence: string][]}
 */
export function sentencesOf(facts, words) {
  if (facts.naming) return [['naming', words.naming]];
  const { level, side, below } = facts;
  /** @type {[topic: string, sentence: string | null | undefined][]} */
  const rows = [
    ['middle', facts.middle && words.middle({ level, at_mm: facts.middle })],
    ['spinous', facts.spinous && words.spinous({ ...facts.spinous, level })],
    ['upper', facts.upper && words.plate('upper', facts.upper)],
    ['lower', facts.lower && words.plate('lower', facts.lower)],
    ['process', facts.process && words.process({ ...facts.process, level })],
    ['foramen', facts.foramen && words.foramen(facts.foramen)],
    ['lateral', facts.lateral && words.lateral({ ...facts.lateral, level })],
    ['joint', facts.joint && words.joint({ level, below, at_mm: facts.joint })],
    ['pedicle', facts.pedicle && words.pedicle({ level, side, at_mm: facts.pedicle })],
    ['crest', facts.crest && words.crest({ side, at: facts.crest })],
  ];
  return rows.flatMap(([topic, sentence]) => (sentence ? [/** @type {[string, string]} */ ([topic, sentence])] : []));
}

/**
 * The needle's facts as sentences. `readings`: those that the hand shows, where they may be told.
 * @param {ReturnType<typeof needleFactsOf>} facts
 * @param {string[]} readings
 * @param {Words} words
 * @param {(contact: ContactReport) => string} contactText
 */
export function needleSentencesOf(facts, readings, words, contactText) {
  if (!facts) return [];
  const rows = [facts.placed && words.placed(facts.placed), facts.mark && words.mark(facts.mark), facts.tip && words.tip(facts.tip), facts.hub && words.hub(facts.hub), facts.bone && words.bone];
  return [...rows, ...readings.map((line) => `${line}.`), facts.contact && words.last(contactText(facts.contact))].flatMap((sentence) => sentence || []);
}

/**
 * What of a fact is worth a message when it changes: not the numbers, but how it looks.
 * @type {Record<string, (f: Facts) => unknown>}
 */
const LOOKS = {
  spinous: (f) => f.spinous && (f.spinous.midway ? 'midway' : f.spinous.way),
  upper: (f) => f.upper?.lines,
  lower: (f) => f.lower?.lines,
  process: (f) => f.process && (f.process.third ?? f.process.way),
  foramen: (f) => f.foramen && f.foramen.apart_mm === 0,
  lateral: (f) => f.lateral && f.lateral.apart_mm === 0,
};

/**
 * The sentences of the topics that look otherwise than before; none on another case or from another kind of picture.
 * @param {Facts | null | undefined} before
 * @param {Facts} facts
 * @param {Words} words
 */
export function changesOf(before, facts, words) {
  if (!before || /** @type {const} */ (['level', 'side', 'judged', 'naming']).some((key) => before[key] !== facts[key])) return [];
  const changed = Object.keys(LOOKS).filter((topic) => LOOKS[topic](before) !== LOOKS[topic](facts));
  return sentencesOf(facts, words).filter(([topic]) => changed.includes(topic)).map(([, sentence]) => sentence);
}
