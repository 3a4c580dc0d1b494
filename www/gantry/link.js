// Joins the drawings of C-arm and patient with the picture: dragging, rays, bones, and the part that is lit. Loaded after the first picture.

import { levelBelow } from '../engine/catalogue.js';
import { onceAFrame } from '../base/frame.js';
import { shape } from '../base/svg.js';
import { VIEWERS, directions, line } from './drawing.js';
import { byId, say, segments, within } from '../base/dom.js';
import { keep, setting } from '../base/storage.js';
import { gantryLink as t } from '../words/gantry.js';
import { tableWords } from '../controls/table.js';
import { BEAM, keyOf, sameBeam } from '../state/positioning.js';
import { raysOf } from './beam.js';
import { bonesSeen, linesOf, nearestPart, sameLabel } from './bones.js';
import { dragAngle, pointIn } from './drag.js';
import { litPart } from './lit.js';
import { adoptLook } from './look.js';
import { nearDrawing } from './near.js';

/** @type {readonly (keyof import('../state/positioning.js').Place)[]} */
const TABLE = ['table_x_mm', 'table_y_mm', 'table_z_mm'];

/**
 * @import { Marks, Shown } from '../film/picture.js'
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { Label, Level, Side } from '../pkg/values.js'
 * @import { App, PageState } from '../state/page-state.js'
 * @import { PatientChoice } from '../state/positioning.js'
 * @import { SeenPart } from './bones.js'
 * @import { Onlooker, Point } from './drawing.js'
 * @import { LitPart } from './lit.js'
 *
 * What the rest of the page tells the drawings: `whole()` whether the patient stands in the engine, `shown()` what stands in the picture or null,
 * `tells()` whether parts may be named, `needle()` hub and tip or null, `marked()` whether a target is marked, `revision()` of the attempt, `busy()`
 * whether a press on the picture means something else, `field_mm()`, `relight()` draws the picture's lines again.
 * @typedef {{
 *   whole: () => boolean, shown: () => Shown | null, tells: () => boolean, needle: () => Point[] | null, marked: () => boolean, revision: () => number,
 *   busy: () => boolean, field_mm: () => number, relight: () => void,
 * }} Acts
 *
 * What a drawing shows: `pictured` and `pictureRays` of the picture, `rays` of the C-arm as it stands.
 * @typedef {{
 *   state: PageState, near: boolean, tells: boolean, rays: ReturnType<typeof raysOf>, pictured: Shown | null, pictureRays: ReturnType<typeof raysOf> | null,
 *   point: Point | null, needle: Point[] | null, sentences: string[],
 * }} Drawn
 */

/** @type {Record<Onlooker, 'oblique' | 'tilt'>} */
const CONTROL_OF = { feet: 'oblique', side: 'tilt' };
/** What of the C-arm's place the picture must share for its target to be told. */
const moved = (/** @type {PageState} */ state, /** @type {Shown | null} */ shown) => !shown || !sameBeam(shown, state);

/**
 * @param {App} app
 * @param {Acts} act
 */
export function gantryLink(app, act) {
  adoptLook();
  const relight = onceAFrame(act.relight);
  const drawings = /** @type {Onlooker[]} */ (['feet', 'side']).map((from) => drawing(app, from));
  let choice = setting('gantry', ['whole', 'near']);
  let bonesOf = '';
  let sideOf = '';
  let drawnFor = '';

  const lit = litPart(app, byId('gantry-parts'), {
    tells: act.tells, shown: act.shown, busy: act.busy, field_mm: act.field_mm,
    changed() {
      const part = lit.now();
      for (const one of drawings) one.light(part);
      relight();
      drawnFor = '';
      update();
    },
  });
  const tools = byId('gantry-tools');
  // Until there are bones to choose.
  tools.hidden = true;
  tools.setAttribute('role', 'radiogroup');
  tools.setAttribute('aria-label', t.show);
  tools.classList.add('segments');
  const showChoice = segments(tools, 'gantry-show', [['whole', t.whole], ['near', t.near]], (name) => {
    keep('gantry', name);
    choice = name;
    drawnFor = '';
    update();
  });
  for (const one of drawings) one.listen(lit);

  /**
   * The bones of another patient or level: once each.
   * @param {TeachingRoom} room
   * @param {PatientChoice & { level: Level, side: Side }} of
   */
  function meetBones(room, { patient, seed, changed, level, side }) {
    const key = [patient, seed, changed, level].join();
    const below = level === 'S1' ? undefined : levelBelow(level);
    const fresh = key !== bonesOf;
    if (!fresh && side === sideOf) return;
    [bonesOf, sideOf] = [key, side];
    for (const one of drawings) {
      if (fresh) one.meet(room);
      one.aimAt(level, side, below);
    }
    if (!fresh) return;
    const all = drawings.flatMap((one) => one.labels());
    lit.offer(all.filter((label, i) => all.findIndex((other) => sameLabel(other, label)) === i), level, below);
  }

  /**
   * The point that is aimed at where it may be told, and the C-arm to draw its ray with.
   * @param {PageState} state
   * @param {Shown | null} shown
   */
  function aim(state, shown) {
    const allowed = state.injection ? act.marked() : act.tells();
    if (!app.room || !allowed || (state.byExposure && moved(state, shown))) return null;
    const point = app.room.aimPoint();
    return point.length === 3 ? [...point] : null;
  }

  function update() {
    const { state } = app;
    if (!app.room || !act.whole()) return;
    meetBones(app.room, state);
    lit.refresh();
    const shown = act.shown();
    const tells = act.tells();
    const needle = act.needle();
    const near = tells && choice === 'near';
    const key = [bonesOf, sideOf, near, tells, needle, act.revision(), ...[state, shown].map((s) => s && keyOf(s, BEAM))].join();
    if (key === drawnFor) return;
    drawnFor = key;
    tools.hidden = !tells;
    showChoice(near ? 'near' : 'whole');
    const point = aim(state, shown);
    // The near drawing is of the picture; by exposure that is the last one, of this bone.
    const pictured = shown && shown.level === state.level && shown.patient === state.patient ? shown : null;
    const part = lit.now();
    const sentences = [point ? t.ray : '', needle ? t.needle : '', part ? t.litHere(part) : '', TABLE.some((key) => state[key] !== 0) ? t.table.stands(tableWords(app, state)) : ''].filter((text) => text !== '');
    for (const one of drawings) one.update({ state, near, tells, rays: raysOf(state, point), pictured, pictureRays: pictured && raysOf(pictured, point), point, needle, sentences });
  }

  byId('gantry-parts').dataset.linked = 'yes';
  return {
    update,
    /**
     * What stands over the picture, with the lit part.
     * @param {Marks | null} marks
     */
    marks(marks) {
      const part = marks?.lit ? null : lit.now();
      return part ? { ...marks, lit: part } : marks;
    },
  };
}

/**
 * One of the two drawings, whole and near.
 * @param {App} app
 * @param {Onlooker} from
 */
function drawing(app, from) {
  const control = CONTROL_OF[from];
  const key = /** @type {const} */ (`${control}_deg`);
  const { see } = VIEWERS[from];
  const figure = byId(`gantry-${from}`);
  const svg = within(figure, 'svg', SVGSVGElement);
  const caption = within(figure, 'figcaption');
  const description = shape('desc', { id: `gantry-${from}-more` });
  within(svg, 'title', SVGElement).after(description);
  svg.setAttribute('aria-describedby', description.id);
  const [under, over] = [...svg.querySelectorAll('g')];
  const own = within(svg, '.g-body', SVGElement);
  const layer = (/** @type {string} */ name, /** @type {SVGElement} */ into, /** @type {keyof SVGElementTagNameMap} */ tag = 'path') => {
    const element = shape(tag, { class: `g-${name}` });
    into.append(element);
    return element;
  };
  const bones = layer('bones', under);
  const lit = layer('lit', over);
  const aimRay = layer('aim', over);
  const landing = layer('landing', over, 'circle');
  landing.setAttribute('r', '22');
  const grip = layer('grip', svg);
  const near = nearDrawing(figure, from);
  /** @type {SeenPart[]} */
  let parts = [];

  /** Where the receptor's direction is drawn, at 1 mm, when the drawing's angle is `deg` and the other one stays. */
  const seenAt = (/** @type {number} */ deg) => {
    const { oblique_deg, tilt_deg } = app.state;
    return see(directions(from === 'feet' ? deg : oblique_deg, from === 'feet' ? tilt_deg : deg).receptor);
  };
  const frozen = () => byId(`turn-${control}`, HTMLInputElement).disabled;
  const behind = (/** @type {Label} */ label) => from === 'side' && label.side === 'left';

  return {
    /**
     * Asks the engine for the bones of its patient and level.
     * @param {TeachingRoom} room
     */
    meet(room) {
      parts = bonesSeen(room, VIEWERS[from]);
      bones.setAttribute('d', linesOf(parts, () => true));
    },
    aimAt: (/** @type {Level} */ level, /** @type {Side} */ side, /** @type {Level | null | undefined} */ below) => near.bones(parts, { level, side }, below),
    labels: () => parts.map(({ label }) => label),
    /** @param {Label | null} part */
    light(part) {
      near.light(part);
      lit.setAttribute('d', part ? linesOf(parts, (l) => sameLabel(l, part)) : '');
    },
    /** @param {LitPart} part */
    listen(part) {
      const partAt = (/** @type {PointerEvent} */ event) => nearestPart(parts, pointIn(near.svg, event), behind);
      const middle = () => /** @type {[number, number]} */ (near.svg.hasAttribute('hidden') ? [0, 0] : see([-app.state.table_x_mm, -app.state.table_y_mm, -app.state.table_z_mm]));
      dragAngle(svg, key, app, { seenAt, frozen, middle: () => [0, 0] });
      dragAngle(near.svg, key, app, { seenAt, frozen, middle, tap: (event) => part.take(partAt(event)) });
      /** @type {PointerEvent | null} */
      let at = null;
      const look = onceAFrame(() => at && part.hover(partAt(at)));
      near.svg.addEventListener('pointermove', (event) => {
        if (event.pointerType === 'touch') return;
        at = event.buttons ? null : event;
        if (at) look();
        else part.hover(null);
      });
      near.svg.addEventListener('pointerleave', () => {
        at = null;
        part.hover(null);
      });
    },
    /** @param {Drawn} drawn */
    update({ state, near: isNear, tells, rays, pictured, pictureRays, point, needle, sentences }) {
      svg.toggleAttribute('hidden', isNear);
      caption.hidden = isNear;
      near.show(isNear);
      // The shape that stands for any vertebra, where the patient's own may not be told.
      own.toggleAttribute('hidden', tells);
      bones.toggleAttribute('hidden', !tells);
      if (isNear) {
        near.rays(pictureRays, point, needle);
        near.describe(state, pictured, sentences);
        return;
      }
      const to = rays.landing && see(rays.landing);
      aimRay.setAttribute('d', to ? line([see(rays.source), to]) : '');
      landing.toggleAttribute('hidden', !to);
      if (to) {
        landing.setAttribute('cx', to[0].toFixed(2));
        landing.setAttribute('cy', to[1].toFixed(2));
      }
      grip.setAttribute('d', gripAt(state, seenAt, key));
      say(description, sentences.join(' '));
    },
  };
}

/**
 * An arrow both ways on the receptor, along the way it goes.
 * @param {PageState} state
 * @param {(deg: number) => Point} seenAt
 * @param {'oblique_deg' | 'tilt_deg'} key
 */
function gripAt(state, seenAt, key) {
  const REACH_MM = 500;
  const at = (/** @type {number} */ deg, out = 0) => seenAt(state[key] + deg).map((x) => x * (REACH_MM + out));
  const shaft = [-11, -5, 0, 5, 11].map((deg) => at(deg));
  const head = (/** @type {number} */ deg) => [at(deg * 0.6, 45), at(deg), at(deg * 0.6, -45)];
  return line(shaft) + line(head(-11)) + line(head(11));
}
