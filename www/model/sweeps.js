// A criterion against the control that moves it, asked of the engine angle by angle.

import { plot } from './plot.js';

/**
 * @import { Tolerance } from '../pkg/values.js'
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 */

/**
 * `data-sweep="criterion control from to step"`; the other control stays where the best view of `data-view` has it.
 * @param {TeachingRoom} room
 */
export function drawSweeps(room) {
  for (const figure of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('figure[data-sweep]'))) {
    const [id, control, ...range] = (figure.dataset.sweep ?? '').split(' ');
    const [from, to, step] = range.map(Number);
    room.setTarget(figure.dataset.level ?? 'L4', 'left');
    const best = room.report().views.find((v) => v.view === figure.dataset.view)?.best;
    if (!best) continue;
    /** @type {Tolerance} */
    let tolerance = { full: 0, none: 0 };
    /** @type {[number, number][]} */
    const points = [];
    for (let i = 0; from + i * step <= to; i++) {
      const angle = from + i * step;
      room.setOrientation(control === 'oblique' ? angle : best.oblique, control === 'tilt' ? angle : best.tilt);
      const criterion = room.report().criteria.find((c) => c.id === id);
      if (!criterion) continue;
      tolerance = criterion.tolerance;
      if (criterion.value !== null) points.push([angle, criterion.value]);
    }
    const values = points.map((p) => p[1]);
    const pad = 1.15 * tolerance.none;
    const y = [Math.min(...values, id === 'lateral' ? 0 : -pad), Math.max(...values, pad)];
    const band = (/** @type {number} */ limit) => ({ low: Math.max(-limit, y[0]), high: Math.min(limit, y[1]) });
    plot(figure, { x: [from, to], y, series: [{ key: 'value', points }], bands: [band(tolerance.none), band(tolerance.full)] });
  }
}
