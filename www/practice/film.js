// The film of the open question: shaped a bone at a time, drawn at the screen's resolution, moved to what is true.

import { byId, penOf, say } from '../base/dom.js';
import { rest } from '../base/frame.js';
import { shape } from '../base/svg.js';
import { practice as t } from '../words/practice.js';

/** While it moves, and at rest at most. */
const MOVING_PIXELS = 256;
const MOST_PIXELS = 1024;
/** How long the film takes to the truth, ms. */
const WAY_MS = 1400;
const calm = matchMedia('(prefers-reduced-motion: reduce)');

/**
 * @import { Orientation, ShownQuestion, What } from '../pkg/values.js'
 * @import { PracticeRoom } from './module.js'
 *
 * Right and up of the film's middle, mm.
 * @typedef {[number, number]} Point
 *
 * Which film of a question: the one that was asked, the later one of contrast, the one of the answer.
 * @typedef {'asked' | 'later' | 'answered'} Moment
 *
 * @typedef {ReturnType<typeof filmOf>} PracticeFilm
 */

/**
 * The view of a practice room. `broken(error)` is told of what must not happen.
 * @param {PracticeRoom} room
 * @param {(error: unknown) => void} broken
 */
export function filmOf(room, broken) {
  const canvas = byId('radiograph', HTMLCanvasElement);
  const context = penOf(canvas);
  /** @type {{ at: Orientation, moment: Moment, answered: boolean, outlines: boolean, boneDark: boolean, ready: boolean, run: number }} */
  const shown = { at: { oblique: 0, tilt: 0 }, moment: 'asked', answered: false, outlines: false, boneDark: true, ready: false, run: 0 };

  const restPixels = () => {
    const side = Math.min(MOST_PIXELS, Math.max(MOVING_PIXELS, canvas.clientWidth * devicePixelRatio));
    return Math.round(side / 32) * 32;
  };

  /** @param {number} pixels */
  function draw(pixels) {
    if (!shown.ready) return;
    const { at, moment, boneDark, answered, outlines } = shown;
    room.draw(context, at.oblique, at.tilt, moment, boneDark, pixels);
    const lines = outlines ? room.outlines(at.oblique, at.tilt).map((line) => path('outline', pairs(line))) : [];
    const marks = room.marks(at.oblique, at.tilt, answered).map(({ what, line }) => mark(what, line));
    byId('overlay').replaceChildren(...lines, ...marks.flat());
    say(byId('film-name'), `${t.film}. ${t.filmAt(at)}`);
  }

  /** Draws again, at rest. */
  const again = () => {
    try {
      draw(restPixels());
    } catch (error) {
      broken(error);
    }
  };
  const resized = new ResizeObserver(() => shown.ready && canvas.width !== restPixels() && again());
  resized.observe(canvas);

  return {
    shown,
    again,
    /**
     * Shapes the patient of the question that was opened; resolves when its film is there, or another question was opened meanwhile.
     * @param {ShownQuestion} question
     */
    async open(question) {
      const run = ++shown.run;
      Object.assign(shown, { at: question.view, moment: 'asked', answered: false, outlines: question.outlines, ready: false });
      byId('film').dataset.ready = 'no';
      while (room.shapeBone() < 1) {
        await rest();
        if (run !== shown.run) return;
      }
      shown.ready = true;
      byId('film').dataset.ready = 'yes';
      again();
    },
    /**
     * Shows a moment.
     * @param {Moment} moment
     */
    show(moment) {
      shown.moment = moment;
      again();
    },
    /**
     * Moves to the truth, with the reason on it.
     * @param {Orientation} truth
     */
    async turn(truth) {
      const run = ++shown.run;
      const from = shown.at;
      byId('film').dataset.moving = 'yes';
      Object.assign(shown, { answered: true, moment: 'answered' });
      const far = Math.abs(truth.oblique - from.oblique) + Math.abs(truth.tilt - from.tilt);
      if (far > 0.05 && !calm.matches) {
        const began = performance.now();
        for (let share = 0; share < 1; ) {
          const now = await new Promise((/** @type {(now: number) => void} */ resolve) => requestAnimationFrame(resolve));
          if (run !== shown.run) return;
          share = Math.min(1, Math.max(0, now - began) / WAY_MS);
          const eased = share * share * (3 - 2 * share);
          shown.at = { oblique: from.oblique + (truth.oblique - from.oblique) * eased, tilt: from.tilt + (truth.tilt - from.tilt) * eased };
          try {
            draw(MOVING_PIXELS);
          } catch (error) {
            return broken(error);
          }
        }
      }
      shown.at = truth;
      again();
      byId('film').dataset.moving = 'no';
    },
    /**
     * Shows the film that was asked, or the truth again.
     * @param {Orientation} at
     * @param {boolean} answered
     */
    put(at, answered) {
      shown.run += 1;
      Object.assign(shown, { at, answered, moment: answered ? 'answered' : 'asked' });
      again();
    },
  };
}

/**
 * `[u, v, u, v, …]` in tenths of a mm to points.
 * @param {number[]} flat
 */
function pairs(flat) {
  /** @type {Point[]} */
  const points = [];
  for (let i = 0; i < flat.length; i += 2) points.push([flat[i] / 10, flat[i + 1] / 10]);
  return points;
}

const path = (/** @type {string} */ what, /** @type {Point[]} */ points) => shape('path', { class: what, d: points.map(([u, v], i) => `${i ? 'L' : 'M'}${u.toFixed(1)} ${(-v).toFixed(1)}`).join('') });

const circle = (/** @type {string} */ what, /** @type {Point} */ [u, v], /** @type {number} */ radius) => shape('circle', { class: what, cx: u.toFixed(1), cy: (-v).toFixed(1), r: radius });

/**
 * The shapes of a mark; each with a dark rim under it, so that it shows on any film.
 * @param {What} what
 * @param {Point[]} line
 */
function mark(what, line) {
  const shapes = (/** @type {string} */ kind) => {
    if (what === 'notch') return [circle(kind, line[0], 5.2), path(`${kind} thick`, line)];
    if (line.length === 1) return [circle(kind, line[0], what === 'dot' ? 2.2 : 1.8)];
    if (what === 'process') return [path(`${kind} thick`, line), ...line.map((end) => path(kind, [[end[0], end[1] - 2], [end[0], end[1] + 2]]))];
    if (what === 'went') return [path(kind, line), circle(kind, line[1], 1.2)];
    return [path(kind, line)];
  };
  return [...shapes(`rim ${what}`), ...shapes(`ink ${what}`)];
}
