// A view of the free live picture drawn once, at angles where the C-arm need not stand.

import { drawOver, shownIn } from './picture.js';

/** The radiograph's side, canvas pixels. */
const FILM_PX = 512;

/** A square canvas. */
export function square(pixels) {
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = pixels;
  return canvas;
}

/**
 * The view that the C-arm would have at `angles`, drawn once: `{film, over, report}`, the radiograph and what lies over it. The engine is
 * turned there and back again; nothing else learns of it. `needle` as in `picture().draw`.
 */
export function frozen(app, patient, angles, pixels, needle) {
  const state = { ...app.state, ...angles };
  const [film, over] = [square(FILM_PX), square(pixels)];
  patient.aim();
  try {
    app.room.setOrientation(angles.oblique, angles.tilt);
    app.room.drawRadiograph(film.getContext('2d', { alpha: false }), state.boneDark, needle?.tick);
    const report = app.room.report();
    const shown = shownIn({ ...state, labels: false }, report, null);
    drawOver(over.getContext('2d'), app.room, state, shown, { scale: devicePixelRatio });
    return { film, over, report };
  } finally {
    patient.aim();
  }
}
