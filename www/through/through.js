// Through the beam: the bones in 3D as the source sees them, over the film, with the rays through end plate, pedicle and tip. Page and element
// draw it with this; loaded when it is first asked for.

import { beamOf, eyeOf } from './beam-eye.js';
import { apart_mm, drawRays, raysThrough } from './rays.js';
import { bonesOf, drawBones } from './surface.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { Report } from '../pkg/values.js'
 * @import { Swing } from './beam-eye.js'
 * @import { Ray, RayName } from './rays.js'
 * @import { Surface } from './surface.js'
 *
 * What is drawn: the engine turned to the view, its report on it, a text for the patient, table (mm to the left, up and to the head), the needle's hub and tip (mm
 * from the target's centre) or null, the film's magnification, and how far the eye is swung.
 * @typedef {{ room: TeachingRoom, report: Report, who: string, table_mm: [number, number, number], needle: readonly (readonly number[])[] | null, magnification?: number, swing: Swing }} Seen
 *
 * What came of it, for words: how far the tip's ray passes from the pedicle's at the patient, mm; null without a tip.
 * @typedef {{ tip_mm: number | null }} DrawnThrough
 */

/** Side of the bones' picture, pixels: as the film of the engine. */
const BONES_PX = 512;
/** The engine's numbers of a view do not depend on the size, which is to be one that it has. */
const VIEW_PX = 128;

/** Something that draws it on the canvases it is given. Keeps the last patient's surface. */
export function throughDrawing() {
  let patient = '';
  /** @type {Surface | null} */
  let surface = null;
  const bones = document.createElement('canvas');
  bones.width = bones.height = BONES_PX;
  const under = bones.getContext('2d', { alpha: false });
  return {
    /**
     * Draws on a square canvas, `scale` pixels a CSS pixel.
     * @param {CanvasRenderingContext2D} pen
     * @param {Seen} seen
     * @param {{ names: Record<RayName, string>, scale: number }} how
     * @returns {DrawnThrough}
     */
    draw(pen, { room, report, who, table_mm, needle, magnification, swing }, { names, scale }) {
      if (!surface || patient !== who) surface = bonesOf(room.filmMeshes());
      patient = who;
      const beam = beamOf(room.filmView(VIEW_PX));
      const eye = eyeOf(beam, swing, magnification);
      under?.putImageData(new ImageData(drawBones(surface, eye, BONES_PX), BONES_PX), 0, 0);
      const size = pen.canvas.width;
      pen.imageSmoothingQuality = 'high';
      pen.drawImage(bones, 0, 0, size, size);
      // The table has moved the patient, so the isocentre lies the other way from the target's centre.
      const centre = beam.isocentre.map((mm, k) => mm + table_mm[k]);
      const rays = raysThrough(report, needle?.[1] ?? null);
      drawRays(pen, rays, { beam, eye, centre, names, scale, needle });
      const [pedicle, tip] = ['pedicle', 'tip'].map((name) => rays.find((ray) => ray.name === name));
      return { tip_mm: pedicle && tip ? apart_mm(report, beam, tip, pedicle, centre) : null };
    },
  };
}
