// The charts whose numbers stand in model.json.

import { plot } from './plot.js';

const byName = (list, name) => list.find((entry) => entry.name === name);
/** Exposures of the average patient's L4 in the true AP. */
const usual = (told, name) => told.beam.exposures.find((e) => e.patient === 'average' && e.view === 'true_ap' && e.name === name);
const most = (series) => Math.max(...series.flatMap((s) => s.points.map((p) => p[1])));
const BOUND = 1.08;

const CHARTS = {
  attenuation(told) {
    const keys = ['cortical_bone', 'marrow', 'soft_tissue', 'adipose'];
    const series = keys.map((key) => ({ key, points: told.beam.energies_kev.map((e, i) => [e, byName(told.beam.materials, key).per_cm[i]]) }));
    return { x: [40, 80], y: [0.1, 2], log: true, series };
  },
  energy(told) {
    const series = [{ key: 'energy', points: told.beam.tube.map((row) => [row.kvp, row.energy_kev]) }];
    return { x: [60, 110], y: [40, 75], series };
  },
  collimation(told) {
    const points = (of) => ['usual', ...[0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3].map((s) => `open ${s}`)].map((name) => usual(told, name)).map((e) => [100 * e.open_share, (100 * e[of]) / usual(told, 'usual')[of]]);
    const series = [{ key: 'kap', points: points('kap_mgy_cm2') }, { key: 'kerma', points: points('kerma_mgy') }];
    return { x: [0, 100], y: [0, BOUND * most(series)], series };
  },
  pulses(told) {
    const rates = [1, 2, 4, 8, 15, 30];
    const points = rates.map((rate) => [rate, usual(told, `rate ${rate}`).kerma_mgy / told.beam.seconds]);
    return { x: [0, 30], y: [0, BOUND * Math.max(...points.map((p) => p[1]))], series: [{ key: 'rate', points }] };
  },
  obliques(told) {
    const names = ['L1', 'L2', 'L3', 'L4', 'L5'];
    const keys = ['average', 'worn', 'slipped', 'transitional', 'large', 'curved'];
    const of = (key) => names.map((level, i) => [i, told.views.find((v) => v.patient === key && v.level === level && v.side === 'left').oblique[0]]);
    const whiskers = names.map((level, i) => {
      const { oblique_deg } = told.spread.levels.find((l) => l.level === level);
      return [oblique_deg[1], oblique_deg[3], i];
    });
    const series = keys.map((key) => ({ key, points: of(key), dots: true }));
    const low = Math.min(...series.flatMap((s) => s.points.map((p) => p[1])), ...whiskers.map((w) => w[0]));
    return { x: [-0.5, 4.5], y: [Math.floor(low / 5) * 5 - 5, BOUND * Math.max(most(series), ...whiskers.map((w) => w[1]))], series, names, whiskers };
  },
  tilts(told) {
    const names = ['L1', 'L2', 'L3', 'L4', 'L5', 'S1'];
    const series = ['prone', 'standing'].map((key) => ({ key, points: names.map((level, i) => [i, told.column[key].levels.find((l) => l.level === level).upper_tilt_deg]) }));
    return { x: [-0.5, 5.5], y: [-20, 45], series, names };
  },
  triangle(told) {
    const points = told.nerves.open_triangle_l5;
    return { x: [0, 45], y: [0, BOUND * Math.max(...points.map((p) => p[1]))], series: [{ key: 'open', points }] };
  },
  bend(told) {
    const series = told.needle.bends.map((b) => ({ key: `${b.gauge} ${b.medium}`, points: b.path }));
    return { x: [0, 90], y: [0, BOUND * most(series)], series };
  },
};

/** All of them. */
export function drawCharts(told) {
  for (const figure of document.querySelectorAll('figure[data-chart]')) plot(figure, CHARTS[figure.dataset.chart](told));
}
