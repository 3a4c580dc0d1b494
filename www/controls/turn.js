// The angles: slider, typed number and one-degree buttons for each, all three saying the same angle; and the drag that turns.

import { make, say } from '../base/dom.js';
import { tenth } from '../base/tenth.js';

/**
 * What the controls turn: the page, or an element.
 * @typedef {{ state: { oblique_deg: number, tilt_deg: number }, catalogue: { range: Ranges }, change: (patch: Partial<Record<AngleKey, number>>) => void, hold: (on: boolean) => void }} TurnApp
 *
 * @import { Ranges } from '../pkg/values.js'
 *
 * @typedef {'oblique' | 'tilt' | 'rotation'} Angle
 * @typedef {`${Angle}_deg`} AngleKey
 *
 * The sentences of all turn controls, and of one.
 * @typedef {{ turn: { number: (name: string) => string, notNumber: (name: string) => string, outOfRange: (name: string, low: number, high: number) => string } }} TurnTexts
 * @typedef {{ name: string, low: string, high: string, hint: string, words: (deg: number) => string, spoken: (deg: number) => string }} AngleTexts
 *
 * `leftIsHigh`: the high end of the slider is on the left. `named`: where its name and its angle in words stand, if not over the slider.
 * @typedef {{ leftIsHigh?: boolean, named?: HTMLElement }} TurnOptions
 */

const STEP_DEG = 1;
const PAGE_DEG = 5;
const FINE_DEG = 0.1;
/**
 * What a key on a slider adds, degrees, the high end being on the right; Left and Right follow the screen.
 * @type {Record<string, number>}
 */
export const SLIDER_KEYS_DEG = { ArrowLeft: -STEP_DEG, ArrowRight: STEP_DEG, ArrowUp: STEP_DEG, ArrowDown: -STEP_DEG, PageUp: PAGE_DEG, PageDown: -PAGE_DEG };

/**
 * Builds one turn control for an angle, in the state with its unit. `app.change` gets every new one.
 * @param {HTMLElement} holder
 * @param {Angle} key
 * @param {[number, number]} range
 * @param {TurnApp} app
 * @param {TurnTexts & Partial<Record<Angle, AngleTexts>>} texts
 * @param {TurnOptions} [options]
 */
export function turnControl(holder, key, [low, high], app, texts, { leftIsHigh = false, named } = {}) {
  const words = texts[key];
  if (!words) throw new Error(`no texts of ${key}`);
  const angle = /** @type {const} */ (`${key}_deg`);
  const id = `turn-${key}`;
  const slider = make('input', { type: 'range', id, min: low, max: high, step: FINE_DEG, class: leftIsHigh ? 'left-is-high' : '' });
  const typed = make('input', { type: 'number', id: `${id}-number`, min: low, max: high, step: STEP_DEG, inputmode: 'text', 'aria-label': texts.turn.number(words.name), 'aria-describedby': `${id}-hint` });
  const spoken = make('span', { class: 'turn-words', id: `${id}-words` });
  const button = (/** @type {string} */ end, /** @type {boolean} */ onTheLeft, /** @type {number} */ step) => {
    // Its name is its text with the control's name before it. On a narrow screen the word is not shown; the ends of the
    // track are then named below it.
    const text = ['1° ', make('span', { class: 'nudge-word' }, end)];
    const element = make('button', { type: 'button', class: `nudge ${onTheLeft ? 'to-left' : 'to-right'}` }, make('span', { class: 'unseen' }, `${words.name} `), ...text);
    element.addEventListener('click', () => set(now + step));
    return element;
  };
  const down = button(words.low, !leftIsHigh, -STEP_DEG);
  const up = button(words.high, leftIsHigh, STEP_DEG);
  const [first, last] = leftIsHigh ? [up, down] : [down, up];
  const [firstEnd, lastEnd] = leftIsHigh ? [words.high, words.low] : [words.low, words.high];
  const complaint = make('p', { class: 'complaint', role: 'alert', hidden: true });
  const head = make('div', { class: 'turn-head' },
    make('label', { for: id, class: 'turn-name' }, words.name), spoken,
    make('span', { class: 'turn-hint', id: `${id}-hint` }, words.hint));
  named?.append(head);
  holder.append(
    make('div', { class: 'turn', id: `${id}-control` }, ...(named ? [] : [head]),
      make('div', { class: 'turn-row' }, first, slider, last, typed),
      make('div', { class: 'turn-ends', 'aria-hidden': 'true' }, make('span', {}, firstEnd), make('span', {}, lastEnd)),
      complaint),
  );

  let now = 0;
  const rounded = (/** @type {number} */ deg) => Math.round(deg / FINE_DEG) * FINE_DEG;
  /** @param {number} deg */
  function set(deg) {
    const clamped = Math.min(high, Math.max(low, rounded(deg)));
    complaint.hidden = true;
    now = tenth(clamped);
    app.change({ [angle]: now });
    // What stands in the way may have stopped it.
    now = /** @type {Partial<Record<AngleKey, number>>} */ (app.state)[angle] ?? now;
  }

  slider.addEventListener('input', () => set(Number(slider.value)));
  slider.addEventListener('keydown', (event) => {
    const step = SLIDER_KEYS_DEG[event.key];
    if (step === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    // The left arrow moves the thumb left whichever end is the high one.
    set(now + (leftIsHigh && /Left|Right/.test(event.key) ? -step : step));
  });
  typed.addEventListener('change', () => {
    const deg = typed.value.trim() === '' ? NaN : Number(typed.value);
    if (!Number.isFinite(deg)) complain(texts.turn.notNumber(words.name));
    else {
      set(deg);
      if (deg < low || deg > high) complain(texts.turn.outOfRange(words.name, low, high));
    }
    typed.value = String(now);
  });
  /** @param {string} text */
  function complain(text) {
    say(complaint, text);
    complaint.hidden = false;
  }

  return (/** @type {{ [K in AngleKey]?: number }} */ state) => {
    now = state[angle] ?? 0;
    slider.value = String(now);
    slider.setAttribute('aria-valuetext', words.spoken(now));
    // The track is filled from zero to the thumb, so the eye sees which way and how far.
    fillTrack(slider, low, high, 0, now);
    if (!typed.matches(':focus')) typed.value = String(now);
    say(spoken, words.words(now));
    down.disabled = now <= low;
    up.disabled = now >= high;
  };
}

/**
 * Fills a slider's track from its place of rest to the thumb.
 * @param {HTMLInputElement} slider
 * @param {number} low
 * @param {number} high
 * @param {number} rest
 * @param {number} now
 */
export function fillTrack(slider, low, high, rest, now) {
  const at = (/** @type {number} */ value) => `${(100 * (value - low)) / (high - low)}%`;
  slider.style.setProperty('--from', at(Math.min(rest, now)));
  slider.style.setProperty('--to', at(Math.max(rest, now)));
}

/** A hand that has moved less than this has not begun to turn, CSS px. A choice, no source. */
const THRESHOLD_PX = 6;
const DEG_PER_SURFACE = 90;

/**
 * Dragging on the picture: the receptor goes the way the hand goes, along the axis that the hand has set out on, oblique or tilt. A second finger
 * means to enlarge: what the first has turned is taken back, and nothing turns until all have left.
 * @param {HTMLElement} surface
 * @param {TurnApp} app
 */
export function dragToTurn(surface, app) {
  /** @type {{ x: number, y: number, oblique_deg: number, tilt_deg: number, axis: 'oblique_deg' | 'tilt_deg' | null } | null} */
  let from = null;
  const release = () => {
    if (!from) return;
    from = null;
    app.hold(false);
  };
  /** It was never meant to turn. */
  const takeBack = () => {
    if (from?.axis) app.change({ [from.axis]: from[from.axis] });
    release();
  };
  surface.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    if (from || !event.isPrimary) return takeBack();
    surface.setPointerCapture(event.pointerId);
    from = { x: event.clientX, y: event.clientY, oblique_deg: app.state.oblique_deg, tilt_deg: app.state.tilt_deg, axis: null };
    app.hold(true);
  });
  surface.addEventListener('pointermove', (event) => {
    if (!from || !event.isPrimary) return;
    const moved_px = { oblique_deg: from.x - event.clientX, tilt_deg: from.y - event.clientY };
    if (!from.axis) {
      if (Math.hypot(moved_px.oblique_deg, moved_px.tilt_deg) < THRESHOLD_PX) return;
      from.axis = Math.abs(moved_px.oblique_deg) >= Math.abs(moved_px.tilt_deg) ? 'oblique_deg' : 'tilt_deg';
    }
    const [low, high] = app.catalogue.range[from.axis];
    const wanted = from[from.axis] + (moved_px[from.axis] * DEG_PER_SURFACE) / surface.clientWidth;
    app.change({ [from.axis]: tenth(Math.min(high, Math.max(low, wanted))) });
  });
  surface.addEventListener('pointerup', release);
  // The browser took the finger for scrolling, or a second one came.
  surface.addEventListener('pointercancel', takeBack);
  surface.addEventListener('lostpointercapture', release);
}
