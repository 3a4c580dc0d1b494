// How long a frame takes: `bench.html?frames=240` turns the C-arm once round an orbit and shows median and 95th percentile.
// The figures are also on `globalThis.downbeamBench` (a promise) for a script.

import { outlineStyle } from '../film/film-look.js';
import { byId, make, penOf, say } from '../base/dom.js';
import { loadEngine } from '../engine/room.js';
import { texts } from '../words/texts.js';

const WARM_UP = 12;
/** A film at rest is drawn after so many frames. */
const REST_EVERY = 8;
const STILL_PIXELS = 1024;
const asked = Number(new URLSearchParams(location.search).get('frames'));
const FRAMES = Number.isInteger(asked) && asked >= 10 && asked <= 5000 ? asked : 240;

/**
 * @typedef {{ median_ms: number, p95_ms: number }} Figure
 * @typedef {keyof typeof texts.bench.rows} RowName
 */

document.title = texts.bench.title;
say(byId('title'), texts.bench.title);
/** @type {typeof globalThis & { downbeamBench?: Promise<unknown> }} */ (globalThis).downbeamBench = run().catch((error) => {
  say(byId('state'), texts.bench.failed(error.message));
  return { failed: error.message };
});

async function run() {
  const started = performance.now();
  const engine = await loadEngine(() => {});
  const { TeachingRoom } = engine;
  const loaded_ms = performance.now() - started;
  const patients = [];
  for (const { name } of TeachingRoom.patients()) {
    const began = performance.now();
    const shaped = new TeachingRoom(name, 'L4', 'left');
    patients.push(performance.now() - began);
    shaped.free();
    await pause();
  }
  const room = new TeachingRoom('average', 'L4', 'left');
  say(byId('state'), texts.bench.running(FRAMES));

  const film = penOf(byId('radiograph', HTMLCanvasElement), { alpha: false });
  const pen = penOf(byId('overlay', HTMLCanvasElement));
  const style = outlineStyle({ boneDark: true }, pen.canvas.width);
  /** @type {Record<Exclude<RowName, 'patient'>, number[]>} */
  const times = { radiograph: [], outlines: [], report: [], frame: [], still: [] };
  for (let i = -WARM_UP; i < FRAMES; i++) {
    const turn = (2 * Math.PI * i) / FRAMES;
    room.setOrientation(45 * Math.sin(turn), 20 * Math.cos(turn));
    const radiograph = timed(() => room.drawRadiograph(film, true));
    const outlines = timed(() => {
      pen.clearRect(0, 0, pen.canvas.width, pen.canvas.height);
      room.drawOutlines(pen, style);
    });
    const report = timed(() => room.report());
    const times_ms = { radiograph, outlines, report, frame: radiograph + outlines + report };
    if (i >= 0) for (const key of keysOf(times_ms)) times[key].push(times_ms[key]);
    if (i % REST_EVERY === 0) {
      const still = timed(() => {
        room.beginStill(STILL_PIXELS);
        while (!room.stepStill());
        room.showStill(film, true);
      });
      if (i >= 0) times.still.push(still);
    }
    if (i % 4 === 0) await pause();
  }
  const lists = { ...times, patient: patients };
  const figures = /** @type {Record<RowName, Figure>} */ (Object.fromEntries(keysOf(lists).map((key) => [key, summary(lists[key])])));
  show(figures);
  // Once started, the glue's start function only hands the engine's exports out again.
  const { memory } = await engine.default();
  return { frames: FRAMES, loaded_ms, engine_memory_MB: memory.buffer.byteLength / 1e6, figures };
}

/**
 * @template {string} K
 * @param {Record<K, unknown>} of
 */
const keysOf = (of) => /** @type {K[]} */ (Object.keys(of));

/** @param {() => void} act */
function timed(act) {
  const started = performance.now();
  act();
  return performance.now() - started;
}

/**
 * @param {number[]} list
 * @returns {Figure}
 */
function summary(list) {
  const sorted = [...list].sort((a, b) => a - b);
  const at = (/** @type {number} */ share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  return { median_ms: at(0.5), p95_ms: at(0.95) };
}

/** @param {Record<RowName, Figure>} figures */
function show(figures) {
  const row = (/** @type {RowName} */ name, /** @type {Figure} */ { median_ms, p95_ms }) => make('tr', {}, make('th', { scope: 'row' }, texts.bench.rows[name]), make('td', {}, median_ms.toFixed(2)), make('td', {}, p95_ms.toFixed(2)));
  const head = make('tr', {}, ...texts.bench.columns.map((c) => (c ? make('th', { scope: 'col' }, c) : make('td', {}))));
  byId('figures').append(head, ...keysOf(figures).map((name) => row(name, figures[name])));
  byId('figures').hidden = false;
  say(byId('state'), texts.bench.done(FRAMES));
}

/** Lets the browser paint. */
const pause = () => new Promise((next) => setTimeout(next));
