// The rays that are drawn through the bones: from the source through the target's end plate (its front and its back rim), its pedicle and the
// needle's tip, each with its name. Straight from the source a ray is a point: two that fall together there are in line with the beam.

import { seenAt } from './surface.js';

/**
 * @import { Report } from '../pkg/values.js'
 * @import { Beam } from './beam-eye.js'
 * @import { Eye } from './surface.js'
 *
 * @typedef {'front' | 'back' | 'pedicle' | 'tip'} RayName
 * A ray by the point that it goes through, mm from the target's centre in the patient's frame.
 * @typedef {{ name: RayName, point: readonly number[] }} Ray
 */

const STEEL = '#dfe6ea';
const SHADE = 'rgba(6,9,12,.85)';
/** Each is told by its sign too: a bar for a rim, a ring for the pedicle, a dot for the tip. */
const INK = { front: '#ffc163', back: '#ffc163', pedicle: '#8fe3ff', tip: '#f4f7f8' };
/** A name stands this far beside its ray, and this far from the next one, CSS px. */
const [BESIDE_PX, APART_PX, LETTERS_PX] = [16, 19, 13];
/** Rays begin so far before the isocentre, towards the source, mm: what lies nearer to the eye would cross the picture's edge anyhow. */
const BEFORE_MM = 330;

/**
 * The rays of a view that the engine reports on. `tip`: the needle's, or null.
 * @param {Report} report
 * @param {readonly number[] | null} tip
 * @returns {Ray[]}
 */
export function raysThrough(report, tip) {
  /** @type {(name: string, side?: string | null) => readonly number[] | undefined} */
  const at = (name, side = null) => report.landmarks.find((l) => l.name === name && l.level === report.level && (l.side ?? null) === side)?.patient_mm;
  /** @type {[RayName, readonly number[] | null | undefined][]} */
  const all = [['front', at('upper_plate_front')], ['back', at('upper_plate_back')], ['pedicle', at('pedicle_centre', report.side)], ['tip', tip]];
  return all.flatMap(([name, point]) => (point ? [{ name, point }] : []));
}

/**
 * How far apart two rays pass each other at the patient, mm: between where they land, less the enlargement.
 * @param {Report} report
 * @param {Beam} beam
 * @param {Ray} a
 * @param {Ray} b
 * @param {readonly number[]} centre the target's, in the beam's frame
 */
export function apart_mm(report, beam, a, b, centre) {
  const [p, q] = [a, b].map(({ point }) => {
    const r = point.map((x, k) => x + centre[k] - beam.source[k]);
    const far = dot(r, beam.d);
    return [dot(r, beam.right), dot(r, beam.up)].map((x) => (x * beam.sid_mm) / far);
  });
  return Math.hypot(p[0] - q[0], p[1] - q[1]) / report.measures.magnification;
}

const dot = (/** @type {readonly number[]} */ a, /** @type {readonly number[]} */ b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/**
 * Draws them on a square canvas. `centre`: the target's, in the beam's frame; `names`: what each is called; `scale`: canvas pixels a CSS pixel;
 * `needle`: hub and tip as the rays' points.
 * @param {CanvasRenderingContext2D} pen
 * @param {readonly Ray[]} rays
 * @param {{ beam: Beam, eye: Eye, centre: readonly number[], names: Record<RayName, string>, scale: number, needle: readonly (readonly number[])[] | null }} how
 */
export function drawRays(pen, rays, { beam, eye, centre, names, scale, needle }) {
  const size = pen.canvas.width;
  const px = (/** @type {number} */ n) => n * scale;
  const at = (/** @type {readonly number[]} */ point) => {
    const { x, y } = seenAt(eye, point);
    return [x * size, y * size];
  };
  pen.save();
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  if (needle) line(pen, needle.map((point) => at(point.map((x, k) => x + centre[k]))), STEEL, px(2.6), px(2.4));
  const drawn = rays.map(({ name, point }) => {
    const through = point.map((x, k) => x + centre[k]);
    const r = through.map((x, k) => x - beam.source[k]);
    const far = dot(r, beam.d);
    const along = (/** @type {number} */ depth) => at(beam.source.map((x, k) => x + (r[k] * depth) / far));
    const from = along(beam.sod_mm - BEFORE_MM);
    const to = along(beam.sid_mm);
    line(pen, [from, to], INK[name], px(1.6), px(2.6));
    const mark = at(through);
    sign(pen, name, mark, px(1));
    return { name, mark };
  });
  label(pen, drawn, names, px);
  pen.restore();
}

/**
 * @param {CanvasRenderingContext2D} pen
 * @param {number[][]} points
 * @param {string} colour
 * @param {number} width
 * @param {number} halo
 */
function line(pen, points, colour, width, halo) {
  for (const [ink, wide] of /** @type {[string, number][]} */ ([[SHADE, width + halo], [colour, width]])) {
    pen.strokeStyle = ink;
    pen.lineWidth = wide;
    pen.beginPath();
    points.forEach(([x, y], i) => (i ? pen.lineTo(x, y) : pen.moveTo(x, y)));
    pen.stroke();
  }
}

/**
 * @param {CanvasRenderingContext2D} pen
 * @param {RayName} name
 * @param {number[]} place
 * @param {number} px
 */
function sign(pen, name, [x, y], px) {
  const width = 2.2 * px;
  if (name === 'front' || name === 'back') return line(pen, [[x - 9 * px, y], [x + 9 * px, y]], INK[name], width, 2.6 * px);
  for (const [ink, wide] of /** @type {[string, number][]} */ ([[SHADE, width + 2.6 * px], [INK[name], width]])) {
    pen.beginPath();
    pen.arc(x, y, (name === 'tip' ? 3.4 : 8) * px, 0, 7);
    pen.strokeStyle = ink;
    pen.lineWidth = wide;
    pen.stroke();
    if (name !== 'tip') continue;
    pen.fillStyle = ink;
    pen.fill();
  }
}

/**
 * Names to the right of their rays, from above down, none over another.
 * @param {CanvasRenderingContext2D} pen
 * @param {{ name: RayName, mark: number[] }[]} drawn
 * @param {Record<RayName, string>} names
 * @param {(css: number) => number} px
 */
function label(pen, drawn, names, px) {
  const size = pen.canvas.width;
  pen.font = `600 ${px(LETTERS_PX)}px system-ui, sans-serif`;
  pen.textBaseline = 'middle';
  let last = -Infinity;
  for (const { name, mark } of [...drawn].sort((a, b) => a.mark[1] - b.mark[1])) {
    const text = names[name];
    const wide = pen.measureText(text).width + px(10);
    const y = Math.min(size - px(14), Math.max(px(14), last + px(APART_PX), mark[1]));
    last = y;
    const right = mark[0] + px(BESIDE_PX) + wide < size;
    const x = right ? mark[0] + px(BESIDE_PX) : Math.max(px(2), mark[0] - px(BESIDE_PX) - wide);
    line(pen, [mark, [right ? x : x + wide, y]], INK[name], px(0.8), px(1.2));
    pen.fillStyle = SHADE;
    pen.beginPath();
    pen.roundRect(x, y - px(9), wide, px(18), px(4));
    pen.fill();
    pen.fillStyle = INK[name];
    pen.fillText(text, x + px(5), y);
  }
}
