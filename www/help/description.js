// The picture in words: the section under the sliders, what is read out on a key, and what is said when something looks otherwise.
// What may be told, and in what grain, is decided in describe.js.

import { changesOf, factsOf, needleFactsOf, needleSentencesOf, sentencesOf } from './describe.js';
import { onceQuiet } from '../base/frame.js';
import { readings } from '../injection/hand.js';
import { byId, make, say, within } from '../base/dom.js';
import { shownIn } from '../film/picture.js';
import { sameBeam } from '../state/positioning.js';
import { keep, setting } from '../base/storage.js';
import { texts } from '../words/injection.js';
import { help } from '../words/help.js';

/** The picture stands still once nothing has changed for so long. */
const QUIET_MS = 400;
/** Messages come no faster than this; those that wait are told together. */
const APART_MS = 1500;
const DETECTOR_MM = 512 * 0.4;

/**
 * @import { App } from '../state/page-state.js'
 * @import { Facts } from './describe.js'
 * @import { Page } from './on-demand.js'
 *
 * All that may be told now, as lists of sentences, with the facts behind them and of which case they are.
 * @typedef {{ facts: Facts | null, screen: string[], picture: string[], needle: string[], of: string }} Described
 */

/**
 * Builds it. Returns `{ update(), read(), show() }`.
 * @param {App} app
 * @param {Page} page
 */
export function description(app, page) {
  const t = help.describe;
  const holder = byId('description-body');
  const part = (/** @type {string} */ heading) => {
    const list = make('ul', {});
    const element = make('section', {}, make('h3', {}, heading), list);
    holder.append(element);
    return (/** @type {string[]} */ sentences) => {
      element.hidden = sentences.length === 0;
      const now = sentences.join('\n');
      if (list.dataset.now === now) return;
      list.dataset.now = now;
      list.replaceChildren(...sentences.map((s) => make('li', {}, s)));
    };
  };
  const [showScreen, showPicture, showNeedle] = [part(t.screen), part(t.picture), part(t.needle)];
  const says = make('input', { type: 'checkbox', id: 'description-says', 'aria-describedby': 'description-says-hint' });
  says.checked = setting('says', ['on', 'off']) === 'on';
  says.addEventListener('change', () => keep('says', says.checked ? 'on' : 'off'));
  holder.append(make('label', { class: 'tick' }, says, make('span', {}, t.says)), make('p', { class: 'quiet', id: 'description-says-hint' }, t.saysHint));
  const voice = speaker();
  /** @type {Described | null} */
  let before = null;

  /** @returns {Described} */
  function now() {
    const { state, lesson } = app;
    const { attempt } = page.needle;
    const exposure = page.record().exposure();
    const finished = Boolean(attempt.report()?.finished);
    const report = state.byExposure ? (exposure?.report ?? null) : app.report;
    const shown = shownIn(state, report, exposure);
    // What is judged by the learner is told as the eye sees it, until it has been.
    const judged = !finished && (state.byExposure || (state.selfTest && !page.review.test.revealed) || Boolean(lesson?.assessment));
    const naming = Boolean(lesson?.asks.has('name_parts'));
    const step = [...document.querySelectorAll('[aria-current="step"] :is(.step-title, .stage-title)')].find((e) => e.checkVisibility())?.textContent;
    const where = !shown ? t.none : state.byExposure ? texts.exposure.alternative(shown, !sameBeam(shown, state)) : texts.picture.alternative(shown);
    const screen = [t.activity[state.lessons ? 'lessons' : state.injection ? 'injection' : 'views'], texts.picture.caption(state), step ? t.step(step) : '', t.keys].filter(Boolean);
    const of = `${state.patient} ${state.lesson} ${state.start}`;
    if (!report || !shown) return { facts: null, screen, picture: [t.none, t.nonePart], needle: [], of };
    const facts = factsOf(report, { judged, naming, field_mm: shown.field_mm ?? DETECTOR_MM });
    const sentences = sentencesOf(facts, t).map(([, sentence]) => sentence);
    const open = !judged;
    const seen = naming ? null : attempt.seen();
    const needle = needleSentencesOf(needleFactsOf(report, seen, open), open && seen?.needle ? readings(seen.needle, shown) : [], t, texts.remarks.contact);
    return { facts, screen, picture: [where, ...sentences, ...(judged ? [t.judged] : [])], needle, of };
  }

  const settled = onceQuiet(() => {
    if (page.held()) return settled();
    const described = now();
    // Closed too: `toggle` comes only after the section has been seen open, and it is not to be seen empty.
    show(described);
    // A needle's every action has its own sentence already.
    if (says.checked && described.facts && before?.facts && before.of === described.of && !app.state.ownView) voice(changesOf(before.facts, described.facts, t));
    if (described.facts) before = described;
  }, QUIET_MS);

  /** @param {Described} described */
  function show({ screen, picture, needle }) {
    showScreen(screen);
    showPicture(picture);
    showNeedle(needle);
  }

  byId('description').addEventListener('toggle', () => show(now()));
  settled();
  return {
    /** Something on the page is otherwise. */
    update: settled,
    /** Reads everything out, wherever the focus is. */
    read() {
      const { picture, needle } = now();
      voice([...picture, ...needle], true);
    },
    /** Opens the section and takes the keys there. */
    show() {
      show(now());
      const section = byId('description', HTMLDetailsElement);
      section.open = true;
      within(section, 'summary').focus({ preventScroll: true });
      section.scrollIntoView({ block: 'nearest' });
    },
  };
}

/** A live region with a queue: messages are told together, and no faster than one can listen. `at once` empties the queue first. */
function speaker() {
  const region = make('p', { class: 'unseen', id: 'description-said', role: 'status' });
  document.body.append(region);
  /** @type {string[]} */
  let waiting = [];
  let free_ms = 0;
  /** @type {ReturnType<typeof setTimeout> | 0} */
  let timer = 0;
  const tell = () => {
    timer = 0;
    free_ms = performance.now() + APART_MS;
    // The same sentence again has to be a change to be heard.
    const text = waiting.join(' ');
    say(region, region.textContent === text ? `${text}\u00a0` : text);
    waiting = [];
  };
  return (/** @type {string[]} */ sentences, atOnce = false) => {
    if (sentences.length === 0) return;
    if (atOnce) waiting = [];
    waiting.push(...sentences.filter((s) => !waiting.includes(s)));
    if (atOnce) {
      clearTimeout(timer);
      return tell();
    }
    timer ||= setTimeout(tell, Math.max(0, free_ms - performance.now()));
  };
}
