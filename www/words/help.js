// What tour, list of keys and description say: loaded with them. Sentences in texts/…/help.ftl.

import { tenth } from '../base/tenth.js';
import { help as english } from '../pkg/texts/en/help.js';
import { pageSayer } from './language.js';
import { texts } from './texts.js';

const say = pageSayer('help', english);

const degrees = (n) => say('degrees', { n });
const mm = (n) => say('mm', { n: Math.abs(n) });

const isNowhere = ([right, up]) => right === 0 && up === 0;
/** `[right, up]` in mm, as a place off another. */
const off = ([right, up]) =>
  say('describe-off', {
    across: right === 0 ? 'none' : right > 0 ? 'right' : 'left',
    along: up === 0 ? 'none' : up > 0 ? 'up' : 'down',
    x: Math.abs(right),
    y: Math.abs(up),
  });

/** Signs for keys that have no letter, and no name that a language would change. */
const ARROWS = { arrowleft: '←', arrowright: '→', arrowup: '↑', arrowdown: '↓' };

/** A key, as `event.key` has it. */
function keyName(key) {
  const lower = key.toLowerCase();
  return say('keys-name', { key: key === ' ' ? 'space' : lower, given: ARROWS[lower] ?? (key.length === 1 ? key.toUpperCase() : key) });
}

/** An end plate; `which` is `upper` or `lower`. */
function plate(which, f) {
  if (f.lines === 1) return say('describe-plateOne', { which, level: f.level });
  const apart = [f.deg !== null && degrees(f.deg), f.gap_mm !== null && mm(f.gap_mm)].filter(Boolean).join(', ');
  return say(apart === '' ? 'describe-plateTwo' : 'describe-plateApart', { which, level: f.level, apart });
}

const articularProcess = (f) =>
  say(f.below_mm < 0 ? 'describe-processOver' : 'describe-processBelow', {
    stands: f.third ? `under_${f.third}` : `beside_${f.way}`,
    level: f.level,
    below: f.below,
    widths: f.widths,
    mm: Math.abs(f.below_mm),
  });

function crest({ side, at }) {
  if (at.length === 0) return say('describe-crestOutside', { side });
  const [above, below] = at;
  return at.length === 1 ? say('describe-crestBody', { side, level: above }) : say('describe-crestDisc', { side, above, below });
}

const short = (x) => say.number(tenth(Math.abs(x)), Math.abs(x) < 10 ? 1 : 0);

export const help = say.tree({
  film: {
    ...Object.fromEntries(['process', 'rims', 'facetLateral', 'facetMedial', 'openings', 'sides'].map((name) => [name, (x) => say(`film-${name}`, { mm: short(x) })])),
    /** `hour` in words: those of the injection. */
    clock: (h) => say('film-clock', { hour: texts.needle.hour(h) }),
    move: (advice) => say('film-move', { way: advice.direction, deg: say.number(advice.amount_deg, advice.amount_deg < 2 ? 1 : 0) }),
  },
  ask: {
    end: (way) => say('ask-end', { way }),
    yes: (told, advice) => say('ask-yes', { told, advice }),
    no: (told, advice) => say('ask-no', { told, advice }),
  },
  tour: {
    count: (n, all) => say('tour-count', { n, all }),
  },
  keys: {
    of: keyName,
    command: (key) => say('keys-command', { key: key.toUpperCase() }),
    sliders: { step: (deg) => say('keys-sliders-step', { deg }), page: degrees },
    picture: {
      turn: (step, coarse) => say('keys-picture-turn', { step: degrees(step), coarse: degrees(coarse) }),
      hub: (step, fine) => say('keys-picture-hub', { step, fine }),
    },
    hub: { turn: (step, fine) => say('keys-hub-turn', { step, fine }) },
    mark: { cross: (step, fine) => say('keys-mark-cross', { step, fine }) },
  },
  describe: {
    step: (title) => say('describe-step', { title }),
    spinous: (f) => say(f.midway ? 'describe-spinousMidway' : 'describe-spinousOff', { level: f.level, percent: f.percent, way: f.way }),
    plate,
    process: articularProcess,
    joint: (f) => say('describe-joint', { level: f.level, below: f.below, off: off(f.at_mm) }),
    pedicle: (f) => say('describe-pedicle', { side: f.side, level: f.level, off: off(f.at_mm) }),
    foramen: (f) => say('describe-foramen', { apart: Math.abs(f.apart_mm) }),
    lateral: (f) => say('describe-lateral', { level: f.level, apart: Math.abs(f.apart_mm), wall: Math.abs(f.wall_mm) }),
    crest,
    hub: (at) => (isNowhere(at) ? say('describe-hubOver') : say('describe-hubOff', { off: off(at) })),
    tip: (at) => say('describe-tip', { off: off(at) }),
    mark: (at) => say('describe-mark', { off: off(at) }),
    placed: (n) => say('describe-placed', { gauge: n.gauge, depth: n.depth_mm }),
    last: (met) => say('describe-last', { met }),
  },
});
