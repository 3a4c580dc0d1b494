// An attempt played back in a dialog: film, C-arm and needle on one time line, the places where marks were lost on it, each with its reason, and another
// attempt at the same case beside it. It has a patient of its own in the engine, so that what runs on the page is not touched.

import { chooser } from '../base/chooser.js';
import { button, make, say, segments } from '../base/dom.js';
import { painted } from '../base/frame.js';
import { reason } from '../engine/room.js';
import { replay as t } from '../words/replay.js';
import { replayDrawing } from './drawing.js';
import { besideOf, momentAt, TICKS_PER_S, trackOf } from './track.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { AttemptFile } from '../pkg/values.js'
 * @import { Lost, Marks, Track } from './track.js'
 *
 * What is played: the attempt; `marks(lines)` of its lesson, null for those of a whole injection; whether radiation counts.
 * @typedef {{ trace: AttemptFile, marks: Marks, exposures: boolean, Room: typeof TeachingRoom, boneDark: boolean }} Asked
 *
 * The other attempt, and the time in it that goes with one in this.
 * @typedef {{ track: Track, at: (at_s: number) => number }} Beside
 */

const SPEEDS = [1, 2, 4];
const PAGE_S = 10;
const MOST_BYTES = 2_000_000;

/** Shows the dialog and plays what is asked for. @param {Asked} asked */
export async function playBack(asked) {
  const dialog = frame();
  document.body.append(dialog.element);
  dialog.element.showModal();
  // What is said is painted before the engine is busy.
  await painted();
  /** @type {TeachingRoom | null} */
  let room = null;
  let closed = false;
  dialog.element.addEventListener('close', () => {
    closed = true;
    dialog.element.remove();
    room?.free();
    room = null;
  });
  try {
    const { patient, seed, changed, case: { target } } = asked.trace;
    const own = new asked.Room(patient, target.level, target.side, { seed: seed ?? undefined, changed });
    room = own;
    if (closed) return own.free();
    const marks = asked.marks ?? (() => own.score());
    const track = await trackOf(own, asked.trace, { marks, exposures: asked.exposures, share: (done) => say(dialog.state, t.reading(Math.round(100 * done))), gone: () => closed });
    if (!closed) play(dialog, own, track, asked.boneDark);
  } catch (error) {
    say(dialog.state, t.bad(reason(error)));
  }
}

/** The dialog with nothing in it yet. */
function frame() {
  const state = make('p', { class: 'replay-state', role: 'status' }, t.loading);
  const body = make('div', { class: 'replay-body' }, state);
  const element = make('dialog', { class: 'replay', id: 'replay', 'aria-labelledby': 'replay-heading' },
    make('div', { class: 'replay-head' }, make('h2', { id: 'replay-heading', tabindex: -1, autofocus: true }, t.heading), button(t.close, () => element.close(), { class: 'button plain', id: 'replay-close' })), body);
  return { element, state, body };
}

/**
 * Film, drawings, time line and lists, and what moves them.
 * @param {ReturnType<typeof frame>} dialog
 * @param {TeachingRoom} room
 * @param {Track} track
 * @param {boolean} boneDark
 */
function play(dialog, room, track, boneDark) {
  const { moments, long_s } = track;
  const drawing = replayDrawing(boneDark);
  const slider = make('input', { type: 'range', id: 'replay-line', min: 0, max: long_s, step: 0.05, value: 0, 'aria-label': t.line, 'aria-describedby': 'replay-keys' });
  const words = make('p', { id: 'replay-words', class: 'replay-words' });
  const here = make('p', { class: 'replay-here', role: 'status' });
  const other = make('p', { class: 'replay-other', hidden: true });
  const start = button(t.play, () => (playing ? stop() : go()), { class: 'button strong', id: 'replay-play' });
  const lost = lostList(track, (moment) => to(moments[moment].at_s));
  const lineBox = make('div', { class: 'replay-line' }, slider, lost.signs);

  let at_s = 0;
  let speed = 2;
  let playing = 0;
  let drawn = '';
  // The moment that the engine stands at.
  let stands = -1;
  /** @type {Beside | null} */
  let beside = null;

  const pace = make('div', { class: 'segments' });
  const showPace = segments(pace, 'replay-speed', SPEEDS.map((n) => /** @type {[string, string]} */ ([String(n), t.times(n)])), (n) => {
    speed = Number(n);
    showPace(n);
  });
  showPace(String(speed));

  function show() {
    const k = momentAt(moments, at_s);
    const moment = moments[k];
    // Contrast goes on spreading until the next action.
    const end = moments[k + 1]?.tick ?? Infinity;
    const tick = Math.min(end, moment.tick + Math.floor((at_s - moment.at_s) * TICKS_PER_S));
    const ghost = beside ? beside.track.moments[momentAt(beside.track.moments, beside.at(at_s))] : null;
    slider.value = String(at_s);
    slider.style.setProperty('--from', '0%');
    slider.style.setProperty('--to', `${(100 * at_s) / long_s}%`);
    slider.setAttribute('aria-valuetext', t.value(moment, k, moments.length - 1));
    say(words, `${t.value(moment, k, moments.length - 1)}. ${t.stands(moment)}`);
    const losses = track.lost.filter((one) => one.moment === k).map((one) => t.lostHere(one)).join(' ');
    say(here, losses);
    lost.at(k);
    other.hidden = !ghost;
    if (ghost) say(other, t.besideNow(ghost));
    const key = [k, tick, JSON.stringify(ghost)].join();
    if (key === drawn) return;
    drawn = key;
    if (stands !== k) room.standAfter(k);
    stands = k;
    drawing.draw(room, moment, tick, ghost);
  }

  /** @param {number} wanted_s */
  function to(wanted_s) {
    at_s = Math.min(long_s, Math.max(0, wanted_s));
    show();
  }

  function stop() {
    cancelAnimationFrame(playing);
    playing = 0;
    say(start, t.play);
  }

  function go() {
    if (at_s >= long_s - 0.05) at_s = 0;
    say(start, t.pause);
    let before = performance.now();
    const next = () => {
      if (!dialog.element.open) return;
      const now = performance.now();
      // A slow frame does not leap.
      to(at_s + (Math.min(0.2, (now - before) / 1000) * speed));
      before = now;
      if (at_s >= long_s) return stop();
      playing = requestAnimationFrame(next);
    };
    playing = requestAnimationFrame(next);
  }

  /** From action to action. @param {number} way */
  function step(way) {
    stop();
    const k = momentAt(moments, at_s);
    const inside = at_s > moments[k].at_s + 0.06;
    to(way > 0 ? (moments[k + 1]?.at_s ?? long_s) : moments[Math.max(0, inside ? k : k - 1)].at_s);
  }

  slider.addEventListener('input', () => {
    stop();
    to(Number(slider.value));
  });
  slider.addEventListener('keydown', (event) => {
    /** @type {Record<string, () => void>} */
    const keys = { ArrowRight: () => step(1), ArrowUp: () => step(1), ArrowLeft: () => step(-1), ArrowDown: () => step(-1), PageUp: () => to(at_s + PAGE_S), PageDown: () => to(at_s - PAGE_S), Home: () => to(0), End: () => to(long_s) };
    if (!keys[event.key] || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    stop();
    keys[event.key]();
  });

  const next = besidePart(room, track, (found) => {
    beside = found;
    // The engine has stood elsewhere meanwhile.
    stands = -1;
    drawn = '';
    show();
  });
  dialog.body.replaceChildren(
    make('div', { class: 'replay-pictures' }, drawing.film, make('div', { class: 'replay-arm' }, drawing.feet, drawing.side)),
    make('div', { class: 'replay-tools' }, lineBox,
      make('div', { class: 'row' }, start, button('‹', () => step(-1), { 'aria-label': t.earlier, id: 'replay-earlier' }), button('›', () => step(1), { 'aria-label': t.later, id: 'replay-later' }),
        make('fieldset', { class: 'choice' }, make('legend', { class: 'unseen' }, t.speed), pace)),
      words, here, other, make('p', { class: 'unseen', id: 'replay-keys' }, t.lineKeys)),
    make('div', { class: 'replay-lists' }, lost.element, next, make('p', { class: 'quiet' }, t.film)));
  show();
  slider.focus();
}

/**
 * The list of places where marks were lost, and their signs on the time line.
 * @param {Track} track
 * @param {(moment: number) => void} go
 */
function lostList({ lost, undone, moments, long_s }, go) {
  const rows = lost.map((one) => {
    const press = button('', () => go(one.moment), { class: 'replay-lost', 'data-moment': one.moment });
    press.append(make('span', { class: 'replay-clock' }, t.clock(moments[one.moment].tick)), make('span', {}, t.why(one)));
    return make('li', {}, press);
  });
  const signs = make('div', { class: 'replay-signs', 'aria-hidden': 'true' }, ...lost.map((one) => {
    const sign = make('span', { class: 'replay-sign' });
    sign.style.setProperty('--at', String(moments[one.moment].at_s / long_s));
    return sign;
  }));
  const element = make('section', { 'aria-labelledby': 'replay-lost-heading' }, make('h3', { id: 'replay-lost-heading' }, t.lost),
    ...(rows.length ? [make('ol', { class: 'replay-losses' }, ...rows)] : [make('p', {}, t.lostNone)]),
    ...(undone.length ? [make('p', { class: 'quiet' }, t.undone(undone))] : []));
  return {
    element,
    signs,
    /** @param {number} moment */
    at(moment) {
      for (const row of rows) {
        const press = row.firstElementChild;
        if (press?.getAttribute('data-moment') === String(moment)) press.setAttribute('aria-current', 'true');
        else press?.removeAttribute('aria-current');
      }
    },
  };
}

/**
 * Another attempt's file laid beside this one, or taken away.
 * @param {TeachingRoom} room
 * @param {Track} own
 * @param {(beside: Beside | null) => void} found
 */
function besidePart(room, own, found) {
  const pick = make('input', { type: 'file', accept: '.json,application/json', hidden: true, id: 'replay-file' });
  const complaint = make('p', { class: 'complaint', role: 'alert', hidden: true });
  const open = button(t.beside, () => {}, { id: 'replay-beside' });
  const off = button(t.besideOff, () => {
    off.hidden = true;
    open.focus();
    found(null);
  }, { class: 'button plain', id: 'replay-beside-off', hidden: true });
  const complain = (/** @type {string} */ text) => {
    say(complaint, text);
    complaint.hidden = text === '';
  };
  chooser(open, pick, async ([file]) => {
    complain('');
    try {
      if (file.size > MOST_BYTES) throw new Error(t.tooLarge);
      const trace = parsed(await file.text());
      if (!sameCase(own.trace, trace)) return complain(t.besideOther);
      const track = await trackOf(room, trace, { marks: null, exposures: false, share: () => {}, gone: () => !open.isConnected });
      // The engine has stood at the other attempt meanwhile.
      room.beginReplay(own.trace);
      off.hidden = false;
      found({ track, at: besideOf(own, track) });
    } catch (error) {
      complain(t.bad(reason(error)));
    }
  });
  return make('section', {}, make('div', { class: 'row' }, open, off), pick, complaint, make('p', { class: 'quiet' }, t.besideNote));
}

/**
 * @param {string} text
 * @returns {AttemptFile}
 */
function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    throw new Error(t.notJson);
  }
}

/**
 * Whether another attempt is of the same patient, level and side. What a file holds may be anything.
 * @param {AttemptFile} own
 * @param {AttemptFile} other
 */
function sameCase(own, other) {
  const of = (/** @type {AttemptFile} */ trace) => JSON.stringify([trace?.patient, trace?.seed ?? null, trace?.changed ?? {}, trace?.case?.target?.level, trace?.case?.target?.side]);
  return of(own) === of(other);
}
