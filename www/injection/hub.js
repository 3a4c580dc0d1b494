// The hub seen from above: its colour, the notch as a cut in its rim, and an arrow where the tip will drift to. Turned by drag, wheel and keys.

import { make } from '../base/dom.js';
import { shape } from '../base/svg.js';
import { tenth } from '../base/tenth.js';
import { texts } from '../words/injection.js';

const RADIUS = 36;
/** What an arrow key turns, degrees. */
export const ROLL_DEG = { step: 15, fine: 1 };
const WHEEL_DEG = 5;
const WHEEL_MM = 0.5;
/** The wheel has stopped after this, ms. */
const QUIET_MS = 180;

/**
 * Builds the dial in `holder`. `act`: `roll(degrees)` clockwise, `push(mm)`.
 * @param {HTMLElement} holder
 * @param {{ roll: (degrees: number) => void, push: (mm: number) => void }} act
 */
export function hubDial(holder, act) {
  const words = texts.needle.hand;
  const svg = shape('svg', { viewBox: '-72 -72 144 144', class: 'hub-svg', 'aria-hidden': 'true' });
  const ring = shape('g', {});
  for (let h = 0; h < 12; h++) {
    const [s, c] = [Math.sin((h * Math.PI) / 6), -Math.cos((h * Math.PI) / 6)];
    const [near, far] = h % 3 ? [62, 66] : [60, 68];
    ring.append(shape('path', { class: 'h-hour', d: `M${near * s} ${near * c}L${far * s} ${far * c}` }));
  }
  const body = shape('path', { class: 'h-body' });
  const bore = shape('circle', { class: 'h-bore', r: 9 });
  const arrow = shape('path', { class: 'h-drift', d: 'M0 40V58M-7 50L0 59L7 50' });
  const turning = shape('g', {});
  turning.append(body, bore, arrow);
  svg.append(ring, turning);
  // The rim with a wedge cut out of it at 12.
  const [s, c] = [Math.sin(0.3), Math.cos(0.3)];
  body.setAttribute('d', `M${RADIUS * s} ${-RADIUS * c}A${RADIUS} ${RADIUS} 0 1 1 ${-RADIUS * s} ${-RADIUS * c}L0 -17Z`);
  const dial = make('div', { class: 'hub-dial', role: 'slider', id: 'hub-dial', tabindex: 0, 'aria-label': words.hub, 'aria-valuemin': 0, 'aria-valuemax': 360, 'aria-describedby': 'hub-keys' });
  dial.append(svg);
  holder.append(dial, make('span', { class: 'unseen', id: 'hub-keys' }, words.hubKeys));

  let hour = 12;
  // What the hand has turned and the engine has not been told yet, degrees.
  let pending = 0;
  /** @type {number | null} */
  let drag = null;
  let quiet = 0;

  const draw = () => turning.setAttribute('transform', `rotate(${(hour * 30 + pending).toFixed(1)})`);
  const send = () => {
    clearTimeout(quiet);
    const by = tenth(pending);
    pending = 0;
    if (by !== 0) act.roll(by);
    else draw();
  };
  const angleOf = (/** @type {PointerEvent} */ event) => {
    const box = dial.getBoundingClientRect();
    return (Math.atan2(event.clientX - box.left - box.width / 2, box.top + box.height / 2 - event.clientY) * 180) / Math.PI;
  };

  dial.addEventListener('pointerdown', (event) => {
    if (event.button !== 0 || !event.isPrimary) return;
    send();
    dial.setPointerCapture(event.pointerId);
    drag = angleOf(event);
  });
  dial.addEventListener('pointermove', (event) => {
    if (drag === null || !event.isPrimary) return;
    const now = angleOf(event);
    pending += ((now - drag + 540) % 360) - 180;
    drag = now;
    draw();
  });
  for (const type of ['pointerup', 'pointercancel', 'lostpointercapture']) {
    dial.addEventListener(type, () => {
      if (drag === null) return;
      drag = null;
      send();
    });
  }
  dial.addEventListener('wheel', (event) => {
    // With Shift some browsers turn the wheel sideways.
    const way = Math.sign(event.deltaY || event.deltaX);
    if (way === 0 || event.ctrlKey) return;
    event.preventDefault();
    if (event.shiftKey) return act.push(way < 0 ? WHEEL_MM : -WHEEL_MM);
    pending += way * WHEEL_DEG;
    draw();
    clearTimeout(quiet);
    quiet = setTimeout(send, QUIET_MS);
  }, { passive: false });
  dial.addEventListener('keydown', (event) => {
    const way = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    if (!way || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    act.roll(way * (event.shiftKey ? ROLL_DEG.fine : ROLL_DEG.step));
  });

  return {
    /** Tells the engine what the hand has turned, before anything else is done. */
    send,
    /**
     * @param {number} now the notch's hour
     * @param {string} colour
     */
    show(now, colour) {
      hour = now;
      dial.dataset.colour = colour;
      dial.setAttribute('aria-valuenow', String(Math.round((hour * 30) % 360)));
      dial.setAttribute('aria-valuetext', words.notchFine(hour));
      draw();
    },
  };
}
