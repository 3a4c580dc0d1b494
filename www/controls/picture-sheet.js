// What the picture's sheet holds besides its switches: the table and the window. Loaded after the first picture.

import { make, say } from '../base/dom.js';
import { gantryLink as t } from '../words/gantry.js';
import { texts } from '../words/texts.js';
import { moveTable, tableButtons, tableStart, tableWords } from './table.js';
import { fillTrack } from './turn.js';

/**
 * @import { App, PageState } from '../state/page-state.js'
 * @import { Place } from '../state/positioning.js'
 */

/**
 * What the keys of the table do.
 * @param {App} app
 */
export const tableKey = (app) => (/** @type {string} */ way) => moveTable(app, way);

/**
 * Moves the table under the beam and puts it back. Returns an update function.
 * @param {Element} holder
 * @param {App} app
 */
export function tableControl(holder, app) {
  const words = make('span', { class: 'turn-words' });
  const reset = make('button', { type: 'button', class: 'nudge', id: 'straighten' });
  reset.addEventListener('click', () => app.change({ ...tableStart(app), rotation_deg: 0, contrast: 100, brightness: 0 }));
  holder.append(
    make('div', { class: 'turn', role: 'group', 'aria-label': t.table.name },
      make('div', { class: 'turn-head' }, make('span', { class: 'turn-name' }, t.table.name), words),
      make('div', { class: 'turn-row wrap' }, ...tableButtons((way) => moveTable(app, way)), reset)),
  );
  return (/** @type {Place} */ state) => {
    say(words, tableWords(app, state));
    say(reset, app.lesson?.asks.has('target_centred') ? t.table.putBack : texts.turn.straighten);
  };
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
