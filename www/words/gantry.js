// What the drawings of C-arm and patient say when they are linked with the picture. Sentences in texts/…/gantry.ftl.

import { pageSayer } from './language.js';
import { gantry as english } from '../pkg/texts/en/gantry.js';
import { view } from './view-page.js';

/**
 * @import { Hit, Label, Level } from '../pkg/values.js'
 * @import { Angles } from '../base/tenth.js'
 */

const say = pageSayer('gantry', english);

const capital = (/** @type {string} */ text) => text.replace(/^./, (/** @type {string} */ c) => c.toUpperCase());
/**
 * A part of a bone as values.
 * @param {Label} label
 */
function of({ part, side, level }) {
  const name = view.picture.part(part);
  return { part: name, Part: capital(name), side: side || 'none', level };
}
const name = (/** @type {Label} */ label) => say('name', of(label));

export const gantryLink = say.tree({
  table: {
    /** Where it stands against the start. @type {(x: number, y: number, z: number, off: boolean) => string} */
    words: (x, y, z, off) =>
      x === 0 && y === 0 && z === 0
        ? say(off ? 'table-asItStood' : 'table-isocentre')
        : [
            x !== 0 && say('table-across', { mm: Math.abs(x), way: x > 0 ? 'left' : 'right' }),
            z !== 0 && say('table-along', { mm: Math.abs(z), way: z > 0 ? 'head' : 'feet' }),
            y !== 0 && say('table-height', { mm: Math.abs(y), way: y > 0 ? 'up' : 'down' }),
          ].filter(Boolean).join(', '),
    stands: (/** @type {string} */ where) => say('table-stands', { where }),
    to: (/** @type {string} */ way, /** @type {number} */ mm) => say('table-to', { way, mm: Math.round(mm) }),
  },
  /** What stopped a turn and what to move. */
  hit: (/** @type {Hit} */ { housing, obstacle, table, by_mm }) => say(`hit-${housing}-${obstacle}`, { way: say('hit-way', { way: table ?? 'none', mm: by_mm }) }),
  name,
  lit: (/** @type {Label} */ label) => say('lit', { name: name(label) }),
  notInPicture: (/** @type {Label} */ label) => say('notInPicture', { name: name(label) }),
  noOutlines: (/** @type {Label} */ label) => say('noOutlines', { name: name(label) }),
  litHere: (/** @type {Label} */ label) => say('litHere', of(label)),
  near_feet: (/** @type {{ level: Level }} */ s) => say('near_feet', { level: s.level }),
  near_side: (/** @type {{ level: Level }} */ s) => say('near_side', { level: s.level }),
  describeNear: (/** @type {{ level: Level, from: string }} */ s) => say('describeNear', { level: s.level, from: s.from }),
  centralRay: (/** @type {Angles} */ s) => say('centralRay', { oblique: view.oblique.spoken(s.oblique_deg), tilt: view.tilt.spoken(s.tilt_deg) }),
});
