// How lines look on a film, and how large the film is.

/**
 * @import { Label, OutlineStyle, Pen } from '../pkg/values.js'
 *
 * @typedef {'context' | 'target' | 'posterior' | 'below' | 'chosen'} LineKind
 */

// Line looks for each kind of outline: colour, width in CSS px, dash in CSS px. Told apart by width and dash, not by colour alone.
export const LOOKS = {
  onLight: { halo: 'rgba(12,16,19,.72)', context: 'rgba(14,30,40,.42)', target: 'rgba(10,20,28,.85)', posterior: '#ffc163', below: '#8fe3ff', chosen: '#ffffff' },
  onDark: { halo: 'rgba(4,7,9,.8)', context: 'rgba(196,214,224,.36)', target: 'rgba(240,246,249,.85)', posterior: '#ffb84d', below: '#7bd8ff', chosen: '#ffffff' },
};
const WIDTHS_PX = { context: 0.9, target: 1.4, posterior: 2, below: 2.8, chosen: 5, halo: 1.6 };
const DASH_PX = [8, 4];
/** The width of the whole field on the detector: 512 pixels of 0.4 mm. */
export const DETECTOR_MM = 512 * 0.4;

/**
 * What the engine needs to know to stroke the outlines on a canvas of `pixels` by `pixels`.
 * @param {{ boneDark: boolean }} state
 * @param {number} pixels
 * @param {Label | null} [lit] a part that stands out
 * @param {number} [ratio] canvas pixels a CSS pixel
 * @returns {OutlineStyle}
 */
export function outlineStyle(state, pixels, lit, ratio = devicePixelRatio) {
  const look = state.boneDark ? LOOKS.onLight : LOOKS.onDark;
  /** @type {(kind: LineKind, dash?: number[]) => Pen} */
  const pen = (kind, dash = []) => ({ colour: look[kind], width_px: WIDTHS_PX[kind] * ratio, dash_px: dash.map((d) => d * ratio) });
  return {
    canvas_px: pixels,
    halo: { colour: look.halo, width_px: WIDTHS_PX.halo * ratio, dash_px: [] },
    context: pen('context'),
    target: pen('target'),
    posterior: pen('posterior'),
    below: pen('below', DASH_PX),
    ...(lit ? { chosen: { ...lit, pen: pen('chosen') } } : {}),
  };
}
