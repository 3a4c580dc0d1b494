// Dragging a drawing of the C-arm: what was taken hold of follows the pointer, in the drawing's own angle.

import { tenth } from '../base/tenth.js';

/**
 * @import { App } from '../state/page-state.js'
 * @import { Flat } from './drawing.js'
 *
 * What is turned: `seenAt(deg)` where a point 1 mm from the isocentre towards the receptor is drawn, `middle()` where the isocentre is drawn,
 * `frozen()` whether the angle may not be changed, `tap(event)` for a press that turned nothing.
 * @typedef {{ seenAt: (deg: number) => Flat, middle: () => Flat, frozen: () => boolean, tap?: (event: PointerEvent) => void }} Turned
 */

const STEP_DEG = 0.1;
/** Nearer than this to the isocentre a pointer has no direction, share of the drawing's width. */
const TOO_NEAR = 0.04;

/** From the window's pixels to a drawing's own units (mm), as it now stands. */
const intoDrawing = (/** @type {SVGSVGElement} */ svg) => svg.getScreenCTM()?.inverse() ?? new DOMMatrix();

/**
 * Where a pointer is in a drawing's own units (mm).
 * @param {SVGSVGElement} svg
 * @param {MouseEvent} event
 * @param {DOMMatrix} into
 * @returns {Flat}
 */
export function pointIn(svg, event, into = intoDrawing(svg)) {
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(into);
  return [x, y];
}

/**
 * The angle at which the point `reach` from the isocentre along the beam, as `seenAt(angle)` has it at 1 mm, comes nearest to `at`.
 * Found by trying: seen edge-on the path is no circle, and a formula would divide by nothing.
 * @param {number[]} at
 * @param {number} reach
 * @param {(deg: number) => Flat} seenAt
 * @param {readonly number[]} range
 */
export function angleTowards(at, reach, seenAt, [low, high]) {
  const miss = (/** @type {number} */ deg) => {
    const [x, y] = seenAt(deg);
    return Math.hypot(reach * x - at[0], reach * y - at[1]);
  };
  const best = (/** @type {number} */ from, /** @type {number} */ to, /** @type {number} */ step) => {
    let [least, found] = [Infinity, from];
    for (let deg = from; deg <= to + step / 2; deg += step) {
      const now = miss(deg);
      if (now < least) [least, found] = [now, deg];
    }
    return found;
  };
  const about = best(low, high, 2);
  return Math.round(best(Math.max(low, about - 2), Math.min(high, about + 2), STEP_DEG) / STEP_DEG) * STEP_DEG;
}

/**
 * Makes a drawing turn `key`.
 * @param {SVGSVGElement} svg
 * @param {'oblique_deg' | 'tilt_deg'} key
 * @param {App} app
 * @param {Turned} view
 */
export function dragAngle(svg, key, app, view) {
  const STILL_PX = 4;
  /** @type {{ x: number, y: number, start: number, turned: boolean, reach: number, off: number, range: readonly number[], into: DOMMatrix } | null} */
  let hand = null;
  const from = (/** @type {PointerEvent} */ event, /** @type {DOMMatrix} */ into) => {
    const [at, middle] = [pointIn(svg, event, into), view.middle()];
    return [at[0] - middle[0], at[1] - middle[1]];
  };
  svg.addEventListener('pointerdown', (event) => {
    if (event.button !== 0 || !event.isPrimary || view.frozen()) return;
    // The drawing may be moved while it is held, since what stands over it changes with the angle: the hand goes by where it was.
    const into = intoDrawing(svg);
    const at = from(event, into);
    const range = app.catalogue.range[key];
    const far = Math.hypot(...at);
    hand = { x: event.clientX, y: event.clientY, start: app.state[key], turned: false, reach: 0, off: 0, range, into };
    if (far < TOO_NEAR * svg.viewBox.baseVal.width) return;
    // Taken by the receptor's half or by the source's: whichever needs the smaller correction.
    const { start } = hand;
    const ways = [far, -far].map((reach) => ({ reach, off: start - angleTowards(at, reach, view.seenAt, [-180, 180]) }));
    for (const way of ways) way.off -= 360 * Math.round(way.off / 360);
    const [near, other] = ways;
    Object.assign(hand, Math.abs(near.off) <= Math.abs(other.off) ? near : other);
    svg.setPointerCapture(event.pointerId);
  });
  svg.addEventListener('pointermove', (event) => {
    if (!hand?.reach || !event.isPrimary) return;
    if (!hand.turned) {
      if (Math.hypot(event.clientX - hand.x, event.clientY - hand.y) < STILL_PX) return;
      hand.turned = true;
      app.hold(true);
    }
    const [low, high] = hand.range;
    const wanted = angleTowards(from(event, hand.into), hand.reach, view.seenAt, [low - hand.off, high - hand.off]) + hand.off;
    app.change({ [key]: tenth(Math.min(high, Math.max(low, wanted))) });
  });
  const release = () => {
    if (hand?.turned) app.hold(false);
    hand = null;
  };
  svg.addEventListener('pointerup', (event) => {
    const was = hand;
    release();
    if (was && !was.turned) view.tap?.(event);
  });
  svg.addEventListener('pointercancel', () => {
    // The browser took the finger for scrolling: then it was never meant to turn.
    if (hand?.turned) app.change({ [key]: hand.start });
    release();
  });
  svg.addEventListener('lostpointercapture', release);
}
