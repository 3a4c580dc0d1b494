// The needle in hand: hub, advance and withdraw, spin, moving the hub, and the C-arm's three views, with the readings beside them.

import { hubDial } from './hub.js';
import { button, byId, make, say, segments } from '../base/dom.js';
import { texts } from '../words/injection.js';

/**
 * @import { Angles } from '../base/tenth.js'
 * @import { NeedleReport, ViewKind } from '../pkg/values.js'
 *
 * `push` in mm, negative withdraws; `hub` in tenths of a degree.
 * @typedef {{ roll: (degrees: number) => void, push: (mm: number) => void, hub: (right_tenths: number, up_tenths: number) => void, view: (kind: ViewKind) => void }} HandActs
 */

const BY_MM = [0.5, 1, 5];
const SPINS = [0, 50, 100];
/** @type {[name: string, right: number, up: number, sign: string][]} */
const WAYS = [['left', -1, 0, '←'], ['up', 0, 1, '↑'], ['down', 0, -1, '↓'], ['right', 1, 0, '→']];
const VIEWS = /** @type {const} */ (['true_ap', 'lateral', 'oblique']);
/** This near to a plain AP or lateral its readings mean something, degrees. */
const READING_DEG = 15;
/** With a beam steeper to the needle than this its angle says nothing, degrees. */
const NEAR_BEAM_DEG = 50;
/** With a beam steeper to the needle than this, the hub is told by its own roll, degrees. */
const FROM_ABOVE_DEG = 45;
/** Before this depth there is nothing to prove, mm. */
const STEERED_MM = 20;

/**
 * Where the notch is as one looks down on the hub, as an hour.
 * @param {NeedleReport} needle
 */
export function notchHour(needle) {
  const hour = needle.coaxial.angle_deg < FROM_ABOVE_DEG ? needle.notch_hour : (((needle.roll_deg / 30) % 12) + 12) % 12;
  return hour === 0 ? 12 : hour;
}

/**
 * The readings of a picture in words, as many as mean something in it. `from`: the angles it was taken at.
 * @param {NeedleReport} needle
 * @param {Angles} from
 */
export function readings(needle, from) {
  const t = texts.needle.hand;
  const across = Math.abs(from.oblique_deg);
  if (Math.abs(across - 90) <= READING_DEG) return [t.lateral(needle.lateral)];
  const ap = across <= READING_DEG && needle.depth_mm > STEERED_MM ? [t.ap(needle.clock)] : [];
  // The mark and the beam belong to the oblique picture.
  if (ap.length && needle.coaxial.angle_deg > READING_DEG) return ap;
  const mark = needle.off_mark_mm ? [t.offMark(needle.off_mark_mm)] : [];
  return needle.coaxial.angle_deg < NEAR_BEAM_DEG ? [`${t.beam(needle.coaxial)}, ${t.hubOff(needle.coaxial)}`, ...mark, ...ap] : [...mark, ...ap];
}

/**
 * Builds it.
 * @param {HandActs} act
 */
export function needleHand(act) {
  const t = texts.needle.hand;
  const section = byId('hand');
  const holder = make('div', { class: 'hub' });
  const dial = hubDial(holder, act);
  const notch = make('p', { class: 'hub-notch' });
  const drift = make('p', { class: 'quiet' });
  const half = button(t.half, () => act.roll(180), { id: 'half-turn' });
  const depth = make('strong', { id: 'needle-depth' });
  const left = make('span', { class: 'quiet', id: 'needle-left' });
  const read = make('ul', { class: 'readings', id: 'readings' });
  /**
   * @param {string} label
   * @param {string} kind
   * @param {...HTMLElement} items
   */
  const row = (label, kind, ...items) => make('div', { class: `hand-row hand-${kind}`, role: 'group', 'aria-label': label }, make('span', { class: 'hand-label', 'aria-hidden': 'true' }, label), make('div', { class: 'hand-buttons' }, ...items));
  const spinHolder = make('div', { class: 'segments' });
  const fine = make('input', { type: 'checkbox', id: 'hub-fine' });
  const tenths = () => (fine.checked ? 1 : 5);
  const viewButtons = VIEWS.map((kind) => button(t.view[kind], () => act.view(kind), { id: `go-${kind}` }));
  section.append(
    make('div', { class: 'hub-group' }, holder, make('div', { class: 'hub-words' }, notch, drift, half)),
    make('div', { class: 'hand-state' }, make('p', {}, depth, ' ', left), read),
    make('div', { class: 'hand-rows' },
      row(t.advance, 'push', ...BY_MM.map((mm) => button(t.by(mm), () => act.push(mm), { 'aria-label': t.advanceBy(mm) }))),
      row(t.withdraw, 'push', ...BY_MM.map((mm) => button(t.by(mm), () => act.push(-mm), { 'aria-label': t.withdrawBy(mm) }))),
      make('fieldset', { class: 'choice wide hand-row' }, make('legend', {}, t.spin), spinHolder)),
    make('div', { class: 'hand-rows' },
      row(t.views, 'views', ...viewButtons),
      row(t.pad, 'pad', ...WAYS.map(([way, right, up, sign]) => button(sign, () => act.hub(right * tenths(), up * tenths()), { 'aria-label': t.hubBy(way) }))),
      make('label', { class: 'tick' }, fine, make('span', {}, t.fine))),
  );
  let spin = 0;
  const showSpin = segments(spinHolder, 'spin', SPINS.map((n) => /** @type {const} */ ([String(n), t.percent(n)])), (n) => {
    spin = Number(n);
    showSpin(n);
  });
  showSpin('0');

  return {
    spin: () => spin,
    send: dial.send,
    /**
     * `needle` as it is, `seen` as the picture shows it (null when it may not be told), `from` where that was taken.
     * @param {NeedleReport | null | undefined} needle
     * @param {NeedleReport | null | undefined} seen
     * @param {Angles | null} from
     * @param {boolean} late
     */
    update(needle, seen, from, late) {
      section.hidden = !needle;
      if (!needle) return;
      const hour = notchHour(needle);
      dial.show(hour, needle.hub_colour);
      say(notch, t.notch(hour));
      say(drift, t.drift(hour));
      say(depth, t.depth(needle));
      say(left, t.left(needle));
      const lines = seen && from ? readings(seen, from) : [];
      const all = late && lines.length ? [`${t.asOf}:`, ...lines] : lines;
      if (read.dataset.now !== all.join('|')) {
        read.dataset.now = all.join('|');
        read.replaceChildren(...all.map((line) => make('li', {}, line)));
      }
    },
  };
}
