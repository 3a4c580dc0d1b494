// How long a frame takes: `bench.html?frames=240` turns the C-arm once round an orbit and shows median and 95th percentile.
// The figures are also on `globalThis.downbeamBench` (a promise) for a script.

import { outlineStyle } from '../film/film-look.js';
import { byId, make, say } from '../base/dom.js';
import { loadEngine } from '../engine/room.js';
import { texts } from '../words/texts.js';

const WARM_UP = 12;
const asked = Number(new URLSearchParams(location.search).get('frames'));
const FRAMES = Number.isInteger(asked) && asked >= 10 && asked <= 5000 ? asked : 240;

document.title = texts.bench.title;
say(byId('title'), texts.bench.title);
globalThis.downbeamBench = run().catch((error) => {
  say(byId('state'), texts.bench.failed(error.message));
  return { failed: error.message };
});

async function run() {
  const started = performance.now();
  const engine = await loadEngine(() => {});
  const { TeachingRoom } = engine;
  const loaded_ms = performance.now() - started;
  const patients = [];
  let room;
  for (const { name } of TeachingRoom.patients()) {
    room?.free();
    patients.push(timed(() => (room = new TeachingRoom(name, 'L4', 'left'))));
    await pause();
  }
  room.setPatient('average');
  say(byId('state'), texts.bench.running(FRAMES));

  const film = byId('radiograph').getContext('2d', { alpha: false });
  const pen = byId('overlay').getContext('2d');
  const style = outlineStyle({ boneDark: true }, pen.canvas.width);
  const times = { radiograph: [], outlines: [], report: [], frame: [] };
  for (let i = -WARM_UP; i < FRAMES; i++) {
    const turn = (2 * Math.PI * i) / FRAMES;
    const frame = {};
    room.setOrientation(45 * Math.sin(turn), 20 * Math.cos(turn));
    frame.radiograph = timed(() => room.drawRadiograph(film, true));
    frame.outlines = timed(() => {
      pen.clearRect(0, 0, pen.canvas.width, pen.canvas.height);
      room.drawOutlines(pen, style);
    });
    frame.report = timed(() => room.report());
    frame.frame = frame.radiograph + frame.outlines + frame.report;
    if (i >= 0) for (const key of Object.keys(times)) times[key].push(frame[key]);
    if (i % 4 === 0) await pause();
  }
  const figures = Object.fromEntries(Object.entries({ ...times, patient: patients }).map(([key, list]) => [key, summary(list)]));
  show(figures);
  // Once started, the glue's start function only hands the engine's exports out again.
  const { memory } = await engine.default();
  return { frames: FRAMES, loaded_ms, engine_memory_MB: memory.buffer.byteLength / 1e6, figures };
}

function timed(act) {
  const started = performance.now();
  act();
  return performance.now() - started;
}

function summary(list) {
  const sorted = [...list].sort((a, b) => a - b);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  return { median_ms: at(0.5), p95_ms: at(0.95) };
}

function show(figures) {
  const row = (name, { median_ms, p95_ms }) => make('tr', {}, make('th', { scope: 'row' }, texts.bench.rows[name]), make('td', {}, median_ms.toFixed(2)), make('td', {}, p95_ms.toFixed(2)));
  const head = make('tr', {}, ...texts.bench.columns.map((c) => (c ? make('th', { scope: 'col' }, c) : make('td', {}))));
  byId('figures').append(head, ...Object.entries(figures).map(([name, figure]) => row(name, figure)));
  byId('figures').hidden = false;
  say(byId('state'), texts.bench.done(FRAMES));
}

/** Lets the browser paint. */
const pause = () => new Promise((next) => setTimeout(next));
