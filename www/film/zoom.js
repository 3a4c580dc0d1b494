// Pinch and wheel enlarge the film where they are, and never turn the C-arm; a double tap or the key 0 shows the whole of it again. The
// film is drawn no differently for it: noise, window and polarity hold.

/**
 * How many times its size a film is shown, and where its upper left corner stands in the frame, CSS px.
 * @typedef {{ scale: number, x: number, y: number }} Zoom
 * @typedef {[number, number]} Point
 */

const MOST = 4;
const KEY_STEP = 1.25;
const TAP = { ms: 320, px: 24 };

/**
 * Place of a film of `side` px under `zoom` (`{scale, x, y}`, px) that keeps it covering its frame.
 * @param {Zoom} zoom
 * @param {number} side
 */
export function covering({ scale, x, y }, side) {
  const held = Math.min(MOST, Math.max(1, scale));
  const within = (/** @type {number} */ at) => Math.min(0, Math.max(side * (1 - held), at));
  return { scale: held, x: within(x), y: within(y) };
}

/**
 * The zoom after the film was made `times` as large about a place of the frame, px, which stays where it is.
 * @param {Zoom} zoom
 * @param {number} times
 * @param {Point} place
 * @param {number} side
 */
export function about(zoom, times, [px, py], side) {
  const scale = Math.min(MOST, Math.max(1, zoom.scale * times));
  const k = scale / zoom.scale;
  return covering({ scale, x: px - (px - zoom.x) * k, y: py - (py - zoom.y) * k }, side);
}

/**
 * Sets it up on the frame `film` around `image`. `act`: `said(times)` by a key, `changed()` after each change.
 * @param {HTMLElement} film
 * @param {HTMLElement} image
 * @param {{ said: (times: number) => void, changed: () => void }} act
 */
export function filmZoom(film, image, act) {
  /** @type {Zoom} */
  let zoom = { scale: 1, x: 0, y: 0 };
  /** @type {Map<number, Point>} */
  const fingers = new Map();
  /** @type {{ zoom: Zoom, apart: number, middle: Point } | null} */
  let pinch = null;
  /** @type {{ at: Point, time: number } | null} */
  let tap = null;
  image.style.transformOrigin = '0 0';
  /**
   * @param {MouseEvent} event
   * @returns {Point}
   */
  const place = (event) => {
    const frame = film.getBoundingClientRect();
    return [event.clientX - frame.left - film.clientLeft, event.clientY - frame.top - film.clientTop];
  };
  const show = (/** @type {Zoom} */ next) => {
    const larger = next.scale > 1.001;
    zoom = larger ? next : { scale: 1, x: 0, y: 0 };
    image.style.transform = larger ? `translate(${zoom.x}px, ${zoom.y}px) scale(${zoom.scale})` : '';
    act.changed();
  };
  /** @returns {{ middle: Point, apart: number }} */
  const between = () => {
    const [a, b] = [...fingers.values()];
    return { middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], apart: Math.max(1, Math.hypot(a[0] - b[0], a[1] - b[1])) };
  };

  film.addEventListener('wheel', (event) => {
    // At its whole size a turn the other way is the page's.
    if (zoom.scale === 1 && event.deltaY > 0) return;
    event.preventDefault();
    show(about(zoom, Math.exp(-event.deltaY * (event.deltaMode ? 0.05 : 0.0016)), place(event), film.clientWidth));
  }, { passive: false });

  film.addEventListener('pointerdown', (event) => {
    if (event.pointerType === 'mouse') return;
    fingers.set(event.pointerId, place(event));
    if (fingers.size !== 2) return;
    // The first finger has meant to pinch, not to turn: what it has begun is taken back.
    const [first] = fingers.keys();
    event.target?.dispatchEvent(new PointerEvent('pointercancel', { pointerId: first, isPrimary: true, pointerType: event.pointerType, bubbles: true }));
    fingers.set(first, fingers.get(first) ?? place(event));
    pinch = { ...between(), zoom };
    tap = null;
  }, { capture: true });
  film.addEventListener('pointermove', (event) => {
    if (!fingers.has(event.pointerId)) return;
    fingers.set(event.pointerId, place(event));
    if (!pinch || fingers.size !== 2) return;
    event.stopPropagation();
    const now = between();
    const grown = about(pinch.zoom, now.apart / pinch.apart, pinch.middle, film.clientWidth);
    show(covering({ scale: grown.scale, x: grown.x + now.middle[0] - pinch.middle[0], y: grown.y + now.middle[1] - pinch.middle[1] }, film.clientWidth));
  }, { capture: true });
  const lift = (/** @type {PointerEvent} */ event) => {
    if (!event.isTrusted && event.type === 'pointercancel') return;
    const at = fingers.get(event.pointerId);
    fingers.delete(event.pointerId);
    if (fingers.size < 2 && pinch) {
      if (fingers.size === 0) pinch = null;
      return;
    }
    if (!at || event.type !== 'pointerup') return;
    const again = tap !== null && event.timeStamp - tap.time < TAP.ms && Math.hypot(at[0] - tap.at[0], at[1] - tap.at[1]) < TAP.px;
    tap = again ? null : { at, time: event.timeStamp };
    if (again && zoom.scale > 1) show({ scale: 1, x: 0, y: 0 });
  };
  for (const kind of /** @type {const} */ (['pointerup', 'pointercancel'])) film.addEventListener(kind, lift, { capture: true });
  film.addEventListener('dblclick', () => zoom.scale > 1 && show({ scale: 1, x: 0, y: 0 }));

  return {
    /**
     * By key: larger (1), smaller (-1), the whole film (0).
     * @param {number} way
     */
    by(way) {
      const middle = film.clientWidth / 2;
      show(way === 0 ? { scale: 1, x: 0, y: 0 } : about(zoom, KEY_STEP ** way, [middle, middle], film.clientWidth));
      act.said(zoom.scale);
    },
    /** How many times its size. */
    scale: () => zoom.scale,
  };
}
