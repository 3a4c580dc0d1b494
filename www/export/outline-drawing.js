// The outlines of the picture as an SVG drawing, in mm on the detector: from the engine's lines, for slides.

import { spread } from '../film/labels.js';
import { texts } from '../words/texts.js';
import { picture as t } from '../words/tools.js';

/**
 * @import { Shown } from '../film/picture.js'
 *
 * @typedef {'context' | 'target' | 'posterior' | 'below'} OutlineKind
 *
 * A line of the engine's outlines, mm right and up of the detector's middle.
 * @typedef {{ kind: OutlineKind, closed: boolean, points_mm: number[][] }} OutlineLine
 */

// On white, told apart by width and dash as well as by colour. Widths in mm.
const STYLE = 'path{fill:none;stroke-linejoin:round;stroke-linecap:round}.context path{stroke:#7d868e;stroke-width:.3}.target path{stroke:#27506b;stroke-width:.5}.posterior path{stroke:#a34700;stroke-width:.8}.below path{stroke:#0b6280;stroke-width:1;stroke-dasharray:3 1.5}.name path{stroke:#111;stroke-width:.25}text{font:3.6px system-ui,sans-serif;fill:#111}.name text{stroke:#fff;stroke-width:.9;paint-order:stroke}';
/**
 * The kinds of line, in the order in which they are drawn.
 * @type {OutlineKind[]}
 */
export const KINDS = ['context', 'target', 'posterior', 'below'];
const FOOT_MM = 13;
const SCALE_MM = 20;

/**
 * `lines` as from `outlineLines`, `shown` as from `picture.js`, `about` the sentence on case and angles. With `shown.labels` the dog's parts
 * are named. Points are written to a hundredth of a millimetre.
 * @param {OutlineLine[]} lines
 * @param {Shown} shown
 * @param {string} about
 */
export function outlineDrawing(lines, shown, about) {
  const half = shown.field_mm / 2;
  const [w, h] = shown.open.map((share) => share * half);
  const groups = KINDS.map((kind) => `<g class="${kind}">\n<path d="${lines.filter((l) => l.kind === kind).map(data).join('')}"/>\n</g>\n`).join('');
  const end = half - 4;
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${mm(2 * half)}mm" height="${mm(2 * half + FOOT_MM)}mm" viewBox="${mm(-half)} ${mm(-half)} ${mm(2 * half)} ${mm(2 * half + FOOT_MM)}" role="img">
<title>${safe(about)}</title>
<desc>${safe(t.desc)}</desc>
<style>${STYLE}</style>
<clipPath id="field"><rect x="${mm(-w)}" y="${mm(-h)}" width="${mm(2 * w)}" height="${mm(2 * h)}"/></clipPath>
<rect x="${mm(-half)}" y="${mm(-half)}" width="${mm(2 * half)}" height="${mm(2 * half + FOOT_MM)}" fill="#fff"/>
<g id="outlines" clip-path="url(#field)">
${groups}</g>
${shown.labels ? names(shown, half) : ''}<g id="credit"><text x="${mm(4 - half)}" y="${mm(half + 5)}">${safe(about)}</text><text x="${mm(4 - half)}" y="${mm(half + 10.5)}">${safe(t.credit)}</text>
<path d="M${mm(end - SCALE_MM)} ${mm(half + 6.5)}H${mm(end)}M${mm(end - SCALE_MM)} ${mm(half + 5.5)}v2M${mm(end)} ${mm(half + 5.5)}v2" stroke="#111" stroke-width=".4"/><text x="${mm(end)}" y="${mm(half + 11.5)}" text-anchor="end">${safe(t.scale(SCALE_MM))}</text></g>
</svg>
`;
}

/**
 * A line as path data; SVG's y runs down.
 * @param {OutlineLine} line
 */
const data = (line) => `M${line.points_mm.map(([u, v]) => `${mm(u)} ${mm(-v)}`).join('L')}${line.closed ? 'Z' : ''}`;

/**
 * The dog's parts in the two margins, each with a line to its place.
 * @param {Shown} shown
 * @param {number} half
 */
function names(shown, half) {
  const seen = (shown.dog ?? []).filter((d) => d.anchor_mm.every((x, i) => Math.abs(x) < half * shown.open[i])).sort((a, b) => a.anchor_mm[0] - b.anchor_mm[0]);
  const middle = Math.ceil(seen.length / 2);
  /** @type {[typeof seen, number][]} */
  const columns = [[seen.slice(0, middle), -1], [seen.slice(middle), 1]];
  return columns.map(([column, side]) => {
    column.sort((a, b) => b.anchor_mm[1] - a.anchor_mm[1]);
    const heights = spread(column.map((d) => -d.anchor_mm[1]), 7, 8 - half, half - 8);
    return column.map((d, i) => {
      const text = texts.picture.dogName(d, shown);
      // Set at 3.6 mm, a letter is about half as wide.
      const from = side * (half - 3 - text.length * 1.9);
      return `<g class="name"><path d="M${mm(from)} ${mm(heights[i])}L${mm(d.anchor_mm[0])} ${mm(-d.anchor_mm[1])}"/><circle cx="${mm(d.anchor_mm[0])}" cy="${mm(-d.anchor_mm[1])}" r=".8"/><text x="${mm(side * (half - 2))}" y="${mm(heights[i] + 1.2)}" text-anchor="${side < 0 ? 'start' : 'end'}">${safe(text)}</text></g>\n`;
    }).join('');
  }).join('');
}

/** @param {number} x */
const mm = (x) => String(Math.round(x * 100) / 100);
/** @param {string} text */
const safe = (text) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
