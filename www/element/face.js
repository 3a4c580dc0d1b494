// What an element shows, built once in its shadow root: title, film, switches, sliders, checks, caution. Drawn from state and report.

import { FIRST_CATALOGUE } from '../engine/catalogue.js';
import { criteriaOf, scoreRow, showCriteria, viewOf } from '../views/criterion-rows.js';
import { make, say } from '../base/dom.js';
import { reason } from '../engine/engine-load.js';
import { showDogNames, showKey } from '../film/picture-key.js';
import { dragToTurn, turnControl } from '../controls/turn.js';
import { filmCanvases } from './film.js';

/**
 * @import { Report, ViewScore } from '../pkg/values.js'
 * @import { TurnApp } from '../controls/turn.js'
 * @import { ElementState } from './interface.js'
 * @import { Stand } from './patients.js'
 * @import { Texts } from './words.js'
 *
 * What the face asks for.
 * @typedef {TurnApp & { state: ElementState, change: (patch: Partial<ElementState>) => void, check: () => void, toggleBest: () => void,
 *   retry: () => void, redraw: () => void, without: (sentence: string) => void }} FaceActs
 *
 * Whether the learner has asked for the checks: ever, and of the view as it stands.
 * @typedef {{ asked: boolean, revealed: boolean }} Test
 *
 * A switch: its name, what of the state it sets, and whether that is on.
 * @typedef {{ name: 'polarity' | 'outlines' | 'labels' | 'through', patch: (on: boolean) => Partial<ElementState>, isOn: (state: ElementState) => boolean }} Switch
 */

/** @type {readonly Switch[]} */
const SWITCHES = [
  { name: 'polarity', patch: (on) => ({ polarity: on ? 'bone-dark' : 'bone-white' }), isOn: (state) => state.polarity === 'bone-dark' },
  { name: 'outlines', patch: (outlines) => ({ outlines }), isOn: (state) => state.outlines },
  { name: 'labels', patch: (labels) => ({ labels }), isOn: (state) => state.labels },
  { name: 'through', patch: (through) => ({ through }), isOn: (state) => state.through },
];

/**
 * Builds it.
 * @param {ShadowRoot} root
 * @param {FaceActs} app
 * @param {Texts} texts
 */
export function buildFace(root, app, texts) {
  const title = make('p', { class: 'title', id: 'title', part: 'title' });
  const patient = make('p', { class: 'quiet' });
  const notice = make('div', { class: 'notices', part: 'notice', role: 'alert' });
  const image = make('div', { class: 'film-image', role: 'img', 'aria-labelledby': 'words' });
  const film = filmCanvases(image, texts, { come: app.redraw, failed: (error) => app.without(texts.throughFailed(reason(error))) });
  const cover = filmCover(app, texts);
  const words = make('p', { class: 'unseen', id: 'words' });
  const tools = make('div', { class: 'film-tools', part: 'tools' });
  const switches = SWITCHES.map(({ name, patch, isOn }) => {
    const box = make('input', { type: 'checkbox', id: `switch-${name}` });
    box.addEventListener('change', () => app.change(patch(box.checked)));
    tools.append(make('label', { class: 'tick' }, box, make('span', {}, name === 'through' ? texts.through : texts.picture[name])));
    return (/** @type {ElementState} */ state) => void (box.checked = isOn(state));
  });
  const key = make('ul', { class: 'key', part: 'key' });
  const dogHeading = make('p', { class: 'dog-heading', id: 'dog-heading' });
  const dogList = make('ul', { 'aria-labelledby': 'dog-heading' });
  const dog = make('div', { class: 'dog' }, dogHeading, dogList);
  const turns = make('div', { class: 'turns', part: 'turns', role: 'group', 'aria-label': texts.turns });
  const { range } = FIRST_CATALOGUE;
  const sliders = [
    turnControl(turns, 'oblique', range.oblique_deg, app, texts, { leftIsHigh: true }),
    turnControl(turns, 'tilt', range.tilt_deg, app, texts),
  ];
  const checks = checksPart(app, texts);
  const status = make('p', { class: 'unseen', role: 'status' });
  const side = make('div', { class: 'side' }, turns, checks.element);
  const frame = make('div', { class: 'downbeam', part: 'frame', role: 'group', 'aria-labelledby': 'title', lang: texts.language },
    make('div', { class: 'top' }, title, patient),
    notice,
    make('div', { class: 'room' },
      make('div', { class: 'picture' },
        make('div', { class: 'film', part: 'film' }, image, cover.element), words, tools, key, dog),
      side),
    status,
    make('p', { class: 'caution', part: 'caution' }, texts.caution));
  root.replaceChildren(frame);
  dragToTurn(film.overlay, app);

  let through = '';
  return {
    film,
    image,
    cover,
    /**
     * Puts state and report on screen.
     * @param {ElementState} state
     * @param {Report | null} report
     * @param {Test} test
     */
    show(state, report, test) {
      frame.classList.toggle('still', !state.controls);
      say(title, texts.title(state));
      say(patient, texts.patient(state));
      for (const show of [...switches, ...sliders]) show(state);
      tools.hidden = turns.hidden = !state.controls;
      key.hidden = !state.outlines || !report;
      showKey(key, { ...state, boneDark: state.polarity === 'bone-dark' }, texts.picture);
      dog.hidden = !state.labels || !report?.dog.length;
      if (report && !dog.hidden) {
        say(dogHeading, texts.picture.dogHeading(state));
        showDogNames(dogList, { ...state, dog: report.dog }, texts.picture);
      }
      const seen = checks.show(state, report, test);
      side.hidden = turns.hidden && checks.element.hidden;
      say(words, [texts.picture.alternative(state), through, seen].filter(Boolean).join(' '));
    },
    /** The bones through the beam, where they are wanted. */
    bones: (/** @type {Stand} */ stand, /** @type {ElementState} */ state, /** @type {Report} */ report) => void (through = film.through(stand, state, report)),
    /**
     * Says what the learner has come to, once it stands still.
     * @param {ElementState} state
     * @param {Report} report
     * @param {Test} test
     */
    announce(state, report, test) {
      const view = viewOf(report, state.view);
      if (!view || !checks.open(state, test)) return say(status, '');
      const advice = criteriaOf(report, view).map(texts.checks.sentence).join(' ');
      say(status, texts.checks.said(texts.checks.nameOf(view.view), view.score, advice));
    },
    /** The look: `dark` or `light`. */
    dress: (/** @type {string} */ theme) => (frame.dataset.theme = theme),
    /**
     * One line for each sentence that is wrong at present.
     * @param {string[]} sentences
     */
    complain(sentences) {
      if (notice.dataset.said === sentences.join('\n')) return;
      notice.dataset.said = sentences.join('\n');
      notice.replaceChildren(...sentences.map((sentence) => make('p', { class: 'complaint' }, sentence)));
    },
  };
}

/**
 * What stands over the film while there is no picture.
 * @param {FaceActs} app
 * @param {Texts} texts
 */
function filmCover(app, texts) {
  const heading = make('p', { class: 'film-state-heading' }, texts.loading.failedHeading);
  const text = make('p', { id: 'cover-text' });
  const progress = make('progress', { max: 100, 'aria-labelledby': 'cover-text' });
  const retry = make('button', { type: 'button', class: 'button' }, texts.loading.retry);
  retry.addEventListener('click', () => app.retry());
  const element = make('div', { class: 'film-state' }, heading, text, progress, retry);
  /**
   * @param {string} sentence
   * @param {{ failed?: boolean, percent?: number | null, waiting?: boolean }} how
   */
  const show = (sentence, { failed = false, percent = null, waiting = false }) => {
    element.hidden = false;
    element.dataset.failed = String(failed);
    heading.hidden = retry.hidden = !failed;
    progress.hidden = failed || waiting;
    if (percent === null) progress.removeAttribute('value');
    else progress.value = percent;
    say(text, sentence);
  };
  show(texts.waiting, { waiting: true });
  return {
    element,
    waiting: () => show(texts.waiting, { waiting: true }),
    loading: (/** @type {number | null} */ percent) => show(percent === null ? texts.loading.engine : texts.loading.percent(percent), { percent }),
    shaping: (/** @type {string} */ name) => show(texts.loading.patient(name), {}),
    failed: (/** @type {string} */ sentence) => show(sentence, { failed: true }),
    clear: () => (element.hidden = true),
  };
}

/**
 * How near the view is.
 * @param {FaceActs} app
 * @param {Texts} texts
 */
function checksPart(app, texts) {
  const words = texts.checks;
  const heading = make('p', { class: 'checks-heading', id: 'checks-heading' }, texts.checksHeading);
  const total = scoreRow('total', words);
  const rows = new Map();
  const list = make('ul', { class: 'criteria' });
  const whyHidden = make('p', { class: 'quiet' });
  const check = make('button', { type: 'button', class: 'button strong', id: 'check' }, words.ask);
  const best = make('button', { type: 'button', class: 'button', id: 'best' });
  const note = make('p', { class: 'quiet', id: 'best-note' });
  check.addEventListener('click', () => app.check());
  best.addEventListener('click', () => app.toggleBest());
  const buttons = make('div', { class: 'row' }, check, best);
  const element = make('div', { class: 'checks', part: 'checks', role: 'group', 'aria-labelledby': 'checks-heading' }, heading, total.element, list, whyHidden, buttons, note);
  const open = (/** @type {ElementState} */ state, /** @type {Test} */ test) => state.checks === 'on' || (state.checks === 'ask' && test.revealed);

  return {
    element,
    open,
    /**
     * Returns what may be said of the view.
     * @param {ElementState} state
     * @param {Report | null} report
     * @param {Test} test
     */
    show(state, report, test) {
      const view = viewOf(report, state.view);
      const shown = view && open(state, test) ? view : null;
      const visible = shown !== null;
      element.hidden = state.checks === 'off' || state.view === 'free';
      total.element.hidden = list.hidden = !visible;
      whyHidden.hidden = visible || !report;
      say(whyHidden, report && !view ? words.notHere : words.hidden);
      if (report && shown) {
        total.show(words.scoreLabel, words.score(shown.score), shown.score);
        showCriteria(list, rows, criteriaOf(report, shown), words);
      }
      check.hidden = state.checks !== 'ask';
      check.disabled = !view || test.revealed;
      buttons.hidden = !state.controls;
      best.disabled = !view || (state.checks === 'ask' && !test.asked);
      say(best, state.ownView ? words.back : words.best);
      say(note, state.ownView ? [texts.showingBest, view && !view.reached ? words.notReached : ''].filter(Boolean).join(' ') : '');
      if (element.hidden || !report) return '';
      return shown ? criteriaOf(report, shown).map(words.sentence).join(' ') : whyHidden.textContent;
    },
  };
}
