// The charts whose numbers stand in model.json.

import { plot } from './plot.js';

/**
 * @import { Model } from './numbers.js'
 * @import { Plot, Series } from './plot.js'
 */

/**
 * The entry of a list that there must be.
 * @template T
 * @param {readonly T[]} list
 * @param {(entry: T) => boolean} is
 */
function the(list, is) {
  const found = list.find(is);
  if (found === undefined) throw new Error('an entry of model.json is missing');
  return found;
}
/** Exposures of the average patient's L4 in the true AP. */
const usual = (/** @type {Model} */ model, /** @type {string} */ name) => the(model.beam.exposures, (e) => e.patient === 'average' && e.view === 'true_ap' && e.name === name);
const most = (/** @type {Series[]} */ series) => Math.max(...series.flatMap((s) => s.points.map((p) => p[1])));
const BOUND = 1.08;

/** @type {Record<string, (model: Model) => Plot>} */
const CHARTS = {
  attenuation(model) {
    const keys = ['cortical_bone', 'marrow', 'soft_tissue', 'adipose'];
    const series = keys.map((key) => ({ key, points: model.beam.energies_kev.map((e, i) => [e, the(model.beam.materials, (material) => material.name === key).per_cm[i]]) }));
    return { x: [40, 80], y: [0.1, 2], log: true, series };
  },
  energy(model) {
    const series = [{ key: 'energy', points: model.beam.tube.map((row) => [row.kvp, row.energy_kev]) }];
    return { x: [60, 110], y: [40, 75], series };
  },
  collimation(model) {
    const points = (/** @type {'kap_mgy_cm2' | 'kerma_mgy'} */ of) => ['usual', ...[0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3].map((s) => `open ${s}`)].map((name) => usual(model, name)).map((e) => [100 * e.open_share, (100 * e[of]) / usual(model, 'usual')[of]]);
    const series = [{ key: 'kap', points: points('kap_mgy_cm2') }, { key: 'kerma', points: points('kerma_mgy') }];
    return { x: [0, 100], y: [0, BOUND * most(series)], series };
  },
  pulses(model) {
    const rates = [1, 2, 4, 8, 15, 30];
    const points = rates.map((rate) => [rate, usual(model, `rate ${rate}`).kerma_mgy / model.beam.seconds]);
    return { x: [0, 30], y: [0, BOUND * Math.max(...points.map((p) => p[1]))], series: [{ key: 'rate', points }] };
  },
  obliques(model) {
    const names = ['L1', 'L2', 'L3', 'L4', 'L5'];
    const keys = ['average', 'worn', 'slipped', 'transitional', 'large', 'curved'];
    const of = (/** @type {string} */ key) => names.map((level, i) => [i, the(model.views, (v) => v.patient === key && v.level === level && v.side === 'left').oblique[0]]);
    /** @type {[number, number, number][]} */
    const whiskers = names.map((level, i) => {
      const { oblique_deg } = the(model.spread.levels, (l) => l.level === level);
      return [oblique_deg[1], oblique_deg[3], i];
    });
    const series = keys.map((key) => ({ key, points: of(key), dots: true }));
    const low = Math.min(...series.flatMap((s) => s.points.map((p) => p[1])), ...whiskers.map((w) => w[0]));
    return { x: [-0.5, 4.5], y: [Math.floor(low / 5) * 5 - 5, BOUND * Math.max(most(series), ...whiskers.map((w) => w[1]))], series, names, whiskers };
  },
  tilts(model) {
    const names = ['L1', 'L2', 'L3', 'L4', 'L5', 'S1'];
    const series = /** @type {const} */ (['prone', 'standing']).map((key) => ({ key, points: names.map((level, i) => [i, the(model.column[key].levels, (l) => l.level === level).upper_tilt_deg]) }));
    return { x: [-0.5, 5.5], y: [-20, 45], series, names };
  },
  triangle(model) {
    const points = model.nerves.open_triangle_l5;
    return { x: [0, 45], y: [0, BOUND * Math.max(...points.map((p) => p[1]))], series: [{ key: 'open', points }] };
  },
  bend(model) {
    const series = model.needle.bends.map((b) => ({ key: `${b.gauge} ${b.medium}`, points: b.path }));
    return { x: [0, 90], y: [0, BOUND * most(series)], series };
  },
};

/**
 * All of them.
 * @param {Model} model
 */
export function drawCharts(model) {
  for (const figure of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('figure[data-chart]'))) plot(figure, CHARTS[figure.dataset.chart ?? ''](model));
}
