// The page about the model: its numbers are read from model.json, which the engine computed, and its pictures are drawn by the
// engine here. The text stands in the HTML and can be read without either.

import { themeControl } from '../controls/case.js';
import { loadEngine } from '../engine/room.js';
import { drawCharts } from './charts.js';
import { drawFilms } from './films.js';
import { fillNumbers } from './numbers.js';
import { drawSweeps } from './sweeps.js';

const words = document.getElementById('words').dataset;
const root = document.documentElement;

/** A picture that is not there says why. */
function state(figures, text) {
  for (const figure of figures) {
    const line = figure.querySelector('.figure-state');
    line.textContent = text;
    line.hidden = text === '';
  }
}

const drawn = (kind) => [...document.querySelectorAll(`figure[data-needs="${kind}"]`)];

async function numbers() {
  const response = await fetch(new URL('../model.json', import.meta.url));
  if (!response.ok) throw new Error(String(response.status));
  return response.json();
}

/** Whether the engine of this page finds the views that stand in the numbers; which levels it does not. */
function differing(TeachingRoom, told) {
  const room = new TeachingRoom('average', 'L4', 'left');
  const wrong = told.views.filter((v) => v.patient === 'average').filter((v) => {
    room.setTarget(v.level, v.side);
    const sign = v.side === 'left' ? 1 : -1;
    return room.report().views.some(({ view, best }) => Math.abs(best.oblique * sign - v[view][0]) > 0.06 || Math.abs(best.tilt - v[view][1]) > 0.06);
  });
  return [room, [...new Set(wrong.map((v) => v.level))]];
}

async function begin() {
  themeControl(() => {});
  if (navigator.languages?.length && !navigator.languages.some((l) => l.startsWith('en'))) document.getElementById('language-note').hidden = false;
  state(drawn('numbers'), words.waiting);
  state(drawn('engine'), words.waiting);
  let told = null;
  try {
    told = await numbers();
    fillNumbers(told);
    drawCharts(told);
    state(drawn('numbers'), '');
  } catch {
    state(drawn('numbers'), words.noNumbers);
  }
  try {
    const { TeachingRoom } = await loadEngine(() => {});
    const [room, wrong] = differing(TeachingRoom, told ?? { views: [] });
    document.getElementById('engine-check').textContent = !told ? words.unchecked : wrong.length ? `${words.differs} ${wrong.join(', ')}.` : words.agrees;
    drawSweeps(room);
    await drawFilms(room, told);
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
