// What an element shows, built once in its shadow root: title, film, switches, sliders, checks, caution. Drawn from state and report.

import { FIRST_CATALOGUE } from '../engine/catalogue.js';
import { criteriaOf, scoreRow, showCriteria, viewOf } from '../views/criterion-rows.js';
import { make, say } from '../base/dom.js';
import { reason } from '../engine/engine-load.js';
import { showDogNames, showKey } from '../film/picture-key.js';
import { dragToTurn, turnControl } from '../controls/turn.js';
import { filmCanvases } from './film.js';

const SWITCHES = [
  ['polarity', 'polarity', (on) => (on ? 'bone-dark' : 'bone-white'), (value) => value === 'bone-dark'],
  ['outlines', 'outlines', (on) => on, (value) => value],
  ['labels', 'labels', (on) => on, (value) => value],
  ['through', 'through', (on) => on, (value) => value],
];

/** Builds it. `app`: `{ state, catalogue, change(patch), hold(on), check(), toggleBest(), retry(), redraw(), without(sentence) }`. */
export function buildFace(root, app, texts) {
  const title = make('p', { class: 'title', id: 'title', part: 'title' });
  const patient = make('p', { class: 'quiet' });
  const notice = make('div', { class: 'notices', part: 'notice', role: 'alert' });
  const image = make('div', { class: 'film-image', role: 'img', 'aria-labelledby': 'words' });
  const film = filmCanvases(image, texts, { come: app.redraw, failed: (error) => app.without(texts.throughFailed(reason(error))) });
  const cover = filmCover(app, texts);
  const words = make('p', { class: 'unseen', id: 'words' });
  const tools = make('div', { class: 'film-tools', part: 'tools' });
  const switches = SWITCHES.map(([key, text, write, read]) => {
    const box = make('input', { type: 'checkbox', id: `switch-${key}` });
    box.addEventListener('change', () => app.change({ [key]: write(box.checked) }));
    tools.append(make('label', { class: 'tick' }, box, make('span', {}, text === 'through' ? texts.through : texts.picture[text])));
    return (state) => (box.checked = read(state[key]));
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
    /** Puts state and report on screen; `test.revealed`: the learner has asked. */
    show(state, report, test) {
      frame.classList.toggle('still', !state.controls);
      say(title, texts.title(state));
      say(patient, texts.patient(state));
      for (const show of [...switches, ...sliders]) show(state);
      tools.hidden = turns.hidden = !state.controls;
      key.hidden = !state.outlines || !report;
      showKey(key, { ...state, boneDark: state.polarity === 'bone-dark' }, texts.picture);
      dog.hidden = !state.labels || !report?.dog.length;
      if (!dog.hidden) {
        say(dogHeading, texts.picture.dogHeading(state));
        showDogNames(dogList, { ...state, dog: report.dog }, texts.picture);
      }
      const seen = checks.show(state, report, test);
      side.hidden = turns.hidden && checks.element.hidden;
      say(words, [texts.picture.alternative(state), through, seen].filter(Boolean).join(' '));
    },
    /** The bones through the beam, where they are wanted. */
    bones: (stand, state, report) => void (through = film.through(stand, state, report)),
    /** Says what the learner has come to, once it stands still. */
    announce(state, report, test) {
      const view = viewOf(report, state.view);
      if (!view || !checks.open(state, view, test)) return say(status, '');
      const advice = criteriaOf(report, view).map(texts.checks.sentence).join(' ');
      say(status, texts.checks.said(texts.checks.nameOf(view.view), view.score, advice));
    },
    /** The look: `dark` or `light`. */
    dress: (theme) => (frame.dataset.theme = theme),
    /** One line for each sentence that is wrong at present. */
    complain(sentences) {
      if (notice.dataset.said === sentences.join('\n')) return;
      notice.dataset.said = sentences.join('\n');
      notice.replaceChildren(...sentences.map((sentence) => make('p', { class: 'complaint' }, sentence)));
    },
  };
}

/** What stands over the film while there is no picture. */
function filmCover(app, texts) {
  const heading = make('p', { class: 'film-state-heading' }, texts.loading.failedHeading);
  const text = make('p', { id: 'cover-text' });
  const progress = make('progress', { max: 100, 'aria-labelledby': 'cover-text' });
  const retry = make('button', { type: 'button', class: 'button' }, texts.loading.retry);
  retry.addEventListener('click', () => app.retry());
  const element = make('div', { class: 'film-state' }, heading, text, progress, retry);
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
    loading: (percent) => show(percent === null ? texts.loading.engine : texts.loading.percent(percent), { percent }),
    shaping: (name) => show(texts.loading.patient(name), {}),
    failed: (sentence) => show(sentence, { failed: true }),
    clear: () => (element.hidden = true),
  };
}

/** How near the view is. */
function checksPart(app, texts) {
  const words = texts.checks;
  const heading = make('p', { class: 'checks-heading', id: 'checks-heading' }, texts.checksHeading);
  const total = scoreRow('total', words);
  const rows = new Map();
  const list = make('ul', { class: 'criteria' });
  const plain = make('p', { class: 'quiet' });
  const check = make('button', { type: 'button', class: 'button strong', id: 'check' }, words.ask);
  const best = make('button', { type: 'button', class: 'button', id: 'best' });
  const note = make('p', { class: 'quiet', id: 'best-note' });
  check.addEventListener('click', () => app.check());
  best.addEventListener('click', () => app.toggleBest());
  const buttons = make('div', { class: 'row' }, check, best);
  const element = make('div', { class: 'checks', part: 'checks', role: 'group', 'aria-labelledby': 'checks-heading' }, heading, total.element, list, plain, buttons, note);
  const open = (state, view, test) => state.checks === 'on' || (state.checks === 'ask' && test.revealed);

  return {
    element,
    open,
    /** Returns what may be said of the view. */
    show(state, report, test) {
      const view = viewOf(report, state.view);
      const visible = open(state, view, test) && Boolean(view);
      element.hidden = state.checks === 'off' || state.view === 'free';
      total.element.hidden = list.hidden = !visible;
      plain.hidden = visible || !report;
      say(plain, report && !view ? words.notHere : words.hidden);
      if (visible) {
        total.show(words.scoreLabel, words.score(view.score), view.score);
        showCriteria(list, rows, criteriaOf(report, view), words);
      }
      check.hidden = state.checks !== 'ask';
      check.disabled = !view || test.revealed;
      buttons.hidden = !state.controls;
      best.disabled = !view || (state.checks === 'ask' && !test.asked);
      say(best, state.ownView ? words.back : words.best);
      say(note, state.ownView ? [texts.showingBest, view && !view.reached ? words.notReached : ''].filter(Boolean).join(' ') : '');
      if (element.hidden || !report) return '';
      return visible ? criteriaOf(report, view).map(words.sentence).join(' ') : plain.textContent;
    },
  };
}
