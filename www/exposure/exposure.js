// The exposure panel: where the picture comes from, what the beam is set to, and what the exposures have cost so far.

import { byId, choices, make, say, segments } from '../base/dom.js';
import { pedal } from './pedal.js';
import { save } from '../base/save.js';
import { texts } from '../words/texts.js';

const t = texts.exposure;
const PERCENT_STEP = 5;
const SIDES = [['collimation-width', 0], ['collimation-height', 1]];
const FIGURES = ['exposures', 'beam', 'kerma', 'product', 'technique'];

/** What the beam is set to when the page opens. */
export const FIRST_BEAM = { pulses_per_s: 8, low_dose: false, open: [1, 1], magnification: 1 };

/**
 * Builds the panel and the two buttons under the picture. `act`: `take(kind, pulses)` (false if there was no picture), `release()`,
 * `reset()`, `record()` for the file. Returns `{ update(state, dose, ready), on(), stop() }`.
 */
export function exposurePanel(app, act) {
  const showSource = segments(byId('sources'), 'source', [['live', t.live], ['exposures', t.exposures]], (source) => app.change({ byExposure: source === 'exposures' }));
  const set = (patch) => app.change({ beam: { ...app.state.beam, ...patch } });
  const { beam } = app.catalogue;
  const showRate = choices(byId('pulse-rate'), beam.pulses_per_s.map((n) => [n, t.rate(n)]), (n) => set({ pulses_per_s: Number(n) }));
  const showMagnification = choices(byId('magnification'), beam.magnification.map((m) => [m, t.magnified(m)]), (m) => set({ magnification: Number(m) }));
  const lowDose = byId('low-dose');
  lowDose.addEventListener('change', () => set({ low_dose: lowDose.checked }));
  const shutters = SIDES.map(([id, side]) => shutter(byId(id), byId(`${id}-words`), beam.open, (share) => set({ open: app.state.beam.open.with(side, share) })));
  const figures = Object.fromEntries(FIGURES.map((name) => [name, figure(name)]));

  byId('spot').addEventListener('click', () => {
    fluoroscopy.stop();
    act.take('spot', 1);
  });
  const latch = byId('latch');
  const fluoroscopy = pedal(byId('fluoroscopy'), () => latch.checked, {
    rate: () => app.state.beam.pulses_per_s,
    began: () => (byId('beam-settings').disabled = true),
    pulse: (n) => act.take('fluoroscopy', n),
    ended: () => {
      byId('beam-settings').disabled = false;
      act.release();
    },
  });
  byId('dose-reset').addEventListener('click', () => {
    fluoroscopy.stop();
    act.reset();
  });
  byId('dose-save').addEventListener('click', () => save('dose.json', act.record()));

  return {
    on: fluoroscopy.on,
    stop: fluoroscopy.stop,
    update(state, dose, ready) {
      const { byExposure } = state;
      showSource(byExposure ? 'exposures' : 'live');
      say(byId('source-note'), byExposure ? t.exposuresNote : t.liveNote);
      byId('beam').hidden = byId('beam-settings').hidden = !byExposure;
      byId('spot').disabled = byId('fluoroscopy').disabled = !ready;
      showRate(String(state.beam.pulses_per_s));
      showMagnification(String(state.beam.magnification));
      lowDose.checked = state.beam.low_dose;
      shutters.forEach((show, i) => show(state.beam.open[i]));
      const any = Boolean(dose?.exposures);
      byId('dose').hidden = !byExposure && !any;
      for (const name of FIGURES) say(figures[name], any ? t.figure[name](dose) : t.nothing[name]);
      say(byId('dose-saving'), dose?.saving ? t.saving(dose.saving) : '');
      byId('dose-saving').hidden = !dose?.saving;
      byId('dose-reset').disabled = byId('dose-save').disabled = !any;
    },
  };
}

/** One pair of shutters: a slider in percent of the field. Returns a function that shows a share. */
function shutter(slider, words, [least, most], onSet) {
  Object.assign(slider, { min: 100 * least, max: 100 * most, step: PERCENT_STEP });
  slider.addEventListener('input', () => onSet(Number(slider.value) / 100));
  return (share) => {
    const percent = Math.round(100 * share);
    slider.value = String(percent);
    slider.setAttribute('aria-valuetext', t.open(percent));
    slider.style.setProperty('--from', '0%');
    slider.style.setProperty('--to', `${(100 * (share - least)) / (most - least)}%`);
    say(words, t.open(percent));
  };
}

function figure(name) {
  const value = make('dd', { id: `dose-${name}` });
  byId('dose-figures').append(make('div', { class: 'figure' }, make('dt', {}, t.figureName[name]), value));
  return value;
}
