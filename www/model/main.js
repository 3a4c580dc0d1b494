// The page about the model: its numbers are read from model.json, which the engine computed, and its pictures are drawn by the
// engine here. The text stands in the HTML and can be read without either.

import { byId, say, within } from '../base/dom.js';
import { themeControl } from '../controls/case.js';
import { loadEngine } from '../engine/room.js';
import { drawCharts } from './charts.js';
import { drawFilms } from './films.js';
import { fillNumbers } from './numbers.js';
import { drawSweeps } from './sweeps.js';

/**
 * @import { TeachingRoom as Room } from '../pkg/downbeam.js'
 * @import { Model } from './numbers.js'
 */

const words = byId('words').dataset;
const root = document.documentElement;

/**
 * A picture that is not there says why.
 * @param {HTMLElement[]} figures
 * @param {string} text
 */
function state(figures, text = '') {
  for (const figure of figures) {
    const line = within(figure, '.figure-state');
    line.textContent = text;
    line.hidden = text === '';
  }
}

const drawn = (/** @type {string} */ kind) => [.../** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(`figure[data-needs="${kind}"]`))];

/** @returns {Promise<Model>} */
async function numbers() {
  const response = await fetch(new URL('../model.json', import.meta.url));
  if (!response.ok) throw new Error(String(response.status));
  return response.json();
}

/**
 * Whether the engine of this page finds the views that stand in the numbers; which levels it does not.
 * @param {typeof Room} TeachingRoom
 * @param {Model['views']} views
 * @returns {[Room, string[]]}
 */
function differing(TeachingRoom, views) {
  const room = new TeachingRoom('average', 'L4', 'left');
  const wrong = views.filter((v) => v.patient === 'average').filter((v) => {
    room.setTarget(v.level, v.side);
    const sign = v.side === 'left' ? 1 : -1;
    return room.report().views.some(({ view, best }) => {
      const place = v[view];
      return !place || Math.abs(best.oblique * sign - place[0]) > 0.06 || Math.abs(best.tilt - place[1]) > 0.06;
    });
  });
  return [room, [...new Set(wrong.map((v) => v.level))]];
}

async function begin() {
  themeControl(() => {});
  if (navigator.languages?.length && !navigator.languages.some((l) => l.startsWith('en'))) byId('language-note').hidden = false;
  state(drawn('numbers'), words.waiting);
  state(drawn('engine'), words.waiting);
  /** @type {Model | null} */
  let model = null;
  try {
    model = await numbers();
    fillNumbers(model);
    drawCharts(model);
    state(drawn('numbers'), '');
  } catch {
    state(drawn('numbers'), words.noNumbers);
  }
  try {
    const { TeachingRoom } = await loadEngine(() => {});
    const [room, wrong] = differing(TeachingRoom, model?.views ?? []);
    say(byId('engine-check'), (!model ? words.unchecked : wrong.length ? `${words.differs} ${wrong.join(', ')}.` : words.agrees) ?? '');
    drawSweeps(room);
    await drawFilms(room, model);
    room.free();
    state(drawn('engine').filter((f) => f.dataset.drawn === 'yes'), '');
    state(drawn('engine').filter((f) => f.dataset.drawn !== 'yes'), words.noNumbers);
  } catch {
    state(drawn('engine').filter((f) => f.dataset.drawn !== 'yes'), words.noEngine);
  }
  root.dataset.settled = 'yes';
  if (location.hash) document.getElementById(location.hash.slice(1))?.scrollIntoView();
}

begin();
