// The views so far as a strip of small pictures: copies of the film as it was shown, in memory only. Pressing one goes back to it: in an
// injection by taking back or doing again what the log holds, otherwise by turning the C-arm.

import { byId, make, penOf, say, within } from '../base/dom.js';
import { CASE } from '../state/page-state.js';
import { keyOf, only, PLACE } from '../state/positioning.js';
import { history as t } from '../words/tools.js';

/**
 * @import { Shaping } from '../engine/shaping.js'
 * @import { Record } from '../exposure/record.js'
 * @import { App, PageState } from '../state/page-state.js'
 * @import { Place } from '../state/positioning.js'
 * @import { Acts, Needle } from './tools.js'
 *
 * A view of the strip: what tells it from others, the number of its exposure (0 live), its own number, and its small picture.
 * @typedef {Place & { key: string, picture: number, number: number, canvas: HTMLCanvasElement }} Entry
 */

const MOST = 12;
const SIDE_PX = 72;
/** @type {readonly (keyof PageState)[]} */
const SHEET = [...CASE, 'start', 'injection', 'byExposure'];
const EXPOSURE = /^(spot|fluoroscopy)\b/;
/** Past so many steps something is wrong with the log; the strip then stays where it is. */
const MOST_STEPS = 500;

/**
 * Puts the strip under the tools. `act.said(sentence)` for the live line.
 * @param {App} app
 * @param {Shaping} patient
 * @param {Needle} needle
 * @param {Record} record
 * @param {Acts} act
 */
export function viewHistory(app, patient, needle, record, act) {
  const { attempt } = needle;
  const list = make('ol', { class: 'history-strip', 'aria-label': t.list, tabindex: '0' });
  const none = make('p', { class: 'quiet' }, t.none);
  byId('folds').append(make('details', { class: 'more', id: 'history' }, make('summary', {}, t.name), none, list));
  /** @type {Entry[]} */
  let entries = [];
  let at = -1;
  let caseNow = '';
  let number = 0;

  const caseOf = () => keyOf(app.state, SHEET);
  /** What has been done, without when, and without exposures, which nothing takes back. */
  const actions = () => attempt.lines().map((line) => line.replace(/^\S+ /, '')).filter((line) => !EXPOSURE.test(line)).map((line) => `${line}\n`).join('');
  /** @param {Place} from */
  const place = (from) => only(from, PLACE);
  /** @param {Place} from */
  const entryOf = (from) => (attempt.on() ? actions() : keyOf(from, PLACE));

  /** The picture that is shown, small. */
  function small() {
    const canvas = make('canvas', { width: SIDE_PX * 2, height: SIDE_PX * 2, 'aria-hidden': 'true' });
    const pen = penOf(canvas);
    pen.imageSmoothingQuality = 'high';
    pen.drawImage(byId('radiograph', HTMLCanvasElement), 0, 0, canvas.width, canvas.height);
    return canvas;
  }

  function settled() {
    const { state } = app;
    if (caseNow !== caseOf()) {
      caseNow = caseOf();
      entries = [];
      at = -1;
    }
    // The best view is not one of the learner's; an assessment keeps to its own rules.
    if (state.ownView || state.lessons || app.lesson?.assessment || !patient.ready()) return show();
    const exposure = record.exposure();
    const from = state.byExposure ? exposure : state;
    // By exposure only pictures that were taken.
    if (!from) return show();
    const key = entryOf(from);
    const picture = (state.byExposure && exposure?.number) || 0;
    const known = entries.findIndex((e) => e.key === key && e.picture === picture);
    if (known >= 0) at = known;
    else if (!state.byExposure || entries.at(-1)?.picture !== picture) {
      number += 1;
      if (!state.byExposure) entries.length = at + 1;
      entries.push({ key, picture, number, ...place(from), canvas: small() });
      entries = entries.slice(-MOST);
      at = entries.length - 1;
    }
    show();
  }

  function show() {
    none.hidden = entries.length > 0;
    list.hidden = entries.length === 0;
    const hadFocus = list.contains(document.activeElement) && document.activeElement !== list;
    const now = entries.map((e) => e.number).join();
    if (list.dataset.for !== now) {
      list.dataset.for = now;
      list.replaceChildren(...entries.map((entry, i) => {
        const press = make('button', { type: 'button', class: 'history-view' }, entry.canvas,
          make('span', {}, make('span', { class: 'history-number' }, String(entry.number)), make('span', { class: 'unseen' }, ` ${t.item(entry)} `), make('span', { class: 'history-now' })));
        press.addEventListener('click', () => go(entries.indexOf(entry)));
        return make('li', { 'data-entry': i }, press);
      }));
      list.scrollLeft = list.scrollWidth;
    }
    [...list.querySelectorAll('.history-view')].forEach((press, i) => {
      press.setAttribute('aria-current', String(i === at));
      say(within(press, '.history-now'), i === at ? ` ${t.now}` : '');
    });
    const current = list.querySelector('[aria-current="true"]');
    if (hadFocus && !list.contains(document.activeElement) && current instanceof HTMLElement) current.focus();
  }

  /**
   * Takes back, or does again, until the log says the same as then. Returns whether it does.
   * @param {string} key
   */
  function throughLog(key) {
    for (const step of [attempt.undo, attempt.redo]) {
      for (let i = 0; i < MOST_STEPS; i++) {
        const now = actions();
        if (now === key) return true;
        // Backwards as far as the two agree, forwards only along what leads there.
        if (key.startsWith(now) === (step === attempt.undo)) break;
        step();
        if (actions() === now) break;
      }
    }
    return actions() === key;
  }

  /** @param {number} index */
  function go(index) {
    const entry = entries[index];
    if (!entry || !patient.ready()) return;
    if (attempt.on() && !throughLog(entry.key)) return;
    at = index;
    app.change({ ...place(entry), ownView: null });
    show();
    act.said(t.back(entry));
  }

  // In an injection the same keys are the attempt's.
  document.addEventListener('keydown', (event) => {
    if (attempt.on() || app.state.lessons || event.altKey || event.defaultPrevented || !(event.ctrlKey || event.metaKey)) return;
    if (event.target instanceof Element && event.target.closest('textarea, input:not([type=radio], [type=checkbox], [type=range])')) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    const redo = key === 'y' || event.shiftKey;
    const next = app.state.ownView && !redo ? at : at + (redo ? 1 : -1);
    if (entries[next]) go(next);
    else act.said(t.end[redo ? 'redo' : 'undo']);
  });

  return {
    settled,
    after: () => void (byId('history').hidden = app.state.lessons || Boolean(app.lesson?.assessment)),
  };
}
