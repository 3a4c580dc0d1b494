// What stands over the picture for the needle: mark, area, hub and tip, and the cross that marks. Each is told by its shape.

/** @import { Marks, Place } from './picture.js' */

const INK = '#f4f7f8';
const SHADE = 'rgba(6,9,12,.85)';

/**
 * Strokes a path dark and wide, then light and thin, so that it is seen on bone and on air.
 * @param {CanvasRenderingContext2D} pen
 * @param {number} scale
 * @param {() => void} draw
 * @param {{ width?: number, dash?: number[] }} [look]
 */
function stroke(pen, scale, draw, { width = 1.6, dash = [] } = {}) {
  /** @type {[string, number, number[]][]} */
  const strokes = [[SHADE, width + 2, []], [INK, width, dash]];
  for (const [colour, thick, broken] of strokes) {
    pen.setLineDash(broken.map((d) => d * scale));
    pen.strokeStyle = colour;
    pen.lineWidth = thick * scale;
    pen.beginPath();
    draw();
    pen.stroke();
  }
  pen.setLineDash([]);
}

/**
 * Draws them. `at(mm)` gives canvas pixels of a place on the detector, `scale` canvas pixels a CSS pixel. `marks`: `{mark, area, hub, tip,
 * cross}`, each in mm on the detector or null.
 * @param {CanvasRenderingContext2D} pen
 * @param {(mm: Place) => number[]} at
 * @param {number} scale
 * @param {Marks} marks
 */
export function drawMarks(pen, at, scale, { mark, area, hub, tip, cross }) {
  pen.save();
  pen.lineCap = 'round';
  if (area?.length) {
    const corners = area.map(at);
    stroke(pen, scale, () => {
      corners.forEach(([x, y], i) => (i ? pen.lineTo(x, y) : pen.moveTo(x, y)));
      pen.closePath();
    }, { dash: [5, 4] });
  }
  if (mark) {
    // Four arms that leave the place itself free.
    const [x, y] = at(mark);
    const [near, far] = [3 * scale, 9 * scale];
    stroke(pen, scale, () => {
      for (const [a, b] of [[1, 1], [-1, 1], [-1, -1], [1, -1]]) {
        pen.moveTo(x + a * near, y + b * near);
        pen.lineTo(x + a * far, y + b * far);
      }
    });
  }
  if (hub) {
    const [x, y] = at(hub);
    stroke(pen, scale, () => pen.arc(x, y, 9 * scale, 0, 7), { width: 2.2 });
  }
  if (tip) {
    const [x, y] = at(tip);
    for (const [colour, radius] of /** @type {const} */ ([[SHADE, 4.6], [INK, 2.8]])) {
      pen.fillStyle = colour;
      pen.beginPath();
      pen.arc(x, y, radius * scale, 0, 7);
      pen.fill();
    }
  }
  if (cross) {
    const [x, y] = at(cross);
    const [gap, size] = [5 * scale, pen.canvas.width];
    stroke(pen, scale, () => {
      for (const [x0, y0, x1, y1] of [[0, y, x - gap, y], [x + gap, y, size, y], [x, 0, x, y - gap], [x, y + gap, x, size]]) {
        pen.moveTo(x0, y0);
        pen.lineTo(x1, y1);
      }
    }, { width: 1 });
  }
  pen.restore();
}
