// Practice. Sentences in texts/…/practice.ftl; in another language they are fetched by this page alone, not with the language's others.

import { pageSayer } from './language.js';
import { sayer } from './sentences.js';
import { practice as english } from '../pkg/texts/en/practice.js';

/**
 * @import { Asked, Choice, Fact, Margin, Orientation, Overview, ShownQuestion } from '../pkg/values.js'
 * @import { Table } from './sentences.js'
 */

/** @type {Record<string, () => Promise<{ practice: Table }>>} */
const OTHERS = {
  de: () => import('../pkg/texts/de/practice.js'),
  es: () => import('../pkg/texts/es/practice.js'),
};

const { tag } = pageSayer('practice', english);
// A language that does not come leaves the page in English.
const own = Object.hasOwn(OTHERS, tag) ? await OTHERS[tag]().catch(() => null) : null;
const say = sayer(tag, own?.practice ?? {}, english);

const whole = (/** @type {number} */ value) => say.number(Math.abs(value), 0);
const tenth = (/** @type {number} */ value) => say.number(Math.abs(value), 1);
const side = (/** @type {number} */ value) => (value > 0 ? 'left' : 'right');

/**
 * A fact of the engine in words.
 * @type {{ [Name in Fact['fact']]: (f: Extract<Fact, { fact: Name }>) => string }}
 */
const FACTS = {
  spinous: (f) => say('fact-spinous', { n: whole(f.percent), way: side(f.percent) }),
  rims: (f) => say('fact-rims', { n: tenth(f.mm), way: f.mm > 0 ? 'above' : 'below' }),
  process: (f) => say('fact-process', { n: whole(f.percent), way: side(f.percent) }),
  mid_plate: (f) => say('fact-midPlate', { n: whole(f.percent), way: side(f.percent) }),
  rims_below: (f) => say('fact-rimsBelow', { n: tenth(f.mm), way: f.mm > 0 ? 'above' : 'below' }),
  openings: (f) => say('fact-openings', { n: tenth(f.mm), way: side(f.mm) }),
  lateral: (f) => say('fact-lateral', { n: whole(f.mm) }),
  tip: (f) => say('fact-tip', { side: tenth(f.lateral_mm), sideWay: f.lateral_mm > 0 ? 'lateral' : 'medial', down: tenth(f.below_mm), downWay: f.below_mm > 0 ? 'below' : 'above' }),
  medial: (f) => say('fact-medial', { n: tenth(f.mm), way: f.mm > 0 ? 'medial' : 'lateral' }),
  hour: (f) => say('fact-hour', { n: tenth(f.hour) }),
  notch: (f) => say('fact-notch', { to: f.looks }),
  drifted: (f) => say('fact-drifted', { n: tenth(f.mm), to: f.to }),
  contrast: (f) => say('fact-contrast', { pattern: f.pattern }),
  needed: (f) => say('fact-needed', { n: whole(f.degrees), to: f.to }),
};

/** @type {{ [Name in Choice['is']]: (c: Extract<Choice, { is: Name }>) => string }} */
const CHOICES = {
  turn: (c) => say('turn', c),
  degrees: (c) => say('degrees', { n: c.about }),
  part: (c) => say('part', c),
  view: (c) => say('view', c),
  no_view: () => say('view', { view: 'none' }),
  ap: (c) => say('ap', c),
  hour: (c) => say('hour', { n: c.hour }),
  screen: (c) => say('screen', c),
  pattern: (c) => say('pattern', c),
  decide: (c) => say('decide', c),
};

/** The message of what is asked. */
const name = (/** @type {Asked} */ a) => `asked-${a.asks}${'wanted' in a ? `-${a.wanted}` : ''}${'contrast' in a && a.contrast ? '-contrast' : ''}`;
const percent = (/** @type {number} */ share) => Math.round(100 * share);

export const practice = say.tree({
  language: say.tag,
  number: say.number,
  noPage: (/** @type {string} */ why) => say('noPage', { why }),
  noEngine: (/** @type {string} */ why) => say('noEngine', { why }),
  badKeep: (/** @type {string} */ why) => say('badKeep', { why }),
  due: (/** @type {number} */ n) => say('due', { n }),
  begun: (/** @type {{ begun: number, cards: number, answers: number }} */ o) => say('begun', { begun: o.begun, all: o.cards, n: o.answers }),
  progress: (/** @type {number} */ n, /** @type {number} */ all) => say('progress', { n, all }),
  placeStage: (/** @type {Pick<ShownQuestion, 'level' | 'side' | 'stage'>} */ q) => say('placeStage', { level: q.level, side: q.side, stage: q.stage + 1 }),
  filmAt: (/** @type {Orientation} */ at) => say('filmAt', { oblique: say.number(at.oblique, 1), tilt: say.number(at.tilt, 1) }),
  asked: (/** @type {ShownQuestion} */ q) => say(name(q.asked), { ...q.asked, level: q.level, side: q.side }),
  choice: (/** @type {Choice} */ c) => /** @type {(c: Choice) => string} */ (CHOICES[c.is])(c),
  fact: (/** @type {Fact} */ f) => /** @type {(f: Fact) => string} */ (FACTS[f.fact])(f),
  wrong: (/** @type {string} */ answer) => say('wrong', { answer }),
  margin: (/** @type {Margin} */ m) => say('margin', { has: say.number(m.has, 1), least: say.number(m.least, 1), unit: m.unit.startsWith('times n') ? 'times' : m.unit.replaceAll(' ', '-') }),
  done: (/** @type {number} */ right, /** @type {number} */ all) => say('done', { right, all }),
  skill: (/** @type {string} */ skill) => say('skill', { skill }),
  kind: (/** @type {string} */ kind) => say('kind', { kind }),
  stageOf: (/** @type {number} */ n) => say('stageOf', { n: n + 1 }),
  reached: (/** @type {number} */ n) => say('reached', { n }),
  notReached: (/** @type {number} */ n) => say('notReached', { n }),
  standing: (/** @type {string | undefined} */ verdict, /** @type {{ acceptable: number, unacceptable: number }} */ o) => say(`standing-${verdict ?? 'none'}`, { p0: percent(o.acceptable), p1: percent(o.unacceptable) }),
  chart: (/** @type {string} */ skill, /** @type {{ answers: number, wrong: number }} */ c) => say('chart', { skill: say('skill', { skill }), n: c.answers, wrong: c.wrong }),
  verdict: (/** @type {string} */ verdict) => say(`verdict-${verdict}`),
  what: {
    sum: (/** @type {{ acceptable: number, unacceptable: number }} */ o, /** @type {{ s: number, h0: number, h1: number }} */ l) => say('what-sum', { up: say.number(1 - l.s, 2), down: say.number(l.s, 2), h0: say.number(l.h0, 2), h1: say.number(l.h1, 2), p0: percent(o.acceptable), p1: percent(o.unacceptable) }),
    reached: (/** @type {{ unacceptable: number, by_chance: number }} */ o) => say('what-reached', { p1: percent(o.unacceptable), chance: percent(o.by_chance) }),
  },
  keep: { added: (/** @type {number} */ n) => say('keep-added', { n }) },
  class: { lead: (/** @type {number} */ n) => say('class-lead', { n }), codeSoFar: (/** @type {number} */ n, /** @type {number} */ all) => say('class-codeSoFar', { n, all }), badRound: (/** @type {string} */ why) => say('class-badRound', { why }) },
  group: {
    cell: (/** @type {{ answers: number, wrong: number }} */ c) => say('group-cell', { n: c.answers, wrong: c.wrong }),
    reached: (/** @type {number} */ n) => say('group-reached', { n }),
    bad: (/** @type {string} */ name, /** @type {string} */ why) => say('group-bad', { name, why }),
    checking: (/** @type {number} */ n, /** @type {number} */ all) => say('group-checking', { n, all }),
    status: (/** @type {string} */ status, /** @type {string} */ why) => say(`group-${status}`, { why }),
    shares: (/** @type {number} */ n, /** @type {string} */ other) => say('group-shares', { n, other }),
  },
  teacher: {
    stageName: (/** @type {number} */ n) => say('teacher-stageName', { n }),
    taken: (/** @type {number} */ n) => say('teacher-taken', { n }),
    answered: (/** @type {number} */ n, /** @type {number} */ none) => say('teacher-answered', { n, none }),
    countOf: (/** @type {number} */ n) => say('teacher-count-of', { n }),
  },
});
