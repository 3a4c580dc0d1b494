// A plain chart in SVG: axes with round numbers, lines told apart by dash and mark as well as by shade, bands and dots. Beside each
// the same numbers as a table.

import { make, within } from '../base/dom.js';
import { shape } from '../base/svg.js';

/**
 * A place of a chart in the units of its axes, and a range of one.
 * @typedef {readonly number[]} Pair
 *
 * `key` is its name in the figure; with `dots` its points are not joined.
 * @typedef {{ key: string, points: Pair[], dots?: boolean }} Series
 *
 * `x` and `y` are ranges; `bands` lie along y; `names` are words for whole numbers of x; a whisker runs from low to high at a place of x.
 * @typedef {{ x: Pair, y: Pair, series: Series[], bands?: { low: number, high: number }[], log?: boolean, names?: string[], whiskers?: [low: number, high: number, at: number][] }} Plot
 */

const WIDE = 640;
const HIGH = 340;
const EDGE = { left: 62, right: 16, top: 14, bottom: 48 };

/**
 * About five round numbers over a range.
 * @param {Pair} range
 * @param {number} about
 */
export function ticks([low, high], about = 5) {
  const raw = (high - low) / about;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((k) => k * power).find((s) => s >= raw - 1e-12) ?? 10 * power;
  const first = Math.ceil(low / step - 1e-9);
  return Array.from({ length: Math.floor(high / step + 1e-9) - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/**
 * The powers of ten, and twice and five times them, inside a range.
 * @param {Pair} range
 */
function logTicks([low, high]) {
  /** @type {number[]} */
  const found = [];
  for (let p = Math.floor(Math.log10(low)); p <= Math.ceil(Math.log10(high)); p++) for (const k of [1, 2, 5]) found.push(k * 10 ** p);
  return found.filter((v) => v >= low * 0.999 && v <= high * 1.001).map((v) => Number(v.toPrecision(3)));
}

const minus = (/** @type {number} */ x) => String(x).replace('-', '−');

/**
 * A chart into `figure`: the axes' names, and the series' names by their keys, stand in its HTML.
 * @param {HTMLElement} figure
 * @param {Plot} chart
 */
export function plot(figure, { x, y, series, bands = [], log = false, names, whiskers = [] }) {
  const svg = within(figure, 'svg.chart', SVGElement);
  const axes = { x: svg.dataset.x ?? '', y: svg.dataset.y ?? '' };
  svg.replaceChildren();
  svg.setAttribute('viewBox', `0 0 ${WIDE} ${HIGH}`);
  const [w, h] = [WIDE - EDGE.left - EDGE.right, HIGH - EDGE.top - EDGE.bottom];
  const over = (/** @type {number} */ v) => EDGE.left + (w * (v - x[0])) / (x[1] - x[0]);
  const share = (/** @type {number} */ v) => (log ? Math.log(v / y[0]) / Math.log(y[1] / y[0]) : (v - y[0]) / (y[1] - y[0]));
  const up = (/** @type {number} */ v) => EDGE.top + h * (1 - share(v));
  for (const [i, band] of bands.entries()) svg.append(shape('rect', { x: EDGE.left, width: w, y: up(band.high), height: Math.max(0, up(band.low) - up(band.high)), class: `plot-band plot-band-${i}` }));
  for (const v of log ? logTicks(y) : ticks(y)) {
    svg.append(shape('line', { x1: EDGE.left, x2: EDGE.left + w, y1: up(v), y2: up(v), class: 'plot-grid' }));
    svg.append(shape('text', { x: EDGE.left - 8, y: up(v) + 4, class: 'plot-number plot-end' }, minus(v)));
  }
  for (const v of names ? names.map((_, i) => i) : ticks(x, 7)) {
    svg.append(shape('line', { x1: over(v), x2: over(v), y1: EDGE.top + h, y2: EDGE.top + h + 5, class: 'plot-axis' }));
    svg.append(shape('text', { x: over(v), y: EDGE.top + h + 20, class: 'plot-number plot-middle' }, names ? names[v] : minus(v)));
  }
  svg.append(shape('path', { d: `M${EDGE.left} ${EDGE.top}V${EDGE.top + h}H${EDGE.left + w}`, class: 'plot-axis' }));
  svg.append(shape('text', { x: EDGE.left + w / 2, y: HIGH - 8, class: 'plot-name plot-middle' }, axes.x));
  svg.append(shape('text', { x: 15, y: EDGE.top + h / 2, class: 'plot-name plot-middle', transform: `rotate(-90 15 ${EDGE.top + h / 2})` }, axes.y));
  const items = [.../** @type {NodeListOf<HTMLElement>} */ (figure.querySelectorAll('[data-series]'))];
  const order = items.map((item) => item.dataset.series);
  for (const [low, high, at] of whiskers) svg.append(shape('path', { d: `M${over(at) - 7} ${up(low)}h14M${over(at)} ${up(low)}V${up(high)}M${over(at) - 7} ${up(high)}h14`, class: 'plot-whisker' }));
  for (const one of series) {
    const look = Math.max(0, order.indexOf(one.key)) % 8;
    const place = (/** @type {Pair} */ [a, b]) => [over(a), up(b)];
    if (!one.dots) svg.append(shape('path', { d: one.points.map((p, i) => `${i ? 'L' : 'M'}${place(p).map((v) => v.toFixed(1)).join(' ')}`).join(''), class: `plot-line look-${look}` }));
    const every = one.dots ? 1 : Math.max(1, Math.round(one.points.length / 8));
    one.points.forEach((p, i) => i % every === 0 && svg.append(mark(place(p), look)));
  }
  for (const item of items) if (!item.querySelector('svg')) item.prepend(sample(order.indexOf(item.dataset.series) % 8));
  asTable(figure, axes, series, names);
  figure.dataset.drawn = 'yes';
}

const SHAPES = ['M-4 0a4 4 0 1 0 8 0a4 4 0 1 0-8 0', 'M-4-4h8v8h-8z', 'M0-5L5 4H-5z', 'M0-5.5L5.5 0 0 5.5-5.5 0z', 'M-4-4L4 4M-4 4L4-4', 'M-5 0H5M0-5V5', 'M0 5L5-4H-5z', 'M-2-5h4v10h-4z'];
const mark = (/** @type {Pair} */ [x, y], /** @type {number} */ look) => shape('path', { d: SHAPES[look], transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})`, class: `plot-mark look-${look}` });

/** @param {number} look */
function sample(look) {
  const svg = shape('svg', { viewBox: '0 0 36 14', class: 'plot-sample', 'aria-hidden': 'true' });
  svg.append(shape('path', { d: 'M1 7H35', class: `plot-line look-${look}` }), mark([18, 7], look));
  return svg;
}

/**
 * The chart's numbers, for reading: a row an x, a column a series.
 * @param {HTMLElement} figure
 * @param {{ x: string, y: string }} axes
 * @param {Series[]} series
 * @param {string[] | undefined} names
 */
function asTable(figure, axes, series, names) {
  const table = within(figure, 'details table', HTMLTableElement);
  const word = (/** @type {string} */ key) => figure.querySelector(`[data-series="${key}"]`)?.textContent?.trim() ?? axes.y;
  const xs = [...new Set(series.flatMap((s) => s.points.map((p) => p[0])))].sort((a, b) => a - b);
  const cell = (/** @type {string} */ text, /** @type {'td' | 'th'} */ name, /** @type {string | null} */ scope = null) => make(name, { scope }, text);
  const head = document.createElement('tr');
  head.append(cell(axes.x, 'th', 'col'), ...series.map((s) => cell(word(s.key), 'th', 'col')));
  const rows = xs.map((x) => {
    const row = document.createElement('tr');
    const found = series.map((s) => s.points.find((p) => p[0] === x)?.[1]);
    row.append(cell(names ? names[x] : minus(x), 'th', 'row'), ...found.map((v) => cell(v === undefined ? '–' : minus(Number(v.toPrecision(4))), 'td')));
    return row;
  });
  table.querySelectorAll('thead, tbody').forEach((old) => old.remove());
  table.createTHead().append(head);
  table.append(document.createElement('tbody'));
  table.tBodies[0].append(...rows);
}
