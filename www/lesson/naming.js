// Naming the parts on the page: an outline is lit, then given as the answer. What is asked and what is right the engine says.

import { button, byId, make, say } from '../base/dom.js';
import { lesson } from '../words/lesson.js';

/** As near as this to a line a press takes it, mm on the detector. */
const REACH_MM = 7;
/** A press counts as one when the hand has moved less than this, CSS px. */
const STILL_PX = 6;
const HALF_FIELD_MM = 256 * 0.4;
/** @type {Record<string, number>} */
const WAYS = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 };

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { ExerciseEntry, Label } from '../pkg/values.js'
 */

/** @type {(a: Label | null, b: Label | null) => boolean} */
const same = (a, b) => a !== null && b !== null && a.level === b.level && a.part === b.part && a.side === b.side;

/**
 * Builds the exercise in `holder`. `act`: `on()` whether it is the one in hand, `room()`, `held()` whether the picture is an exposure, `field_mm()`,
 * `answer(label)`, `mayShow()` whether what was missed may be shown, `said(sentence)`, `touch()`.
 * @param {HTMLElement} holder
 * @param {{ on: () => boolean, room: () => TeachingRoom | null, held: () => boolean, field_mm: () => number, mayShow: () => boolean,
 *   answer: (label: Label) => void, said: (sentence: string) => void, touch: () => void }} act
 */
export function naming(holder, act) {
  const t = lesson.naming;
  const ask = make('p', { class: 'naming-ask', id: 'naming-ask' });
  const count = make('p', { class: 'quiet', id: 'naming-count' });
  const answer = button(t.answer, give, { class: 'button strong', id: 'naming-answer' });
  holder.append(count, make('div', { class: 'row' }, answer, button(t.previous, () => step(-1), { id: 'naming-previous' }), button(t.following, () => step(1), { id: 'naming-next' })), make('p', { class: 'quiet' }, t.how));

  const film = byId('picture');
  const surface = byId('overlay');
  /** @type {Label | null} */
  let chosen = null;
  /** @type {{ x: number, y: number } | null} */
  let press = null;

  /**
   * @param {Label} label
   * @param {string} words
   */
  function choose(label, words) {
    if (same(label, chosen)) return;
    chosen = label;
    if (words) act.said(words);
    act.touch();
  }

  /** @param {number} by */
  function step(by) {
    const parts = act.room()?.partsShown(act.held()) ?? [];
    if (parts.length === 0) return;
    const at = parts.findIndex((p) => same(p, chosen));
    const next = at < 0 ? (by > 0 ? 0 : parts.length - 1) : (at + by + parts.length) % parts.length;
    choose(parts[next], t.chosenOf(next + 1, parts.length));
  }

  function give() {
    if (!chosen) return act.said(t.first);
    const label = chosen;
    chosen = null;
    act.answer(label);
  }

  /** @param {PointerEvent} event */
  function partAt(event) {
    const box = surface.getBoundingClientRect();
    const field = act.field_mm();
    const u = ((event.clientX - box.left) / box.width - 0.5) * field;
    const v = (0.5 - (event.clientY - box.top) / box.height) * field;
    return Math.abs(u) > HALF_FIELD_MM || Math.abs(v) > HALF_FIELD_MM ? null : (act.room()?.partAt(u, v, REACH_MM, act.held()) ?? null);
  }

  surface.addEventListener('pointerdown', (event) => {
    press = act.on() && event.button === 0 && event.isPrimary ? { x: event.clientX, y: event.clientY } : null;
  });
  surface.addEventListener('pointerup', (event) => {
    const was = press;
    press = null;
    if (!was || !act.on() || Math.hypot(event.clientX - was.x, event.clientY - was.y) > STILL_PX) return;
    const label = partAt(event);
    if (!label) act.said(t.none);
    else if (same(label, chosen)) give();
    else choose(label, t.chosen);
  });
  film.addEventListener('keydown', (event) => {
    if (!act.on() || event.altKey || event.ctrlKey || event.metaKey || event.target !== film) return;
    if (event.key in WAYS) {
      event.preventDefault();
      event.stopPropagation();
      step(WAYS[event.key]);
    } else if (event.key === 'Enter') {
      event.preventDefault();
      give();
    }
  });

  return {
    /** What is asked for, to stand where the learner looks first. */
    ask,
    /**
     * What is lit: the outline chosen, or the one that was missed.
     * @param {ExerciseEntry | null | undefined} exercise
     */
    lit(exercise) {
      if (chosen) return chosen;
      return exercise && exercise.right === false && act.mayShow() ? exercise.was : null;
    },
    /**
     * What to say of the last answer.
     * @param {ExerciseEntry} exercise
     */
    verdict(exercise) {
      const { said, was } = exercise;
      if (!said || !was) return '';
      return exercise.right ? t.right(said) : `${t.wrong(said)} ${act.mayShow() ? t.shown(was) : t.later(was)}`;
    },
    /** @param {ExerciseEntry} exercise */
    update(exercise) {
      say(ask, exercise.asks ? t.ask(exercise.asks) : t.allFound);
      say(count, t.count(exercise.found, exercise.all));
      answer.disabled = !exercise.asks;
    },
    forget() {
      chosen = null;
    },
  };
}
