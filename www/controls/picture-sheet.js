// What the picture's sheet holds besides its switches: the table and the window. Loaded after the first picture.

import { make, say } from '../base/dom.js';
import { texts } from '../words/texts.js';
import { fillTrack } from './turn.js';

/**
 * @import { App, PageState } from '../state/page-state.js'
 * @import { Place } from '../state/positioning.js'
 */

/**
 * Moves the table under the beam, 5 mm a press, and puts it back. Returns an update function.
 * @param {Element} holder
 * @param {App} app
 */
export function tableControl(holder, app) {
  const STEP_MM = 5;
  const LIMIT_MM = 60;
  const t = texts.table;
  const words = make('span', { class: 'turn-words' });
  const move = (/** @type {string} */ text, /** @type {'table_x_mm' | 'table_z_mm'} */ key, /** @type {number} */ step) => {
    const element = make('button', { type: 'button', class: 'nudge' }, make('span', { class: 'unseen' }, `${t.by} `), text);
    element.addEventListener('click', () => {
      const next = Math.min(LIMIT_MM, Math.max(-LIMIT_MM, app.state[key] + step));
      app.change({ [key]: next });
    });
    return element;
  };
  const reset = make('button', { type: 'button', class: 'nudge', id: 'straighten' }, texts.turn.straighten);
  reset.addEventListener('click', () => app.change({ table_x_mm: 0, table_z_mm: 0, rotation_deg: 0, contrast: 100, brightness: 0 }));
  holder.append(
    make('div', { class: 'turn', role: 'group', 'aria-label': t.name },
      make('div', { class: 'turn-head' }, make('span', { class: 'turn-name' }, t.name), words),
      make('div', { class: 'turn-row wrap' },
        move(t.left, 'table_x_mm', STEP_MM), move(t.right, 'table_x_mm', -STEP_MM),
        move(t.head, 'table_z_mm', STEP_MM), move(t.feet, 'table_z_mm', -STEP_MM), reset)),
  );
  return (/** @type {Place} */ state) => say(words, t.words(state.table_x_mm, state.table_z_mm));
}

/**
 * Contrast and brightness of the picture, percent against what the engine chooses. Returns an update function.
 * @param {Element} holder
 * @param {App} app
 */
export function windowControl(holder, app) {
  const t = texts.window;
  const rows = /** @type {const} */ ([
    ['contrast', 50, 200, 100],
    ['brightness', -50, 50, 0],
  ]).map(([key, low, high, rest]) => {
    const slider = make('input', { type: 'range', id: `window-${key}`, min: low, max: high, step: 5 });
    const words = make('span', { 'aria-hidden': 'true' });
    slider.addEventListener('input', () => app.change({ [key]: Number(slider.value) }));
    holder.append(make('div', { class: 'shutter' }, make('label', { for: slider.id }, t[key]), slider, words));
    return { key, slider, words, fill: (/** @type {number} */ now) => fillTrack(slider, low, high, rest, now) };
  });
  return (/** @type {PageState} */ state) => {
    for (const { key, slider, words, fill } of rows) {
      slider.value = String(state[key]);
      fill(state[key]);
      slider.setAttribute('aria-valuetext', t.percent(state[key]));
      say(words, t.percent(state[key]));
    }
  };
}
