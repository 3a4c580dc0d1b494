// A picture of what a lesson draws: the best view of the drawn target on the drawn patient, by the engine of the room. It is loaded
// only when there is something to show, and nothing else waits for it.

import { viewOf } from '../views/criterion-rows.js';
import { outlineStyle } from '../film/film-look.js';
import { byId, penOf, say, segments } from '../base/dom.js';
import { loadFirstPart, reason } from '../engine/room.js';
import { texts } from '../words/texts.js';
import { rest } from '../base/frame.js';
import { teach } from '../words/teach.js';

const t = teach.author;
const VIEWS = /** @type {const} */ (['true_ap', 'oblique', 'lateral']);

/**
 * @import { DrawnEntry, ViewKind } from '../pkg/values.js'
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 *
 * The patient and the target that a lesson draws.
 * @typedef {Pick<DrawnEntry, 'patient' | 'seed' | 'changed' | 'level' | 'side'>} Drawn
 */

/** Keeps the picture. Returns `show(drawn)`; `drawn` is null while nothing can be drawn. */
export function preview() {
  const film = penOf(byId('preview', HTMLCanvasElement), { alpha: false });
  const lines = penOf(byId('preview-lines', HTMLCanvasElement));
  const showView = segments(byId('preview-views'), 'preview-view', VIEWS.map((v) => /** @type {const} */ ([v, t.views[v]])), (picked) => {
    view = picked;
    request();
  });
  /** @type {typeof VIEWS[number]} */
  let view = 'oblique';
  /** @type {Drawn | null} */
  let wanted = null;
  /** @type {TeachingRoom | null} */
  let room = null;
  /** @type {ReturnType<typeof loadFirstPart> | null} */
  let loading = null;
  let shaped = '';
  let busy = false;
  let again = false;
  showView(view);

  /** @param {string} words */
  function state(words) {
    if (words) byId('preview').setAttribute('aria-label', words);
    say(byId('preview-state'), words);
    byId('preview-state').hidden = words === '';
  }

  /** Draws what is wanted last; what is asked for meanwhile is drawn after it. */
  async function request() {
    again = true;
    if (busy) return;
    busy = true;
    while (again) {
      again = false;
      try {
        await draw(wanted);
      } catch (error) {
        room = loading = null;
        blank();
        state(t.picture.failed(reason(error)));
      }
    }
    busy = false;
  }

  function blank() {
    film.clearRect(0, 0, film.canvas.width, film.canvas.height);
    lines.clearRect(0, 0, lines.canvas.width, lines.canvas.height);
    say(byId('preview-caption'), '');
  }

  /** @param {Drawn | null} drawn */
  async function draw(drawn) {
    if (!drawn) {
      blank();
      return state(t.nothingDrawn);
    }
    if (!room) {
      state(t.picture.loading);
      loading ??= loadFirstPart(() => {});
      const { TeachingRoom } = (await loading).glue;
      state(t.picture.shaping);
      await rest();
      room = new TeachingRoom(drawn.patient, drawn.level, drawn.side);
      shaped = '';
    }
    const patient = `${drawn.patient} ${drawn.seed} ${JSON.stringify(drawn.changed)}`;
    if (shaped !== patient) {
      state(t.picture.shaping);
      shaped = '';
      room.beginPatient(drawn.patient, { seed: drawn.seed, changed: drawn.changed });
      while (room.shapeBone() < 1) {
        await rest();
        if (again) return;
      }
      shaped = patient;
    }
    room.setTarget(drawn.level, drawn.side);
    const best = viewOf(room.report(), view)?.best;
    if (!best) {
      blank();
      return state(t.picture.none(view, drawn));
    }
    room.setOrientation(best.oblique, best.tilt);
    room.drawRadiograph(film, true);
    lines.clearRect(0, 0, lines.canvas.width, lines.canvas.height);
    room.drawOutlines(lines, outlineStyle({ boneDark: true }, lines.canvas.width));
    byId('preview').setAttribute('aria-label', t.picture.alternative(view, drawn));
    say(byId('preview-caption'), t.picture.caption(view, drawn, `${texts.oblique.words(best.oblique)}, ${texts.tilt.words(best.tilt)}`));
    state('');
  }

  return (/** @type {Drawn | null} */ drawn) => {
    if (JSON.stringify(drawn) === JSON.stringify(wanted) && wanted !== null) return;
    wanted = drawn;
    request();
  };
}
