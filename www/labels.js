// Names on the picture: the letters at its edges and the parts of the dog, drawn by the page so that they can be translated.

import { texts } from './texts.js';

const DETECTOR_MM = 512 * 0.4;
const INK = '#f4f7f8';
const SHADE = 'rgba(8,12,15,.78)';

/**
 * Which way the patient lies in the picture, as the edge letters of a film: two letters where the view is slanted.
 * Screen right is (-cos oblique, sin oblique, 0) in patient axes (x left, y posterior), turned by the image rotation.
 */
export function edgeLetters(oblique_deg) {
  const angle = (oblique_deg * Math.PI) / 180;
  const [toRight, toBack] = [Math.cos(angle), Math.sin(angle)];
  const word = (right, back) => {
    const letters = [[Math.abs(right), right > 0 ? 'R' : 'L'], [Math.abs(back), back > 0 ? 'P' : 'A']];
    return letters.filter(([share]) => share > 0.3).sort((a, b) => b[0] - a[0]).map(([, letter]) => texts.picture.end[letter]).join('');
  };
  return { right: word(toRight, toBack), left: word(-toRight, -toBack), top: texts.picture.end.H };
}

/** Draws the edge letters. `scale` is canvas pixels per CSS pixel. */
export function drawEdgeLetters(pen, state, scale) {
  const letters = edgeLetters(state.oblique);
  const size = pen.canvas.width;
  const turn = (state.rotation * Math.PI) / 180;
  const reach = size / 2 - 18 * scale;
  pen.font = `600 ${13 * scale}px system-ui, sans-serif`;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  for (const [letter, x, y] of [[letters.left, -1, 0], [letters.right, 1, 0], [letters.top, 0, -1]]) {
    const [u, v] = [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
    // To the edge of the square, not of the circle in it.
    const out = reach / Math.max(Math.abs(u), Math.abs(v));
    chip(pen, letter, size / 2 + u * out, size / 2 + v * out, scale);
  }
}

function chip(pen, text, x, y, scale) {
  const width = pen.measureText(text).width + 10 * scale;
  const height = 20 * scale;
  pen.fillStyle = SHADE;
  pen.beginPath();
  pen.roundRect(x - width / 2, y - height / 2, width, height, 4 * scale);
  pen.fill();
  pen.fillStyle = INK;
  pen.fillText(text, x, y + scale * 0.5);
}

/** Draws the names of the dog's parts in the margins, each with a line to its part. */
export function drawDogNames(pen, report, state, scale) {
  if (!report?.dog?.length) return;
  const size = pen.canvas.width;
  const at = (mm) => [size * (0.5 + mm[0] / DETECTOR_MM), size * (0.5 - mm[1] / DETECTOR_MM)];
  const seen = report.dog.map((d) => ({ ...d, at: at(d.anchor_mm) })).filter((d) => d.at.every((x) => x > 0 && x < size));
  const middle = seen.reduce((sum, d) => sum + d.at[0], 0) / Math.max(1, seen.length);
  const wide = size / scale >= 420;
  pen.textBaseline = 'middle';
  for (const leftMargin of [true, false]) {
    const column = seen.filter((d) => d.at[0] < middle === leftMargin).sort((a, b) => a.at[1] - b.at[1]);
    const line = (wide ? 40 : 26) * scale;
    spread(column.map((d) => d.at[1]), line, 36 * scale, size - 36 * scale).forEach((y, i) => name(pen, column[i], leftMargin, y, wide, scale));
  }
}

/** Puts labels as near as may be to the heights they belong to, at least `gap` apart and within the picture. */
export function spread(heights, gap, low, high) {
  const placed = [];
  for (const h of heights) placed.push(Math.max(h, low, placed.length ? placed.at(-1) + gap : low));
  for (let i = placed.length - 1, limit = high; i >= 0; i--, limit -= gap) placed[i] = Math.min(placed[i], limit);
  return placed;
}

function name(pen, part, leftMargin, y, wide, scale) {
  const size = pen.canvas.width;
  const edge = leftMargin ? 36 * scale : size - 36 * scale;
  const lines = wide ? [part.dog_name, `${texts.picture.part(part.part)}, ${part.level}`] : [part.dog_name];
  const fonts = [`600 ${14 * scale}px system-ui, sans-serif`, `${12 * scale}px system-ui, sans-serif`];
  pen.textAlign = leftMargin ? 'left' : 'right';
  const width = Math.max(...lines.map((text, i) => ((pen.font = fonts[i]), pen.measureText(text).width)));
  const height = (wide ? 36 : 22) * scale;
  const inner = leftMargin ? edge + width + 6 * scale : edge - width - 6 * scale;

  pen.lineWidth = 3.5 * scale;
  pen.strokeStyle = SHADE;
  pen.setLineDash([]);
  for (const [colour, thick] of [[SHADE, 3.5], [INK, 1.3]]) {
    pen.strokeStyle = pen.fillStyle = colour;
    pen.lineWidth = thick * scale;
    pen.beginPath();
    pen.moveTo(inner, y);
    pen.lineTo(...part.at);
    pen.stroke();
    pen.beginPath();
    pen.arc(...part.at, (thick / 2 + 2.2) * scale, 0, 7);
    pen.fill();
  }
  pen.fillStyle = SHADE;
  pen.beginPath();
  pen.roundRect(leftMargin ? edge - 6 * scale : edge - width - 6 * scale, y - height / 2, width + 12 * scale, height, 5 * scale);
  pen.fill();
  pen.fillStyle = INK;
  lines.forEach((text, i) => {
    pen.font = fonts[i];
    pen.fillText(text, edge, y + (wide ? (i === 0 ? -8 : 9) * scale : 0));
  });
}
