// Practice. Sentences in texts/…/practice.ftl; in another language they are fetched by this page alone, not with the language's others.

import { pageSayer } from './language.js';
import { sayer } from './sentences.js';
import { practice as english } from '../pkg/texts/en/practice.js';

const OTHERS = {
  de: () => import('../pkg/texts/de/practice.js'),
  es: () => import('../pkg/texts/es/practice.js'),
};

const { tag } = pageSayer('practice', english);
// A language that does not come leaves the page in English.
const own = Object.hasOwn(OTHERS, tag) ? await OTHERS[tag]().catch(() => null) : null;
const say = sayer(tag, own?.practice ?? {}, english);

const whole = (value) => say.number(Math.abs(value), 0);
const tenth = (value) => say.number(Math.abs(value), 1);
const side = (value) => (value > 0 ? 'left' : 'right');

/** A fact of the engine in words. */
const FACTS = {
  spinous: (f) => say('fact-spinous', { n: whole(f.percent), way: side(f.percent) }),
  rims: (f) => say('fact-rims', { n: tenth(f.mm), way: f.mm > 0 ? 'above' : 'below' }),
  process: (f) => say('fact-process', { n: whole(f.percent), way: side(f.percent) }),
  lateral: (f) => say('fact-lateral', { n: whole(f.mm) }),
  tip: (f) => say('fact-tip', { side: tenth(f.lateral_mm), sideWay: f.lateral_mm > 0 ? 'lateral' : 'medial', down: tenth(f.below_mm), downWay: f.below_mm > 0 ? 'below' : 'above' }),
  medial: (f) => say('fact-medial', { n: tenth(f.mm), way: f.mm > 0 ? 'medial' : 'lateral' }),
  hour: (f) => say('fact-hour', { n: tenth(f.hour) }),
  notch: (f) => say('fact-notch', { to: f.looks }),
  drifted: (f) => say('fact-drifted', { n: tenth(f.mm), to: f.to }),
  contrast: (f) => say('fact-contrast', { pattern: f.pattern }),
  needed: (f) => say('fact-needed', { n: whole(f.degrees), to: f.to }),
};

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
const name = (a) => `asked-${a.asks}${a.wanted ? `-${a.wanted}` : ''}${a.contrast ? '-contrast' : ''}`;
const percent = (share) => Math.round(100 * share);

export const practice = say.tree({
  language: say.tag,
  number: say.number,
  noPage: (why) => say('noPage', { why }),
  noEngine: (why) => say('noEngine', { why }),
  badKeep: (why) => say('badKeep', { why }),
  due: (n) => say('due', { n }),
  begun: (o) => say('begun', { begun: o.begun, all: o.cards, n: o.answers }),
  progress: (n, all) => say('progress', { n, all }),
  placeStage: (q) => say('placeStage', { level: q.level, side: q.side, stage: q.stage + 1 }),
  filmAt: (at) => say('filmAt', { oblique: say.number(at.oblique, 1), tilt: say.number(at.tilt, 1) }),
  asked: (q) => say(name(q.asked), { ...q.asked, level: q.level, side: q.side }),
  choice: (c) => CHOICES[c.is](c),
  fact: (f) => FACTS[f.fact](f),
  wrong: (answer) => say('wrong', { answer }),
  margin: (m) => say('margin', { has: say.number(m.has, 1), least: say.number(m.least, 1), unit: m.unit.startsWith('times n') ? 'times' : m.unit.replaceAll(' ', '-') }),
  done: (right, all) => say('done', { right, all }),
  skill: (skill) => say('skill', { skill }),
  kind: (kind) => say('kind', { kind }),
  stageOf: (n) => say('stageOf', { n: n + 1 }),
  reached: (n) => say('reached', { n }),
  notReached: (n) => say('notReached', { n }),
  standing: (verdict, o) => say(`standing-${verdict ?? 'none'}`, { p0: percent(o.acceptable), p1: percent(o.unacceptable) }),
  chart: (skill, c) => say('chart', { skill: say('skill', { skill }), n: c.answers, wrong: c.wrong }),
  verdict: (verdict) => say(`verdict-${verdict}`),
  what: {
    sum: (o, l) => say('what-sum', { up: say.number(1 - l.s, 2), down: say.number(l.s, 2), h0: say.number(l.h0, 2), h1: say.number(l.h1, 2), p0: percent(o.acceptable), p1: percent(o.unacceptable) }),
    reached: (o) => say('what-reached', { p1: percent(o.unacceptable), chance: percent(o.by_chance) }),
  },
  keep: { added: (n) => say('keep-added', { n }) },
  class: { lead: (n) => say('class-lead', { n }), codeSoFar: (n, all) => say('class-codeSoFar', { n, all }), badRound: (why) => say('class-badRound', { why }) },
  group: { cell: (c) => say('group-cell', { n: c.answers, wrong: c.wrong }), reached: (n) => say('group-reached', { n }), bad: (name, why) => say('group-bad', { name, why }) },
  teacher: {
    stageName: (n) => say('teacher-stageName', { n }),
    taken: (n) => say('teacher-taken', { n }),
    answered: (n, none) => say('teacher-answered', { n, none }),
    countOf: (n) => say('teacher-count-of', { n }),
  },
});
