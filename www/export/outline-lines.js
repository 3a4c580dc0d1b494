// The engine's outlines as points: it strokes them with a pen that writes down instead of painting.

import { KINDS } from './outline-drawing.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { OutlineStyle, Pen } from '../pkg/values.js'
 * @import { OutlineKind, OutlineLine } from './outline-drawing.js'
 */

/** Canvas pixels a millimetre for the pen: points then keep to a hundredth of a millimetre. */
const PX_PER_MM = 100;

/** Takes the place of a path while the engine draws, and keeps its lines. */
class WrittenPath {
  /** @type {{ points: number[][], closed: boolean }[]} */
  lines = [];
  /**
   * @param {number} x
   * @param {number} y
   */
  moveTo(x, y) {
    this.lines.push({ points: [[x, y]], closed: false });
  }
  /**
   * @param {number} x
   * @param {number} y
   */
  lineTo(x, y) {
    this.lines.at(-1)?.points.push([x, y]);
  }
  closePath() {
    const line = this.lines.at(-1);
    if (line) line.closed = true;
  }
}

/**
 * The outlines of the picture that is shown, live or (`held`) the last exposure: `[{kind, closed, points_mm}]`, mm right and up of the
 * detector's middle. The engine asks for `Path2D` by name; it stands in for it during the one call, which nothing can interrupt.
 * @param {TeachingRoom} room
 * @param {boolean} held
 * @param {number} field_mm
 */
export function outlineLines(room, held, field_mm) {
  const size = field_mm * PX_PER_MM;
  /** @type {(colour: string) => Pen} */
  const style = (colour) => ({ colour, width_px: 1, dash_px: [] });
  /** @type {OutlineLine[]} */
  const lines = [];
  const pen = {
    strokeStyle: '', lineWidth: 0, lineJoin: '', save() {}, restore() {}, setLineDash() {},
    /** @param {WrittenPath} path */
    stroke(path) {
      const kind = KINDS.find((k) => k === this.strokeStyle);
      if (!kind) return;
      for (const { points, closed } of path.lines) lines.push({ kind, closed, points_mm: points.map(([x, y]) => [(x - size / 2) / PX_PER_MM, (size / 2 - y) / PX_PER_MM]) });
    },
  };
  const { Path2D } = globalThis;
  Object.assign(globalThis, { Path2D: WrittenPath });
  try {
    /** @type {OutlineStyle} */
    const looks = { canvas_px: size, halo: style('halo'), context: style('context'), target: style('target'), posterior: style('posterior'), below: style('below') };
    const canvas = /** @type {CanvasRenderingContext2D} */ (/** @type {unknown} */ (pen));
    if (held) room.drawHeldOutlines(canvas, looks);
    else room.drawOutlines(canvas, looks);
  } finally {
    Object.assign(globalThis, { Path2D });
  }
  return lines;
}
