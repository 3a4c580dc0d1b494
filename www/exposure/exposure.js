// The exposure panel: where the picture comes from, what the beam is set to, and what the exposures have cost so far.

import { byId, choices, make, say, segments } from '../base/dom.js';
import { pedal } from './pedal.js';
import { save } from '../base/save.js';
import { texts } from '../words/texts.js';

/**
 * @import { BeamSettings, DicomRecord, DoseReadout } from '../pkg/values.js'
 * @import { App, Beam, PageState } from '../state/page-state.js'
 */

const t = texts.exposure;
const PERCENT_STEP = 5;
/** @type {[string, 0 | 1][]} */
const SIDES = [['collimation-width', 0], ['collimation-height', 1]];
const FIGURES = /** @type {const} */ (['exposures', 'beam', 'kerma', 'product', 'technique']);

/**
 * What the beam is set to when the page opens.
 * @type {Beam}
 */
export const FIRST_BEAM = { pulses_per_s: 8, low_dose: false, open: [1, 1], magnification: 1 };

/**
 * Builds the panel and the two buttons under the picture. `act`: `take(kind, pulses)` (false if there was no picture), `release()`,
 * `reset()`, `record()` for the file.
 * @param {App} app
 * @param {{ take: (kind: BeamSettings['kind'], pulses: number) => boolean, release: () => void, reset: () => void, record: () => DicomRecord & { caution: string } }} act
 */
export function exposurePanel(app, act) {
  const showSource = segments(byId('sources'), 'source', [['live', t.live], ['exposures', t.exposures]], (source) => app.change({ byExposure: source === 'exposures' }));
  /** @param {Partial<Beam>} patch */
  const set = (patch) => app.change({ beam: { ...app.state.beam, ...patch } });
  const { beam } = app.catalogue;
  const showRate = choices(byId('pulse-rate', HTMLSelectElement), beam.pulses_per_s.map((n) => /** @type {const} */ ([n, t.rate(n)])), (n) => set({ pulses_per_s: Number(n) }));
  const showMagnification = choices(byId('magnification', HTMLSelectElement), beam.magnification.map((m) => /** @type {const} */ ([m, t.magnified(m)])), (m) => set({ magnification: Number(m) }));
  const lowDose = byId('low-dose', HTMLInputElement);
  const spot = byId('spot', HTMLButtonElement);
  const pressed = byId('fluoroscopy', HTMLButtonElement);
  const settings = byId('beam-settings', HTMLFieldSetElement);
  lowDose.addEventListener('change', () => set({ low_dose: lowDose.checked }));
  const shutters = SIDES.map(([id, side]) => shutter(byId(id, HTMLInputElement), byId(`${id}-words`), beam.open, (share) => set({ open: /** @type {[number, number]} */ (app.state.beam.open.with(side, share)) })));
  const figures = FIGURES.map((name) => /** @type {const} */ ([name, figure(name)]));

  spot.addEventListener('click', () => {
    fluoroscopy.stop();
    act.take('spot', 1);
  });
  const latch = byId('latch', HTMLInputElement);
  const fluoroscopy = pedal(pressed, () => latch.checked, {
    rate: () => app.state.beam.pulses_per_s,
    began: () => void (settings.disabled = true),
    pulse: (n) => act.take('fluoroscopy', n),
    ended: () => {
      settings.disabled = false;
      act.release();
    },
  });
  const [doseReset, doseSave] = [byId('dose-reset', HTMLButtonElement), byId('dose-save', HTMLButtonElement)];
  doseReset.addEventListener('click', () => {
    fluoroscopy.stop();
    act.reset();
  });
  doseSave.addEventListener('click', () => save('dose.json', act.record()));

  return {
    on: fluoroscopy.on,
    stop: fluoroscopy.stop,
    /**
     * @param {PageState} state
     * @param {DoseReadout | null} dose
     * @param {boolean} ready
     */
    update(state, dose, ready) {
      const { byExposure } = state;
      showSource(byExposure ? 'exposures' : 'live');
      say(byId('source-note'), byExposure ? t.exposuresNote : t.liveNote);
      byId('beam').hidden = settings.hidden = !byExposure;
      spot.disabled = pressed.disabled = !ready;
      showRate(String(state.beam.pulses_per_s));
      showMagnification(String(state.beam.magnification));
      lowDose.checked = state.beam.low_dose;
      shutters.forEach((show, i) => show(state.beam.open[i]));
      const spent = dose?.exposures ? dose : null;
      byId('dose').hidden = !byExposure && !spent;
      for (const [name, value] of figures) say(value, spent ? t.figure[name](spent) : t.nothing[name]);
      say(byId('dose-saving'), dose?.saving ? t.saving(dose.saving) : '');
      byId('dose-saving').hidden = !dose?.saving;
      doseReset.disabled = doseSave.disabled = !spent;
    },
  };
}

/**
 * One pair of shutters: a slider in percent of the field. Returns a function that shows a share.
 * @param {HTMLInputElement} slider
 * @param {HTMLElement} words
 * @param {[number, number]} limits
 * @param {(share: number) => void} onSet
 * @returns {(share: number) => void}
 */
function shutter(slider, words, [least, most], onSet) {
  Object.assign(slider, { min: String(100 * least), max: String(100 * most), step: String(PERCENT_STEP) });
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

/** @param {typeof FIGURES[number]} name */
function figure(name) {
  const value = make('dd', { id: `dose-${name}` });
  byId('dose-figures').append(make('div', { class: 'figure' }, make('dt', {}, t.figureName[name]), value));
  return value;
}
