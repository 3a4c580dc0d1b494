// Joins the drawings of C-arm and patient with the picture: dragging, rays, bones, and the part that is lit. Loaded after the first picture.

import { levelBelow } from '../engine/catalogue.js';
import { onceAFrame } from '../base/frame.js';
import { shape } from '../base/svg.js';
import { VIEWERS, directions, line } from './drawing.js';
import { byId, say, segments } from '../base/dom.js';
import { keep, setting } from '../base/storage.js';
import { gantryLink as t } from '../words/gantry.js';
import { BEAM, keyOf, sameBeam } from '../state/positioning.js';
import { raysOf } from './beam.js';
import { bonesSeen, linesOf, nearestPart, sameLabel } from './bones.js';
import { dragAngle, pointIn } from './drag.js';
import { litPart } from './lit.js';
import { adoptLook } from './look.js';
import { nearDrawing } from './near.js';

const CONTROL_OF = { feet: 'oblique', side: 'tilt' };
/** What of the C-arm's place the picture must share for its target to be told. */
const moved = (state, shown) => !shown || !sameBeam(shown, state);

/**
 * `act`: `whole()` whether the patient stands in the engine, `shown()` what stands in the picture (picture.js) or null, `tells()` whether parts may
 * be named, `needle()` hub and tip or null, `marked()` whether a target is marked, `revision()` of the attempt, `busy()` whether a press on the picture
 * means something else, `field_mm()`, `relight()` draws the picture's lines again.
 */
export function gantryLink(app, act) {
  adoptLook();
  const relight = onceAFrame(act.relight);
  const drawings = Object.keys(VIEWERS).map((from) => drawing(app, from));
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

  /** The bones of another patient or level: once each. */
  function meetBones({ patient, seed, changed, level, side }) {
    const key = [patient, seed, changed, level].join();
    const below = level === 'S1' ? undefined : levelBelow(level);
    const fresh = key !== bonesOf;
    if (!fresh && side === sideOf) return;
    [bonesOf, sideOf] = [key, side];
    for (const one of drawings) {
      if (fresh) one.meet(app.room);
      one.aimAt(level, side, below);
    }
    if (!fresh) return;
    const all = drawings.flatMap((one) => one.labels());
    lit.offer(all.filter((label, i) => all.findIndex((other) => sameLabel(other, label)) === i), level, below);
  }

  /** The point that is aimed at where it may be told, and the C-arm to draw its ray with. */
  function aim(state, shown) {
    const allowed = state.injection ? act.marked() : act.tells();
    if (!allowed || (state.byExposure && moved(state, shown))) return null;
    const point = app.room.aimPoint();
    return point.length === 3 ? [...point] : null;
  }

  function update() {
    const { state } = app;
    if (!act.whole()) return;
    meetBones(state);
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
    const sentences = [point && t.ray, needle && t.needle, lit.now() && t.litHere(lit.now())].filter(Boolean);
    for (const one of drawings) one.update({ state, near, tells, rays: raysOf(state, point), pictured, pictureRays: pictured && raysOf(pictured, point), point, needle, sentences });
  }

  byId('gantry-parts').dataset.linked = 'yes';
  return {
    update,
    /** What stands over the picture, with the lit part. */
    marks(marks) {
      const part = marks?.lit ? null : lit.now();
      return part ? { ...marks, lit: part } : marks;
    },
  };
}

/** One of the two drawings, whole and near. */
function drawing(app, from) {
  const control = CONTROL_OF[from];
  const key = `${control}_deg`;
  const { see } = VIEWERS[from];
  const figure = byId(`gantry-${from}`);
  const svg = figure.querySelector('svg');
  const caption = figure.querySelector('figcaption');
  const description = shape('desc', { id: `gantry-${from}-more` });
  svg.querySelector('title').after(description);
  svg.setAttribute('aria-describedby', description.id);
  const [under, over] = [...svg.querySelectorAll('g')];
  const own = svg.querySelector('.g-body');
  const layer = (name, into, tag = 'path') => {
    const element = shape(tag, { class: `g-${name}` });
    into.append(element);
    return element;
  };
  const bones = layer('bones', under);
  const lit = layer('lit', over);
  const aimRay = layer('aim', over);
  const landing = layer('landing', over, 'circle');
  landing.setAttribute('r', 22);
  const grip = layer('grip', svg);
  const near = nearDrawing(figure, from);
  let parts = [];

  /** Where the receptor's direction is drawn, at 1 mm, when the drawing's angle is `deg` and the other one stays. */
  const seenAt = (deg) => {
    const { oblique_deg, tilt_deg } = app.state;
    return see(directions(from === 'feet' ? deg : oblique_deg, from === 'feet' ? tilt_deg : deg).receptor);
  };
  const frozen = () => byId(`turn-${control}`).disabled;
  const behind = (label) => from === 'side' && label.side === 'left';

  return {
    /** Asks the engine for the bones of its patient and level. */
    meet(room) {
      parts = bonesSeen(room, VIEWERS[from]);
      bones.setAttribute('d', linesOf(parts, () => true));
    },
    aimAt: (level, side, below) => near.bones(parts, { level, side }, below),
    labels: () => parts.map(({ label }) => label),
    light(part) {
      near.light(part);
      lit.setAttribute('d', part ? linesOf(parts, (l) => sameLabel(l, part)) : '');
    },
    listen(part) {
      const partAt = (event) => nearestPart(parts, pointIn(near.svg, event), behind);
      const middle = () => (near.svg.hasAttribute('hidden') ? [0, 0] : see([-app.state.table_x_mm, 0, -app.state.table_z_mm]));
      dragAngle(svg, key, app, { seenAt, frozen, middle: () => [0, 0] });
      dragAngle(near.svg, key, app, { seenAt, frozen, middle, tap: (event) => part.take(partAt(event)) });
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

/** An arrow both ways on the receptor, along the way it goes. */
function gripAt(state, seenAt, key) {
  const REACH_MM = 500;
  const at = (deg, out = 0) => seenAt(state[key] + deg).map((x) => x * (REACH_MM + out));
  const shaft = [-11, -5, 0, 5, 11].map((deg) => at(deg));
  const head = (deg) => [at(deg * 0.6, 45), at(deg), at(deg * 0.6, -45)];
  return line(shaft) + line(head(-11)) + line(head(11));
}
