// Names on the picture: the letters at its edges and the parts of the dog, drawn by the page so that they can be translated.
// `words` is the `picture` table of the texts.

/**
 * @import { DogPart } from '../pkg/values.js'
 *
 * The words of the picture, as far as they stand on it.
 * @typedef {{ end: Record<'A' | 'H' | 'L' | 'P' | 'R', string> }} EdgeWords
 * @typedef {{ dogName: (d: DogPart, of: { level: string }) => string, part: (name: string) => string }} DogWords
 *
 * What names are drawn for: the level in the middle, the size of the field and the share of it that is open.
 * @typedef {{ level: string, field_mm: number, open: readonly number[], dog?: DogPart[] }} Named
 *
 * A name's lines and the box that they need, canvas pixels.
 * @typedef {ReturnType<typeof nameBox>} NameBox
 */

// From this width of the picture on (CSS px) the names carry the part as well as the dog's part; below it the list does.
const WIDE_PX = 420;
const INK = '#f4f7f8';
const SHADE = 'rgba(8,12,15,.78)';

/**
 * Which way the patient lies in the picture, as the edge letters of a film: two letters where the view is slanted.
 * Screen right is (-cos oblique, sin oblique, 0) in patient axes (x left, y posterior), turned by the image rotation.
 * @param {number} oblique_deg
 * @param {EdgeWords} words
 */
export function edgeLetters(oblique_deg, words) {
  const angle = (oblique_deg * Math.PI) / 180;
  const [toRight, toBack] = [Math.cos(angle), Math.sin(angle)];
  const word = (/** @type {number} */ right, /** @type {number} */ back) => {
    /** @type {{ share: number, letter: 'A' | 'L' | 'P' | 'R' }[]} */
    const letters = [{ share: Math.abs(right), letter: right > 0 ? 'R' : 'L' }, { share: Math.abs(back), letter: back > 0 ? 'P' : 'A' }];
    return letters.filter(({ share }) => share > 0.3).sort((a, b) => b.share - a.share).map(({ letter }) => words.end[letter]).join('');
  };
  return { right: word(toRight, toBack), left: word(-toRight, -toBack), top: words.end.H };
}

/**
 * Draws the edge letters, out of the way near the corners. `scale` is canvas pixels per CSS pixel.
 * @param {CanvasRenderingContext2D} pen
 * @param {{ oblique_deg: number, rotation_deg: number }} state
 * @param {number} scale
 * @param {EdgeWords} words
 */
export function drawEdgeLetters(pen, state, scale, words) {
  const letters = edgeLetters(state.oblique_deg, words);
  const size = pen.canvas.width;
  const turn = (state.rotation_deg * Math.PI) / 180;
  const reach = size / 2 - 16 * scale;
  pen.font = `600 ${13 * scale}px system-ui, sans-serif`;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  /** @type {[string, number, number, number][]} */
  const edges = [[letters.left, -1, 0, 0.86], [letters.right, 1, 0, -0.86], [letters.top, 0, -1, 0]];
  for (const [letter, x, y, aside] of edges) {
    const [u, v] = [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
    // To the edge of the square, then along it.
    const out = 1 / Math.max(Math.abs(u), Math.abs(v));
    const inside = (/** @type {number} */ k) => Math.max(-1, Math.min(1, k)) * reach;
    chip(pen, letter, size / 2 + inside(u * out - v * aside), size / 2 + inside(v * out + u * aside), scale);
  }
}

/**
 * @param {CanvasRenderingContext2D} pen
 * @param {string} text
 * @param {number} x
 * @param {number} y
 * @param {number} scale
 */
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

/**
 * Draws the names of the dog's parts in the margins, each with a line to its part. `shown`: see picture.js.
 * @param {CanvasRenderingContext2D} pen
 * @param {Named} shown
 * @param {number} scale
 * @param {DogWords} words
 */
export function drawDogNames(pen, shown, scale, words) {
  if (!shown.dog?.length) return;
  const size = pen.canvas.width;
  const at = (/** @type {number[]} */ mm) => [size * (0.5 + mm[0] / shown.field_mm), size * (0.5 - mm[1] / shown.field_mm)];
  const inOpenField = (/** @type {{ at: number[] }} */ d) => d.at.every((x, i) => Math.abs(x / size - 0.5) < shown.open[i] / 2);
  const seen = shown.dog.map((d) => ({ ...d, title: words.dogName(d, shown), at: at(d.anchor_mm) })).filter(inOpenField);
  // The outer half of the parts gets the left margin, the other half the right one, so that neither is crowded.
  const order = [...seen].sort((a, b) => a.at[0] - b.at[0]);
  const left = new Set(order.slice(0, Math.ceil(order.length / 2)));
  const wide = size / scale >= WIDE_PX;
  pen.textBaseline = 'middle';
  for (const leftMargin of [true, false]) {
    const column = seen.filter((d) => left.has(d) === leftMargin).sort((a, b) => a.at[1] - b.at[1]);
    const names = column.map((part) => nameBox(pen, part, leftMargin, wide, scale, words));
    const gap = Math.max(0, ...names.map((n) => n.height)) + 5 * scale;
    const heights = spread(column.map((d) => d.at[1]), gap, gap / 2 + 8 * scale, size - gap / 2 - 34 * scale);
    names.forEach((box, i) => drawLeader(pen, box, heights[i], scale));
    names.forEach((box, i) => drawName(pen, box, heights[i], leftMargin, scale));
  }
}

/**
 * Puts labels as near as may be to the heights they belong to, at least `gap` apart and within the picture.
 * @param {number[]} heights
 * @param {number} gap
 * @param {number} low
 * @param {number} high
 */
export function spread(heights, gap, low, high) {
  /** @type {number[]} */
  const placed = [];
  for (const h of heights) placed.push(Math.max(h, low, placed.length ? placed[placed.length - 1] + gap : low));
  for (let i = placed.length - 1, limit = high; i >= 0; i--, limit -= gap) placed[i] = Math.min(placed[i], limit);
  return placed;
}

/**
 * The lines of a name and the box they need; full names only where the picture is wide enough.
 * @param {CanvasRenderingContext2D} pen
 * @param {DogPart & { title: string, at: number[] }} part
 * @param {boolean} leftMargin
 * @param {boolean} wide
 * @param {number} scale
 * @param {DogWords} words
 */
function nameBox(pen, part, leftMargin, wide, scale, words) {
  const size = pen.canvas.width;
  const lines = [part.title, ...(wide ? twoLines(`${words.part(part.part)}, ${part.level}`) : [])];
  const fonts = lines.map((_, i) => (i === 0 ? `600 ${13 * scale}px system-ui, sans-serif` : `${11.5 * scale}px system-ui, sans-serif`));
  const width = Math.max(...lines.map((text, i) => ((pen.font = fonts[i]), pen.measureText(text).width))) + 12 * scale;
  const height = (lines.length * 15 + 6) * scale;
  return { part, lines, fonts, width, height, x: leftMargin ? 6 * scale : size - 6 * scale - width };
}

/**
 * Breaks a name at the last space before its middle if it is long.
 * @param {string} text
 */
function twoLines(text) {
  if (text.length < 18) return [text];
  const at = text.lastIndexOf(' ', Math.ceil(text.length * 0.7));
  return at < 0 ? [text] : [text.slice(0, at), text.slice(at + 1)];
}

/**
 * @param {CanvasRenderingContext2D} pen
 * @param {NameBox} box
 * @param {number} y
 * @param {number} scale
 */
function drawLeader(pen, box, y, scale) {
  const [x, partY] = box.part.at;
  const from = Math.abs(x - box.x) < Math.abs(x - box.x - box.width) ? box.x : box.x + box.width;
  pen.setLineDash([]);
  for (const { colour, thick } of [{ colour: SHADE, thick: 3.5 }, { colour: INK, thick: 1.3 }]) {
    pen.strokeStyle = pen.fillStyle = colour;
    pen.lineWidth = thick * scale;
    pen.beginPath();
    pen.moveTo(from, y);
    pen.lineTo(x, partY);
    pen.stroke();
    pen.beginPath();
    pen.arc(x, partY, (thick / 2 + 2.2) * scale, 0, 7);
    pen.fill();
  }
}

/**
 * @param {CanvasRenderingContext2D} pen
 * @param {NameBox} box
 * @param {number} y
 * @param {boolean} leftMargin
 * @param {number} scale
 */
function drawName(pen, box, y, leftMargin, scale) {
  pen.fillStyle = SHADE;
  pen.beginPath();
  pen.roundRect(box.x, y - box.height / 2, box.width, box.height, 5 * scale);
  pen.fill();
  pen.fillStyle = INK;
  pen.textAlign = leftMargin ? 'left' : 'right';
  const x = leftMargin ? box.x + 6 * scale : box.x + box.width - 6 * scale;
  box.lines.forEach((text, i) => {
    pen.font = box.fonts[i];
    pen.fillText(text, x, y + (i - (box.lines.length - 1) / 2) * 15 * scale);
  });
}
