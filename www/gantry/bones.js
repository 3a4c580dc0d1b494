// The bones as the drawings' onlookers see them: the engine's outlines, asked for once a patient and level.

import { closed, line } from './drawing.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { Label } from '../pkg/values.js'
 * @import { Flat, Point } from './drawing.js'
 *
 * A part of a bone as an onlooker sees it: its lines in the drawing's mm, y down, and the same as a path.
 * @typedef {{ label: Label, d: string, lines: Flat[][] }} SeenPart
 */

/** Lines are cut this far from the target's centre, beyond what the near drawings show. */
const HALF_MM = 95;
/** What a press takes hold of lies as near as this, mm. */
const REACH_MM = 6;
/** An onlooker sees the near side: the far one must be nearer to the pointer by this to be meant, mm. */
const BEHIND_MM = 1.5;

export const sameLabel = (/** @type {Label | null | undefined} */ a, /** @type {Label | null | undefined} */ b) => Boolean(a && b && a.level === b.level && a.part === b.part && a.side === b.side);
export const labelKey = (/** @type {Label} */ { level, part, side }) => [level, part, side].join(' ');

/**
 * The outlines for an onlooker (of `VIEWERS`), a part each.
 * @param {TeachingRoom} room
 * @param {{ across: Point, upward: Point }} onlooker
 */
export function bonesSeen(room, { across, upward }) {
  /** @type {Map<string, SeenPart>} */
  const parts = new Map();
  for (const [label, tenths] of room.partsFrom(new Float64Array([...across, ...upward]), HALF_MM)) {
    const key = labelKey(label);
    /** @type {SeenPart} */
    const part = parts.get(key) ?? { label, d: '', lines: [] };
    parts.set(key, part);
    /** @type {Flat[]} */
    const points = [];
    for (let i = 0; i < tenths.length; i += 2) points.push([tenths[i] / 10, -tenths[i + 1] / 10]);
    if (points.length < 2) continue;
    const round = points.length > 3 && points[0].join() === points[points.length - 1].join();
    part.lines.push(points);
    part.d += round ? closed(points.slice(0, -1)) : line(points);
  }
  return [...parts.values()];
}

/** All lines of the parts that pass. */
export const linesOf = (/** @type {SeenPart[]} */ parts, /** @type {(label: Label) => boolean} */ passes) => parts.filter(({ label }) => passes(label)).map(({ d }) => d).join('');

/**
 * The part whose line is nearest to a place of the drawing, or null. `behind(label)`: on the side away from the onlooker.
 * @param {SeenPart[]} parts
 * @param {Flat} at
 * @param {(label: Label) => boolean} behind
 */
export function nearestPart(parts, at, behind) {
  let least = REACH_MM;
  /** @type {Label | null} */
  let found = null;
  for (const { label, lines } of parts) {
    const off = behind(label) ? BEHIND_MM : 0;
    for (const points of lines) {
      for (let i = 1; i < points.length; i++) {
        const distance = off + toPiece(at, points[i - 1], points[i]);
        if (distance < least) [least, found] = [distance, label];
      }
    }
  }
  return found;
}

/**
 * @param {Flat} point
 * @param {Flat} from
 * @param {Flat} to
 */
function toPiece([x, y], [ax, ay], [bx, by]) {
  const [dx, dy] = [bx - ax, by - ay];
  const share = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}
