// A view of the free live picture drawn once, at angles where the C-arm need not stand.

import { penOf } from '../base/dom.js';
import { drawOver, shownIn } from './picture.js';

/**
 * @import { Angles } from '../base/tenth.js'
 * @import { App } from '../state/page-state.js'
 * @import { Shaping } from '../engine/shaping.js'
 * @import { NeedleInPicture } from './picture.js'
 */

/** The radiograph's side, canvas pixels. */
const FILM_PX = 512;

/**
 * A square canvas.
 * @param {number} pixels
 */
export function square(pixels) {
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = pixels;
  return canvas;
}

/**
 * The view that the C-arm would have at `angles`, drawn once: `{film, over, report}`, the radiograph and what lies over it. The engine is
 * turned there and back again; nothing else learns of it. `needle` as in `picture().draw`.
 * @param {App} app
 * @param {Shaping} patient
 * @param {Angles} angles
 * @param {number} pixels
 * @param {NeedleInPicture | null} [needle]
 */
export function frozen(app, patient, angles, pixels, needle) {
  const { room } = app;
  if (!room) throw new Error('there is no engine');
  const state = { ...app.state, ...angles };
  const [film, over] = [square(FILM_PX), square(pixels)];
  patient.aim();
  try {
    room.setOrientation(angles.oblique_deg, angles.tilt_deg);
    if (needle) room.showNeedleAt(needle.tick);
    room.drawRadiograph(penOf(film, { alpha: false }), state.boneDark);
    const report = room.report();
    const shown = shownIn({ ...state, labels: false }, report, null);
    drawOver(penOf(over), room, state, shown, { scale: devicePixelRatio });
    return { film, over, report };
  } finally {
    patient.aim();
  }
}
