// The case: level, side and patient; and the theme of the page.

import { LANGUAGES, speak } from '../words/language.js';
import { byId, choices, say, segments } from '../base/dom.js';
import { keep, setting } from '../base/storage.js';
import { texts } from '../words/texts.js';

/** @import { App, PageState } from '../state/page-state.js' */

/**
 * Fills the case bar from what the engine offers. Returns an update function.
 * @param {App} app
 */
export function caseControls(app) {
  const { levels, patients } = app.catalogue;
  const showLevel = segments(byId('levels'), 'level', levels.map((l) => [l, l]), (level) => app.change({ level }));
  const showSide = segments(byId('sides'), 'side', [['left', texts.case.left], ['right', texts.case.right]], (side) => app.change({ side }));
  const showPatient = choices(byId('patient'), patients.map((p) => [p.name, texts.case.patientName(p.name)]), (patient) => app.change({ patient, seed: null, changed: '' }));
  return (/** @type {PageState} */ state) => {
    showLevel(state.level);
    showSide(state.side);
    showPatient(state.patient);
    const patient = patients.find((p) => p.name === state.patient);
    say(byId('case-now'), texts.place(state));
    say(byId('case-patient'), ` · ${texts.case.patientName(state.patient)}`);
    say(byId('patient-sentence'), patient?.sentence ? texts.case.patientSentence(patient) : '');
  };
}

/** The language of the page: a choice is kept, and the page comes again in it. */
export function languageControl() {
  const show = choices(byId('language'), LANGUAGES.map((tag) => [tag, nameOf(tag)]), speak);
  show(texts.language);
  say(byId('language-note'), texts.menu.draft);
  byId('language-note').hidden = texts.menu.draft === '';
}

/** A language's name in itself. */
const nameOf = (/** @type {string} */ tag) => (new Intl.DisplayNames(tag, { type: 'language' }).of(tag) ?? tag).replace(/^./, (c) => c.toLocaleUpperCase(tag));

/**
 * Dark room unless the learner chose otherwise; `device` follows the system's colour scheme.
 * @param {(kept: boolean) => void} onKeep
 */
export function themeControl(onKeep) {
  const system = matchMedia('(prefers-color-scheme: light)');
  const apply = (/** @type {string} */ theme) => {
    const light = theme === 'light' || (theme === 'device' && system.matches);
    document.documentElement.dataset.theme = light ? 'light' : 'dark';
  };
  const names = /** @type {const} */ (['dark', 'light', 'device']);
  const show = choices(byId('theme'), names.map((n) => [n, texts.case[n]]), (theme) => {
    apply(theme);
    onKeep(keep('theme', theme));
  });
  const theme = setting('theme', names);
  show(theme);
  apply(theme);
  system.addEventListener('change', () => apply(byId('theme', HTMLSelectElement).value));
}
