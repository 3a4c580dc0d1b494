// What tour, list of keys and description say: loaded with them. Sentences in texts/…/help.ftl.

import { tenth } from '../base/tenth.js';
import { help as english } from '../pkg/texts/en/help.js';
import { pageSayer } from './language.js';
import { needle } from './needle.js';

/**
 * @import { Advice, Level, Side } from '../pkg/values.js'
 */

const say = pageSayer('help', english);

const degrees = (/** @type {number} */ n) => say('degrees', { n });
const mm = (/** @type {number} */ n) => say('mm', { n: Math.abs(n) });

const isNowhere = (/** @type {[number, number]} */ [right, up]) => right === 0 && up === 0;
/** `[right, up]` in mm, as a place off another. */
const off = (/** @type {[number, number]} */ [right, up]) =>
  say('describe-off', {
    across: right === 0 ? 'none' : right > 0 ? 'right' : 'left',
    along: up === 0 ? 'none' : up > 0 ? 'up' : 'down',
    x: Math.abs(right),
    y: Math.abs(up),
  });

/** Signs for keys that have no letter, and no name that a language would change. */
/** @type {Record<string, string>} */
const ARROWS = { arrowleft: '←', arrowright: '→', arrowup: '↑', arrowdown: '↓' };

/**
 * A key, as `event.key` has it.
 * @param {string} key
 */
function keyName(key) {
  const lower = key.toLowerCase();
  return say('keys-name', { key: key === ' ' ? 'space' : lower, given: ARROWS[lower] ?? (key.length === 1 ? key.toUpperCase() : key) });
}

/**
 * An end plate; `which` is `upper` or `lower`.
 * @param {string} which
 * @param {{ lines: number, level: Level, deg: number | null, gap_mm: number | null }} f
 */
function plate(which, f) {
  if (f.lines === 1) return say('describe-plateOne', { which, level: f.level });
  const apart = [f.deg !== null && degrees(f.deg), f.gap_mm !== null && mm(f.gap_mm)].filter(Boolean).join(', ');
  return say(apart === '' ? 'describe-plateTwo' : 'describe-plateApart', { which, level: f.level, apart });
}

const articularProcess = (/** @type {{ below_mm: number, third: string | null, way: string, level: Level, below: Level, widths: number }} */ f) =>
  say(f.below_mm < 0 ? 'describe-processOver' : 'describe-processBelow', {
    stands: f.third ? `under_${f.third}` : `beside_${f.way}`,
    level: f.level,
    below: f.below,
    widths: f.widths,
    mm: Math.abs(f.below_mm),
  });

/** @param {{ side: Side, at: Level[] }} f */
function crest({ side, at }) {
  if (at.length === 0) return say('describe-crestOutside', { side });
  const [above, below] = at;
  return at.length === 1 ? say('describe-crestBody', { side, level: above }) : say('describe-crestDisc', { side, above, below });
}

const short = (/** @type {number} */ x) => say.number(tenth(Math.abs(x)), Math.abs(x) < 10 ? 1 : 0);

/** The lines on the film that say what is off. */
const LINES = /** @type {const} */ (['process', 'rims', 'facetLateral', 'facetMedial', 'openings', 'sides']);

export const help = say.tree({
  film: {
    .../** @type {Record<typeof LINES[number], (mm: number) => string>} */ (Object.fromEntries(LINES.map((name) => [name, (/** @type {number} */ x) => say(`film-${name}`, { mm: short(x) })]))),
    /** `hour` in words: those of the injection. */
    clock: (/** @type {number} */ h) => say('film-clock', { hour: needle.hour(h) }),
    move: (/** @type {Advice} */ advice) => say('film-move', { way: advice.direction, deg: say.number(advice.amount_deg, advice.amount_deg < 2 ? 1 : 0) }),
  },
  ask: {
    end: (/** @type {string} */ way) => say('ask-end', { way }),
    yes: (/** @type {string} */ measured, /** @type {string} */ advice) => say('ask-yes', { measured, advice }),
    no: (/** @type {string} */ measured, /** @type {string} */ advice) => say('ask-no', { measured, advice }),
  },
  tour: {
    count: (/** @type {number} */ n, /** @type {number} */ all) => say('tour-count', { n, all }),
  },
  keys: {
    of: keyName,
    command: (/** @type {string} */ key) => say('keys-command', { key: key.toUpperCase() }),
    sliders: { step: (/** @type {number} */ deg) => say('keys-sliders-step', { deg }), page: degrees },
    picture: {
      turn: (/** @type {number} */ step, /** @type {number} */ coarse) => say('keys-picture-turn', { step: degrees(step), coarse: degrees(coarse) }),
      hub: (/** @type {number} */ step, /** @type {number} */ fine) => say('keys-picture-hub', { step, fine }),
    },
    hub: { turn: (/** @type {number} */ step, /** @type {number} */ fine) => say('keys-hub-turn', { step, fine }) },
    mark: { cross: (/** @type {number} */ step, /** @type {number} */ fine) => say('keys-mark-cross', { step, fine }) },
  },
  describe: {
    step: (/** @type {string} */ title) => say('describe-step', { title }),
    spinous: (/** @type {{ midway: boolean, level: string, percent: number, way: string }} */ f) => say(f.midway ? 'describe-spinousMidway' : 'describe-spinousOff', { level: f.level, percent: f.percent, way: f.way }),
    plate,
    process: articularProcess,
    middle: (/** @type {{ level: string, at_mm: [number, number] }} */ f) => say('describe-middle', { level: f.level, off: off(f.at_mm) }),
    joint: (/** @type {{ level: string, below: Level, at_mm: [number, number] }} */ f) => say('describe-joint', { level: f.level, below: f.below, off: off(f.at_mm) }),
    pedicle: (/** @type {{ side: string, level: string, at_mm: [number, number] }} */ f) => say('describe-pedicle', { side: f.side, level: f.level, off: off(f.at_mm) }),
    foramen: (/** @type {{ apart_mm: number }} */ f) => say('describe-foramen', { apart: Math.abs(f.apart_mm) }),
    lateral: (/** @type {{ level: string, apart_mm: number, wall_mm: number }} */ f) => say('describe-lateral', { level: f.level, apart: Math.abs(f.apart_mm), wall: Math.abs(f.wall_mm) }),
    crest,
    hub: (/** @type {[number, number]} */ at) => (isNowhere(at) ? say('describe-hubOver') : say('describe-hubOff', { off: off(at) })),
    tip: (/** @type {[number, number]} */ at) => say('describe-tip', { off: off(at) }),
    mark: (/** @type {[number, number]} */ at) => say('describe-mark', { off: off(at) }),
    placed: (/** @type {{ gauge: string, depth_mm: number }} */ n) => say('describe-placed', { gauge: n.gauge, depth: n.depth_mm }),
    last: (/** @type {string} */ met) => say('describe-last', { met }),
  },
});
