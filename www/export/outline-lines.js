// The engine's outlines as points: it strokes them with a pen that writes down instead of painting.

import { KINDS } from './outline-drawing.js';

/** Canvas pixels a millimetre for the pen: points then keep to a hundredth of a millimetre. */
const PX_PER_MM = 100;

/** Takes the place of a path while the engine draws, and keeps its lines. */
class WrittenPath {
  lines = [];
  moveTo(x, y) {
    this.lines.push({ points: [[x, y]], closed: false });
  }
  lineTo(x, y) {
    this.lines.at(-1).points.push([x, y]);
  }
  closePath() {
    this.lines.at(-1).closed = true;
  }
}

/**
 * The outlines of the picture that is shown, live or (`held`) the last exposure: `[{kind, closed, points_mm}]`, mm right and up of the
 * detector's middle. The engine asks for `Path2D` by name; it stands in for it during the one call, which nothing can interrupt.
 */
export function outlineLines(room, held, field_mm) {
  const size = field_mm * PX_PER_MM;
  const style = (colour) => ({ colour, width_px: 1, dash_px: [] });
  const lines = [];
  const pen = {
    strokeStyle: '', lineWidth: 0, lineJoin: '', save() {}, restore() {}, setLineDash() {},
    stroke(path) {
      const kind = this.strokeStyle;
      if (!KINDS.includes(kind)) return;
      for (const { points, closed } of path.lines) lines.push({ kind, closed, points_mm: points.map(([x, y]) => [(x - size / 2) / PX_PER_MM, (size / 2 - y) / PX_PER_MM]) });
    },
  };
  const { Path2D } = globalThis;
  globalThis.Path2D = WrittenPath;
  try {
    const looks = { canvas_px: size, halo: style('halo'), ...Object.fromEntries(KINDS.map((kind) => [kind, style(kind)])) };
    if (held) room.drawHeldOutlines(pen, looks);
    else room.drawOutlines(pen, looks);
  } finally {
    globalThis.Path2D = Path2D;
  }
  return lines;
}
