// The two canvases of an element: the radiograph as the engine draws it, and on top of it outlines, edge letters and names.

import { make, penOf, screenPixels } from '../base/dom.js';
import { DETECTOR_MM, outlineStyle } from '../film/film-look.js';
import { drawDogNames, drawEdgeLetters } from '../film/labels.js';
import { keyOf } from '../state/positioning.js';
import { elementBones } from './bones.js';

/**
 * @import { Report } from '../pkg/values.js'
 * @import { ElementState } from './interface.js'
 * @import { Stand } from './patients.js'
 * @import { Texts } from './words.js'
 */

const RADIOGRAPH_PX = 512;
/**
 * What of the state changes the radiograph, beside the patient.
 * @type {readonly (keyof ElementState)[]}
 */
const LOOK = ['level', 'oblique_deg', 'tilt_deg', 'rotation_deg', 'polarity'];

/**
 * Builds the canvases in `holder`. `texts`: of the element; `bones`: what is done about the bones through the beam (bones.js).
 * @param {HTMLElement} holder
 * @param {Texts} texts
 * @param {{ come: () => void, failed: (error: unknown) => void }} bones
 */
export function filmCanvases(holder, texts, bones) {
  const words = texts.picture;
  const under = make('canvas', { width: RADIOGRAPH_PX, height: RADIOGRAPH_PX });
  const overlay = make('canvas', { class: 'overlay', width: RADIOGRAPH_PX, height: RADIOGRAPH_PX });
  const over = make('canvas', { class: 'film-bones', 'aria-hidden': 'true' });
  holder.append(under, over, overlay);
  const through = elementBones(over, holder, texts.language, bones);
  const radiograph = penOf(under, { alpha: false });
  const pen = penOf(overlay);
  let drawn = '';
  /** CSS width; where the element is not laid out, that of the radiograph. */
  const width = () => holder.clientWidth || RADIOGRAPH_PX;

  return {
    overlay,
    /** Fits the overlay to the screen's pixels. Returns whether that changed it. */
    fit() {
      const pixels = screenPixels(width());
      if (overlay.width === pixels) return false;
      overlay.width = overlay.height = pixels;
      return true;
    },
    /**
     * The radiograph, if anything that shows in it has changed.
     * @param {Stand} stand
     * @param {ElementState} state
     */
    expose(stand, state) {
      const now = `${stand.name},${keyOf(state, LOOK)}`;
      if (now === drawn) return;
      stand.room?.drawRadiograph(radiograph, state.polarity === 'bone-dark');
      drawn = now;
    },
    /**
     * What stands on it.
     * @param {Stand} stand
     * @param {ElementState} state
     * @param {Report} report
     */
    mark(stand, state, report) {
      const size = overlay.width;
      const scale = size / width();
      pen.clearRect(0, 0, size, size);
      if (state.outlines) stand.room?.drawOutlines(pen, outlineStyle({ boneDark: state.polarity === 'bone-dark' }, size));
      drawEdgeLetters(pen, state, scale, words);
      if (state.labels) drawDogNames(pen, { ...state, field_mm: DETECTOR_MM, open: [1, 1], dog: report.dog }, scale, words);
    },
    /**
     * Through the beam, or the film alone. Returns what is said of it.
     * @param {Stand} stand
     * @param {ElementState} state
     * @param {Report} report
     */
    through(stand, state, report) {
      const plate = report.criteria.find((c) => c.id === 'squared');
      return through.show(state.through, stand, report, plate ? texts.checks.measured(plate) : '');
    },
    /** Nothing is drawn any more. */
    forget: () => (drawn = ''),
    /** A PNG of both, with sentences under them. */
    png: (/** @type {string[]} */ sentences) => asPng(through.shown() ? [over] : [under, overlay], Math.max(RADIOGRAPH_PX, overlay.width), sentences),
  };
}

/**
 * Pictures over each other on one canvas, `sentences` on a strip below, broken into lines.
 * @param {HTMLCanvasElement[]} pictures
 * @param {number} size
 * @param {string[]} sentences
 * @returns {Promise<Blob>}
 */
function asPng(pictures, size, sentences) {
  const letter = Math.round(size / 40);
  const canvas = make('canvas', { width: size, height: size });
  const pen = penOf(canvas);
  const font = `${letter}px system-ui, sans-serif`;
  pen.font = font;
  const lines = sentences.flatMap((sentence) => broken(pen, sentence, size - 2 * letter));
  canvas.height = size + Math.round((lines.length * 1.35 + 1) * letter);
  pen.fillStyle = '#05070a';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  for (const picture of pictures) pen.drawImage(picture, 0, 0, size, size);
  // Another size of the canvas has put its pen back to the start.
  pen.font = font;
  pen.fillStyle = '#e6ecef';
  pen.textBaseline = 'top';
  lines.forEach((line, i) => pen.fillText(line, letter, size + (0.5 + 1.35 * i) * letter));
  return new Promise((resolve, reject) => canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('canvas'))), 'image/png'));
}

/**
 * @param {CanvasRenderingContext2D} pen
 * @param {string} text
 * @param {number} width
 */
function broken(pen, text, width) {
  const lines = [''];
  for (const word of text.split(' ')) {
    const longer = `${lines.at(-1)} ${word}`.trim();
    if (pen.measureText(longer).width > width) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}
