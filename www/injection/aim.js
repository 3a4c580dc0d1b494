// Hands on the picture: marking the target with a press or a cross, and moving the hub by its ring or the arrow keys.

import { byId } from '../base/dom.js';
import { tenth } from '../base/tenth.js';
import { texts } from '../words/injection.js';

/**
 * @import { App } from '../state/page-state.js'
 *
 * A hand that drags the hub: where on the detector it took hold, where the hub was then, and by the hub's owner (injection.js) how far it follows.
 * @typedef {{ from: Mm, start: Mm, gain?: number, done?: boolean }} HubPress
 *
 * Right and up on the detector, mm.
 * @typedef {[number, number]} Mm
 *
 * @typedef {object} AimActs
 * @property {(at: Mm) => boolean} mark whether it was set
 * @property {(right_tenths: number, up_tenths: number) => void} hub turns it, tenths of a degree
 * @property {(wanted: Mm, press: HubPress) => void} hubDrag
 * @property {() => boolean} canMark says why not
 * @property {(sentence: string) => void} said
 * @property {() => Mm | null} hubAt the hub on the detector, or null where it cannot be gripped
 * @property {() => boolean} hasNeedle
 * @property {() => number} field_mm
 */

/** What an arrow key moves: the cross, and the hub in tenths of a degree. */
export const CROSS_MM = { step: 1, fine: 0.2 };
export const HUB_TENTHS = { step: 5, fine: 1 };
/** A press counts as one when the hand has moved less than this, CSS px. */
const STILL_PX = 6;
/** As near as this to the ring a press takes hold of the hub, CSS px. */
const GRIP_PX = 18;
const HALF_FIELD_MM = 256 * 0.4;
/** Before listeners that were there earlier. */
const FIRST = { capture: true };
/** @type {Partial<Record<string, [number, number]>>} */
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

/**
 * Sets it up. It comes after what turns the C-arm, and listens while events go down, so that its presses and keys come first.
 * @param {App} app
 * @param {AimActs} act
 */
export function aiming(app, act) {
  const film = byId('picture');
  const surface = byId('overlay');
  /** @type {Mm | null} */
  let cross = null;
  /** @type {{ x: number, y: number, moved: boolean, hub: HubPress | null } | null} */
  let press = null;

  /**
   * @param {PointerEvent} event
   * @returns {Mm}
   */
  const place = (event) => {
    const box = surface.getBoundingClientRect();
    const field = act.field_mm();
    return [((event.clientX - box.left) / box.width - 0.5) * field, (0.5 - (event.clientY - box.top) / box.height) * field];
  };
  const inField = (/** @type {number} */ x) => Math.max(-HALF_FIELD_MM, Math.min(HALF_FIELD_MM, x));

  function leave() {
    if (!cross) return;
    cross = null;
    app.touch();
  }

  /** @param {Mm} at */
  function mark(at) {
    if (!act.canMark()) return;
    if (act.mark(at)) leave();
  }

  surface.addEventListener('pointerdown', (event) => {
    if (!app.state.injection || event.button !== 0 || !event.isPrimary) return;
    const hub = act.hubAt();
    const scale = surface.getBoundingClientRect().width / act.field_mm();
    const from = place(event);
    if (!cross && hub && Math.hypot(from[0] - hub[0], from[1] - hub[1]) * scale < GRIP_PX) {
      // The hub, not the C-arm, follows this hand.
      event.stopImmediatePropagation();
      surface.setPointerCapture(event.pointerId);
      press = { x: event.clientX, y: event.clientY, moved: false, hub: { from, start: hub } };
    } else {
      press = { x: event.clientX, y: event.clientY, moved: false, hub: null };
    }
  }, FIRST);
  surface.addEventListener('pointermove', (event) => {
    if (!press || !event.isPrimary) return;
    // A hand that marks trembles; that must not turn the C-arm.
    if (cross && !press.moved && Math.hypot(event.clientX - press.x, event.clientY - press.y) < STILL_PX) event.stopImmediatePropagation();
    else press.moved = true;
    if (!press.hub) return;
    event.stopImmediatePropagation();
    const to = place(event);
    const { from } = press.hub;
    act.hubDrag([to[0] - from[0], to[1] - from[1]], press.hub);
  }, FIRST);
  surface.addEventListener('pointerup', (event) => {
    const was = press;
    press = null;
    if (!was || was.hub || !cross) return;
    if (!was.moved) mark(place(event));
  });
  for (const type of ['pointercancel', 'lostpointercapture']) surface.addEventListener(type, () => (press = null));

  film.addEventListener('keydown', (event) => {
    if (!app.state.injection || event.altKey || event.ctrlKey || event.metaKey || event.target !== film) return;
    const way = ARROWS[event.key];
    if (way && cross) {
      event.preventDefault();
      const step = event.shiftKey ? CROSS_MM.fine : CROSS_MM.step;
      cross = [inField(tenth(cross[0] + way[0] * step)), inField(tenth(cross[1] + way[1] * step))];
      act.said(texts.needle.picture.cross(cross));
      app.touch();
    } else if (way && act.hasNeedle()) {
      event.preventDefault();
      const step = event.shiftKey ? HUB_TENTHS.fine : HUB_TENTHS.step;
      act.hub(way[0] * step, way[1] * step);
    } else if (event.key === 'Enter' && cross) {
      event.preventDefault();
      mark(cross);
    } else if (event.key === 'Escape' && cross) {
      event.preventDefault();
      leave();
    }
  }, FIRST);

  return {
    /** The cross, mm on the detector, or null while not marking. */
    cross: () => cross,
    leave,
    /** Begins or ends marking. The keys go to the picture. */
    toggle() {
      if (cross) return leave();
      if (!act.canMark()) return;
      cross = [0, 0];
      film.focus({ preventScroll: true });
      film.scrollIntoView({ block: 'nearest' });
      app.touch();
    },
  };
}
