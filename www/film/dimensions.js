// What is off, as a line on the film: from the thing to where it should stand, its size, and an arrow for the way that the receptor (and the hand on
// the film) has to go. All of it from the engine's report on the picture that is shown. Loaded after the first picture.

import { isSideways } from '../state/positioning.js';

/**
 * @import { Advice, Criterion, Level, Measures, NeedleReport, Report, Side } from '../pkg/values.js'
 *
 * @typedef {readonly number[]} Point right and up on the detector, mm, or on the canvas, pixels
 *
 * What a line needs: `at(name, level, side)` finds a landmark.
 * @typedef {{ at: (name: string, level: Level, side?: Side) => Point | undefined, level: Level, side: Side, measures: Measures }} Place
 *
 * The sentences of the lines: each with its length in mm, and the move that is advised.
 * @typedef {'process' | 'rims' | 'facetLateral' | 'facetMedial' | 'openings' | 'sides'} LineName
 * @typedef {Record<LineName, (mm: number) => string> & { move: (advice: Advice) => string, clock: (hour: number) => string }} Words
 *
 * @typedef {{ from: Point, to: Point, way: Point | null, label: string, tip?: Point | null }} Dimension
 */

const INK = '#ffc163';
const SHADE = 'rgba(6,9,12,.85)';
/** Half a tick, an arrow's length, the label's letters, CSS px. */
const [TICK_PX, ARROW_PX, LABEL_PX] = [14, 44, 13];
/** The lower right corner that a button covers: how wide, and how high with half a label on it (`style/through.css`). */
const CORNER_PX = [56, 112];
/** So much room stays free about the needle's tip, CSS px. A choice, no source. */
const FREE_PX = 22;

const middle = (/** @type {Point} */ a, /** @type {Point} */ b) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
const unit = (/** @type {Point} */ a, /** @type {Point} */ b) => {
  const [x, y] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(x, y) || 1;
  return [x / length, y / length];
};
/** The foot of a point on the line through `from` across `along`: as far along as `from` is. */
const foot = (/** @type {Point} */ point, /** @type {Point} */ from, /** @type {Point} */ along) => {
  const by = (point[0] - from[0]) * along[0] + (point[1] - from[1]) * along[1];
  return [point[0] - by * along[0], point[1] - by * along[1]];
};
const apart = (/** @type {Point} */ a, /** @type {Point} */ b) => Math.hypot(a[0] - b[0], a[1] - b[1]);

/**
 * Where the dimension of each criterion runs, on the detector in mm: `[from, to, name]`, or null where something of it is missing.
 * @type {Partial<Record<string, (place: Place) => [Point | undefined, Point | undefined, LineName] | null>>}
 */
const LINES = {
  spinous_centred({ at, level }) {
    const [left, right] = [at('pedicle_centre', level, 'left'), at('pedicle_centre', level, 'right')];
    const process = at('spinous_tip', level);
    if (!left || !right || !process) return null;
    return [process, foot(process, middle(left, right), unit(left, right)), 'process'];
  },
  squared: ({ at, level }) => [at('upper_plate_front', level), at('upper_plate_back', level), 'rims'],
  facet_under_pedicle({ at, level, side, measures }) {
    if (!measures.facet_ends_mm) return null;
    const process = middle(...measures.facet_ends_mm);
    const pedicle = at('pedicle_centre', level, side);
    const [left, right] = [at('pedicle_centre', level, 'left'), at('pedicle_centre', level, 'right')];
    if (!pedicle || !left || !right) return null;
    const along = unit(left, right);
    const to = foot(process, pedicle, along);
    return [process, to, (process[0] - to[0]) * (side === 'left' ? -1 : 1) > 0 ? 'facetLateral' : 'facetMedial'];
  },
  foramen_aligned: ({ at, level, side }) => [at('posterior_foramen', level, side), at('anterior_foramen', level, side), 'openings'],
  lateral: ({ at, level }) => [at('pedicle_centre', level, 'left'), at('pedicle_centre', level, 'right'), 'sides'],
};
/**
 * The way on the screen that the receptor goes.
 * @type {Record<string, Point>}
 */
const WAYS = { left: [-1, 0], right: [1, 0], cephalad: [0, -1], caudad: [0, 1] };

/**
 * What to draw of `report` for a criterion of it, or null where there is none or nothing to draw. `words`: `film` of the texts. `tip`: where the
 * needle's tip is, mm on the detector, which nothing covers.
 * @param {Report} report
 * @param {Criterion | null} criterion
 * @param {Words} words
 * @param {Point | null} tip
 * @returns {Dimension | null}
 */
export function dimensionOf(report, criterion, words, tip) {
  const line = criterion && LINES[criterion.id];
  if (!line) return null;
  /** @type {Place['at']} */
  const at = (name, level, side) => report.landmarks.find((l) => l.name === name && l.level === level && (l.side ?? undefined) === side)?.detector_mm;
  const found = line({ at, level: report.level, side: report.side, measures: report.measures });
  if (!found || !found[0] || !found[1]) return null;
  const [from, to, name] = found;
  const advice = criterion.advice;
  return { from, to, way: advice ? WAYS[advice.direction] : null, label: [words[name](apart(from, to) / report.measures.magnification), advice && words.move(advice)].filter(Boolean).join(' · '), tip };
}

/**
 * From the vertebra's body to the middle of the film, across first and then along as this view shows it (the order of the hints), or null where it
 * is in the middle, off it by `middle_mm` at most. `to` says which way the table goes and how far.
 * @param {Report} report
 * @param {import('../state/positioning.js').Place | null} place
 * @param {number} middle_mm
 * @param {(way: string, mm: number) => string} to
 * @returns {Dimension | null}
 */
export function middleOf(report, place, middle_mm, to) {
  const body = report.landmarks.find((l) => l.name === 'body_centre' && l.level === report.level)?.detector_mm;
  if (!body || !place) return null;
  const aside = isSideways(place);
  const across = aside ? place.table_y_mm : place.table_x_mm;
  const along = place.table_z_mm;
  if (Math.max(Math.abs(across), Math.abs(along)) <= middle_mm) return null;
  if (Math.abs(across) <= middle_mm) {
    return { from: body, to: [body[0], 0], way: along > 0 ? WAYS.caudad : WAYS.cephalad, label: to(along > 0 ? 'feet' : 'head', Math.abs(along)) };
  }
  const name = aside ? (across > 0 ? 'down' : 'up') : across > 0 ? 'right' : 'left';
  return { from: body, to: [0, body[1]], way: body[0] > 0 ? WAYS.left : WAYS.right, label: to(name, Math.abs(across)) };
}

/**
 * The tip against the pedicle's clock: a line from the pedicle's centre that ends before the tip.
 * @param {Report} report
 * @param {NeedleReport} needle
 * @param {Pick<Words, 'clock'>} words
 * @returns {Dimension | null}
 */
export function clockOf(report, needle, words) {
  const centre = report.landmarks.find((l) => l.name === 'pedicle_centre' && l.level === report.level && l.side === report.side)?.detector_mm;
  if (!centre) return null;
  return { from: needle.tip_mm, to: centre, way: null, label: words.clock(needle.clock.hour), tip: needle.tip_mm };
}

/**
 * Draws it. `at(mm)` and `scale` as for the marks.
 * @param {CanvasRenderingContext2D} pen
 * @param {(mm: Point) => Point} at
 * @param {number} scale
 * @param {Dimension} dimension
 */
export function drawDimension(pen, at, scale, { from, to, way, label, tip }) {
  const px = (/** @type {number} */ n) => n * scale;
  const free = tip && at(tip);
  const clear = (/** @type {Point} */ p) => !free || Math.hypot(p[0] - free[0], p[1] - free[1]) > px(FREE_PX);
  let [a, b] = [at(from), at(to)];
  if (!clear(a)) {
    const [x, y] = unit(a, b);
    a = [a[0] + x * px(FREE_PX), a[1] + y * px(FREE_PX)];
  }
  const along = unit(a, b);
  const across = [-along[1] * px(TICK_PX), along[0] * px(TICK_PX)];
  const size = pen.canvas.width;
  const inside = (/** @type {number} */ x, /** @type {number} */ margin) => Math.min(size - margin, Math.max(margin, x));
  pen.save();
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  const strokes = (/** @type {() => void} */ draw, /** @type {number} */ width) => {
    for (const { colour, more } of [{ colour: SHADE, more: 3 }, { colour: INK, more: 0 }]) {
      pen.strokeStyle = colour;
      pen.lineWidth = px(width + more);
      pen.beginPath();
      draw();
      pen.stroke();
    }
  };
  const line = (/** @type {Point} */ p, /** @type {Point} */ q) => {
    pen.moveTo(p[0], p[1]);
    pen.lineTo(q[0], q[1]);
  };
  strokes(() => {
    line(a, b);
    for (const p of tip ? [b] : [a, b]) line([p[0] - across[0], p[1] - across[1]], [p[0] + across[0], p[1] + across[1]]);
  }, 1.8);
  // The arrow starts beside the ticks, where it hides neither them nor a tip.
  let below = Math.max(a[1], b[1]) + px(TICK_PX + 6);
  if (way) {
    const start = way[0] !== 0 ? [inside((a[0] + b[0]) / 2 - way[0] * px(ARROW_PX / 2), px(60)), inside(below + px(10), px(40))] : [inside(Math.max(a[0], b[0]) + px(34), px(30)), inside((a[1] + b[1]) / 2 - way[1] * px(ARROW_PX / 2), px(60))];
    const end = [start[0] + way[0] * px(ARROW_PX), start[1] + way[1] * px(ARROW_PX)];
    const head = (/** @type {number} */ side) => [end[0] - way[0] * px(11) + way[1] * side * px(8), end[1] - way[1] * px(11) + way[0] * side * px(8)];
    strokes(() => {
      line(start, end);
      line(head(1), end);
      line(head(-1), end);
    }, 3.2);
    below = Math.max(below, start[1], end[1]) + px(14);
  }
  pen.font = `600 ${px(LABEL_PX)}px system-ui, sans-serif`;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  const clearOfTip = (/** @type {number} */ y) => (free && Math.abs(y - free[1]) < px(FREE_PX + 10) ? free[1] + px(FREE_PX + 14) : y);
  const y = inside(clearOfTip(below + px(8)), px(62));
  // So low it ends beside the corner where the button for the way through the beam stands.
  const right = size - (y > size - px(CORNER_PX[1]) ? px(CORNER_PX[0]) : px(4));
  const half = Math.min((right - px(4)) / 2, pen.measureText(label).width / 2 + px(7));
  const x = Math.min(right - half, Math.max(px(4) + half, (a[0] + b[0]) / 2));
  pen.fillStyle = SHADE;
  pen.beginPath();
  pen.roundRect(x - half, y - px(11), 2 * half, px(22), px(5));
  pen.fill();
  pen.fillStyle = INK;
  pen.fillText(label, x, y, 2 * half - px(10));
  pen.restore();
}
