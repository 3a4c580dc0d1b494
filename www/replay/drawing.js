// What is shown of a moment: the film as the engine draws it from where the C-arm stood, with mark, hub and tip; the C-arm from the feet and from the
// side; and of another attempt at the same case its needle, dashed.

import { DETECTOR_MM } from '../film/film-look.js';
import { drawMarks } from '../film/marks.js';
import { make, penOf, within } from '../base/dom.js';
import { gantryDrawing } from '../gantry/drawing.js';
import { beamOf, eyeOf, STRAIGHT } from '../through/beam-eye.js';
import { seenAt } from '../through/surface.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { Moment } from './track.js'
 */

/** Sides of film and of what stands over it, canvas pixels. */
const [FILM_PX, OVER_PX] = [512, 768];
const VIEW_PX = 128;
const GHOST = { ink: '#8fe3ff', shade: 'rgba(6,9,12,.85)', dash: [9, 6] };

/**
 * Builds film and drawings. Returns `{ film, feet, side, draw }`.
 * @param {boolean} boneDark
 */
export function replayDrawing(boneDark) {
  const radiograph = make('canvas', { width: FILM_PX, height: FILM_PX });
  const overlay = make('canvas', { width: OVER_PX, height: OVER_PX });
  const image = make('div', { class: 'film-image', role: 'img', 'aria-labelledby': 'replay-words' }, radiograph, overlay);
  const film = make('div', { class: 'film replay-film' }, image);
  const [under, pen] = [penOf(radiograph, { alpha: false }), penOf(overlay)];
  const [feet, side] = [make('figure', { id: 'replay-feet' }), make('figure', { id: 'replay-side' })];
  const drawings = [gantryDrawing(feet, 'feet'), gantryDrawing(side, 'side')];
  for (const figure of [feet, side]) {
    // The page's own drawings have the usual ids.
    within(figure, 'title').id = `${figure.id}-text`;
    within(figure, 'svg').setAttribute('aria-labelledby', `${figure.id}-text`);
  }

  return {
    film, feet, side,
    /**
     * Draws a moment, the engine being there already, as of a tick. `ghost`: the other attempt's moment, or null.
     * @param {TeachingRoom} room
     * @param {Moment} moment
     * @param {number} tick
     * @param {Moment | null} ghost
     */
    draw(room, { arm, table_mm, needle }, tick, ghost) {
      room.setOrientation(arm.oblique_deg, arm.tilt_deg);
      room.setImageRotation(arm.rotation_deg);
      room.setTableShift(...table_mm);
      room.showNeedleAt(tick);
      room.drawRadiograph(under, boneDark, FILM_PX);
      const report = room.procedure(tick);
      pen.clearRect(0, 0, OVER_PX, OVER_PX);
      const scale = OVER_PX / (image.clientWidth || FILM_PX);
      if (ghost?.needle) ghostNeedle(pen, room, table_mm, ghost.needle, scale);
      const at = (/** @type {readonly number[]} */ mm) => [OVER_PX * (0.5 + mm[0] / DETECTOR_MM), OVER_PX * (0.5 - mm[1] / DETECTOR_MM)];
      drawMarks(pen, at, scale, { mark: report.mark_mm, hub: report.needle?.hub_mm, tip: report.needle?.tip_mm });
      const [table_x_mm, table_y_mm, table_z_mm] = table_mm;
      const state = { ...arm, table_x_mm, table_y_mm, table_z_mm };
      for (const update of drawings) update(state, needle);
    },
  };
}

/**
 * The other attempt's needle where this C-arm would show it: a dashed line with a ring at the hub and a cross at the tip.
 * @param {CanvasRenderingContext2D} pen
 * @param {TeachingRoom} room
 * @param {[number, number, number]} table_mm
 * @param {[number[], number[]]} needle
 * @param {number} scale
 */
function ghostNeedle(pen, room, table_mm, needle, scale) {
  const beam = beamOf(room.filmView(VIEW_PX));
  const centre = beam.isocentre.map((mm, k) => mm + table_mm[k]);
  const eye = eyeOf(beam, STRAIGHT);
  const [[hx, hy], [tx, ty]] = needle.map((point) => {
    const { x, y } = seenAt(eye, point.map((v, k) => v + centre[k]));
    return [x * OVER_PX, y * OVER_PX];
  });
  pen.save();
  pen.lineCap = 'round';
  const arm = 5 * scale;
  for (const [ink, width, dash] of /** @type {[string, number, number[]][]} */ ([[GHOST.shade, 4.4, []], [GHOST.ink, 2, GHOST.dash]])) {
    pen.strokeStyle = ink;
    pen.lineWidth = width * scale;
    pen.setLineDash(dash.map((d) => d * scale));
    pen.beginPath();
    pen.moveTo(hx, hy);
    pen.lineTo(tx, ty);
    pen.stroke();
    pen.setLineDash([]);
    pen.beginPath();
    pen.moveTo(tx - arm, ty - arm);
    pen.lineTo(tx + arm, ty + arm);
    pen.moveTo(tx + arm, ty - arm);
    pen.lineTo(tx - arm, ty + arm);
    pen.stroke();
    pen.beginPath();
    pen.arc(hx, hy, 7 * scale, 0, 7);
    pen.stroke();
  }
  pen.restore();
}
