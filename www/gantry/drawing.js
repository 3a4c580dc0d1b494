// A small drawing of C-arm, table and patient that follows the angles: a few solids in millimetres, projected on two screens.
// Patient axes: x to the patient's left, y posterior (up: the patient lies prone), z to the head; origin = isocentre.

import { make, say } from '../base/dom.js';
import { shape } from '../base/svg.js';
import { texts } from '../words/texts.js';

/**
 * @import { Place } from '../state/positioning.js'
 *
 * A point or direction in the patient's axes, mm, and a place in a drawing, mm, y down.
 * @typedef {readonly number[]} Point
 * @typedef {[number, number]} Flat
 * @typedef {(point: Point) => Flat} See
 *
 * @typedef {'feet' | 'side'} Onlooker
 * @typedef {Record<string, SVGElement>} Drawn
 */

export const SOURCE_MM = 700;
export const RECEPTOR_MM = 400;
const C_RADIUS_MM = 780;
const RECEPTOR_RADIUS_MM = 155;
const TABLE = { half_width: 260, top: -135, thick: 45, feet: -1050, head: 900 };
// Sagittal profile of a prone adult, z (to the head) and y (posterior), outer skin, clockwise from the heel of the back.
const PROFILE = [[-900, 20], [-620, 45], [-420, 70], [-300, 118], [-190, 128], [-80, 92], [40, 82], [180, 102], [330, 120], [430, 108], [500, 58], [560, 45], [600, 80], [680, 88], [745, 50], [750, -40], [715, -95], [640, -118], [560, -110], [520, -128], [380, -134], [180, -130], [0, -132], [-180, -134], [-420, -130], [-640, -120], [-900, -110]];
/** What lies on the table, under the beam and over it. */
const LYING = [['table-under', 'table', 'patient', 'body'], ['needle']];
const TRUNK = { half_width: 175, half_depth: 108, middle: -25 };

const dot = (/** @type {Point} */ a, /** @type {Point} */ b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const plus = (/** @type {Point} */ a, /** @type {number} */ k, /** @type {Point} */ b) => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const cross = (/** @type {Point} */ a, /** @type {Point} */ b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const rad = (/** @type {number} */ deg) => (deg * Math.PI) / 180;

/**
 * Where a viewer stands: screen axes turned a little (yaw) and raised a little (pitch), without perspective.
 * @param {Point} right
 * @param {Point} up
 * @param {Point} forward
 * @param {number} yaw_deg
 * @param {number} pitch_deg
 */
function viewer(right, up, forward, yaw_deg, pitch_deg) {
  const [cy, sy, cp, sp] = [Math.cos(rad(yaw_deg)), Math.sin(rad(yaw_deg)), Math.cos(rad(pitch_deg)), Math.sin(rad(pitch_deg))];
  const across = plus(right.map((x) => x * cy), sy, forward);
  const ahead = plus(forward.map((x) => x * cy), -sy, right);
  const upward = plus(up.map((x) => x * cp), sp, ahead);
  return { across, upward, see: /** @type {See} */ ((p) => [dot(p, across), -dot(p, upward)]) };
}

/** The two onlookers: their screen axes in the patient's frame, `see(point)` in mm with y down, and what they see of the room. */
export const VIEWERS = {
  feet: { ...viewer([-1, 0, 0], [0, 1, 0], [0, 0, 1], 0, 9), box: '-960 -930 1920 1860' },
  side: { ...viewer([0, 0, 1], [0, 1, 0], [1, 0, 0], -14, 9), box: '-1130 -930 2260 1860' },
};

/**
 * Receptor direction and the direction along which the C slides, for an orientation.
 * @param {number} oblique_deg
 * @param {number} tilt_deg
 */
export function directions(oblique_deg, tilt_deg) {
  const [o, t] = [rad(oblique_deg), rad(tilt_deg)];
  return {
    receptor: [Math.sin(o) * Math.cos(t), Math.cos(o) * Math.cos(t), Math.sin(t)],
    slide: [Math.cos(o), -Math.sin(o), 0],
  };
}

/**
 * Builds one drawing in `holder`. Returns an update function `(state, needle)`; `needle`: hub and tip, mm, or null.
 * @param {Element} holder
 * @param {Onlooker} from
 */
export function gantryDrawing(holder, from) {
  const { see, box } = VIEWERS[from];
  const svg = shape('svg', { viewBox: box, role: 'img', class: 'gantry-svg', 'aria-labelledby': `gantry-${from}-text` });
  const title = shape('title', { id: `gantry-${from}-text` });
  svg.append(title);
  const layer = (/** @type {string} */ name, /** @type {keyof SVGElementTagNameMap} */ tag = 'path', /** @type {SVGElement} */ into = svg) => {
    const element = shape(tag, { class: `g-${name}` });
    into.append(element);
    return element;
  };
  // What the table moves stands in groups of its own.
  const lying = LYING.map(() => shape('g', {}));
  const parts = Object.fromEntries(['floor', 'arm-edge', 'arm', 'table-under', 'table', 'patient', 'body', 'beam', 'ray', 'upright', 'swing', 'needle', 'source', 'receptor', 'face'].map((n) => {
    const group = lying[LYING.findIndex((names) => names.includes(n))];
    if (group) svg.append(group);
    return [n, layer(n, 'path', group)];
  }));
  const words = Object.fromEntries(['receptor', 'source', 'start', 'end'].map((n) => [n, layer('word', 'text')]));
  const caption = make('figcaption');
  holder.append(svg, caption);

  still(parts, words, see, from);
  return (/** @type {Place} */ state, /** @type {Point[] | null} */ needle) => {
    moving(parts, words, see, from, state);
    const [x, y] = see([state.table_x_mm, state.table_y_mm, state.table_z_mm]);
    for (const group of lying) group.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`);
    parts.needle.setAttribute('d', needle ? line(needle.map(see)) : '');
    say(title, from === 'feet' ? texts.gantry.describeFeet(state) : texts.gantry.describeSide(state));
    say(caption, texts.gantry[from](state));
  };
}

/**
 * Table, patient and floor: drawn once.
 * @param {Drawn} parts
 * @param {Drawn} words
 * @param {See} see
 * @param {Onlooker} from
 */
function still(parts, words, see, from) {
  const { half_width: w, top, thick, feet, head } = TABLE;
  const slab = (/** @type {number} */ y) => [[-w, y, feet], [w, y, feet], [w, y, head], [-w, y, head]];
  parts.table.setAttribute('d', closed(slab(top).map(see)));
  parts['table-under'].setAttribute('d', closed(hull([...slab(top), ...slab(top - thick)].map(see))));
  const axial = ring(48).map(([c, s]) => [TRUNK.half_width * c, TRUNK.middle + TRUNK.half_depth * s, 0]);
  const sagittal = PROFILE.map(([z, y]) => [0, y, z]);
  parts.patient.setAttribute('d', smooth((from === 'feet' ? axial : sagittal).map(see)));
  const vertebra = from === 'feet' ? ring(24).map(([c, s]) => [24 * c, 17 * s, 0]) : [[-14, 17], [14, 17], [14, -17], [-14, -17]].map(([z, y]) => [0, y, z]);
  parts.body.setAttribute('d', closed(vertebra.map(see)));
  parts.floor.setAttribute('d', line([[-900, -900, 0], [900, -900, 0]].map(from === 'feet' ? see : ([x, y]) => see([0, y, x]))));
  if (from === 'feet') {
    // From the ends of the floor inwards, however long the words are.
    put(words.start, [...see([900, -840, 0]), 'start'], texts.gantry.left);
    put(words.end, [...see([-900, -840, 0]), 'end'], texts.gantry.right);
  } else {
    put(words.start, see([0, -40, -1000]), texts.gantry.feetEnd);
    put(words.end, see([0, -40, 930]), texts.gantry.head);
  }
}

/**
 * C-arm, beam and angle: drawn again for every orientation.
 * @param {Drawn} parts
 * @param {Drawn} words
 * @param {See} see
 * @param {Onlooker} from
 * @param {Place} state
 */
function moving(parts, words, see, from, state) {
  const { receptor: d, slide: t } = directions(state.oblique_deg, state.tilt_deg);
  const n = cross(d, t);
  const along = (/** @type {number} */ k) => d.map((x) => x * k);
  const disc = (/** @type {number} */ k, /** @type {number} */ radius) => ring(28).map(([c, s]) => plus(plus(along(k), radius * c, t), radius * s, n));
  const arc = [];
  for (let a = -6; a <= 186; a += 4) arc.push(plus(along(C_RADIUS_MM * Math.cos(rad(a))), C_RADIUS_MM * Math.sin(rad(a)), t));
  const arm = line(arc.map(see));
  parts.arm.setAttribute('d', arm);
  parts['arm-edge'].setAttribute('d', arm);
  parts.source.setAttribute('d', closed(hull([...disc(-SOURCE_MM + 40, 70), ...disc(-C_RADIUS_MM, 95)].map(see))));
  parts.receptor.setAttribute('d', closed(hull([...disc(RECEPTOR_MM, RECEPTOR_RADIUS_MM), ...disc(RECEPTOR_MM + 200, RECEPTOR_RADIUS_MM), ...disc(C_RADIUS_MM - 20, 70)].map(see))));
  parts.face.setAttribute('d', closed(disc(RECEPTOR_MM, RECEPTOR_RADIUS_MM).map(see)));
  parts.beam.setAttribute('d', closed(hull([along(-SOURCE_MM), ...disc(RECEPTOR_MM, RECEPTOR_RADIUS_MM - 15)].map(see))));
  parts.ray.setAttribute('d', line([along(-SOURCE_MM), along(RECEPTOR_MM)].map(see)));

  const angle = from === 'feet' ? state.oblique_deg : state.tilt_deg;
  // The angle is drawn in its own plane: oblique across the patient, tilt along the patient.
  const swing = [];
  const steps = Math.max(1, Math.ceil(Math.abs(angle) / 4));
  for (let i = 0; i <= steps; i++) {
    const a = rad((angle * i) / steps);
    swing.push(from === 'feet' ? [260 * Math.sin(a), 260 * Math.cos(a), 0] : [0, 260 * Math.cos(a), 260 * Math.sin(a)]);
  }
  parts.swing.setAttribute('d', Math.abs(angle) < 0.05 ? '' : closed([[0, 0, 0], ...swing].map(see)));
  parts.upright.setAttribute('d', line([[0, 0, 0], [0, 330, 0]].map(see)));
  put(words.receptor, besides(see(along(RECEPTOR_MM + 110)), 230), texts.gantry.receptor);
  put(words.source, besides(see(along(-SOURCE_MM)), 210), texts.gantry.source);
}

/**
 * Where a word goes beside a part, at a distance and away from it: on the inner side when it stands far out, above it when it stands as low as the patient.
 * @param {Flat} place
 * @param {number} distance
 * @returns {[number, number, string?]}
 */
function besides([x, y], distance) {
  if (Math.abs(y) < 300) return [Math.max(-700, Math.min(700, x)), y - 260];
  return x < 150 ? [x + distance, y, 'start'] : [x - distance, y, 'end'];
}

/**
 * @param {SVGElement} element
 * @param {[number, number, string?]} place
 * @param {string} text
 */
function put(element, [x, y, anchor = 'middle'], text) {
  element.setAttribute('x', x.toFixed(1));
  element.setAttribute('y', y.toFixed(1));
  element.setAttribute('text-anchor', anchor);
  say(element, text);
}

const ring = (/** @type {number} */ n) => Array.from({ length: n }, (_, i) => /** @type {Flat} */ ([Math.cos((2 * Math.PI * i) / n), Math.sin((2 * Math.PI * i) / n)]));
const pair = (/** @type {Point} */ [x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`;
export const line = (/** @type {readonly Point[]} */ points) => `M${points.map(pair).join('L')}`;
export const closed = (/** @type {readonly Point[]} */ points) => `${line(points)}Z`;

/**
 * A closed curve through the middles of a polygon's edges.
 * @param {readonly Point[]} points
 */
function smooth(points) {
  const middle = (/** @type {Point} */ a, /** @type {Point} */ b) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const last = points.length - 1;
  let d = `M${pair(middle(points[last], points[0]))}`;
  points.forEach((p, i) => (d += `Q${pair(p)} ${pair(middle(p, points[(i + 1) % points.length]))}`));
  return `${d}Z`;
}

/**
 * Convex hull in order (Andrew's monotone chain).
 * @param {readonly Flat[]} points
 */
export function hull(points) {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const turn = (/** @type {Flat} */ o, /** @type {Flat} */ a, /** @type {Flat} */ b) => (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);
  const chain = (/** @type {Flat[]} */ list) => {
    /** @type {Flat[]} */
    const kept = [];
    for (const p of list) {
      while (kept.length > 1 && turn(kept[kept.length - 2], kept[kept.length - 1], p) <= 0) kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}
