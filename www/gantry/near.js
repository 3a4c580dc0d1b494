// A drawing at the scale of a vertebra: the bones' own outlines, the rays that pass them, and the needle.

import { shape } from '../base/svg.js';
import { VIEWERS, line } from './drawing.js';
import { make, say } from '../base/dom.js';
import { gantryLink as t } from '../words/gantry.js';
import { texts } from '../words/texts.js';
import { linesOf, sameLabel } from './bones.js';

/**
 * @import { Shown } from '../film/picture.js'
 * @import { Label, Level, Target } from '../pkg/values.js'
 * @import { PageState } from '../state/page-state.js'
 * @import { raysOf } from './beam.js'
 * @import { SeenPart } from './bones.js'
 * @import { Flat, Onlooker, Point } from './drawing.js'
 */

/** What is shown about the centre of the target's body, mm: more of the back, where the processes are. */
const BOX = { left: -66, right: 66, top: -86, bottom: 46 };
const ENDS = { feet: [texts.gantry.left, texts.gantry.right], side: [texts.gantry.feetEnd, texts.gantry.head] };

/**
 * Builds one, hidden, at the head of `holder`. Returns `{ svg, caption, bones(parts, state), rays(…), light(label), describe(…) }`.
 * @param {Element} holder
 * @param {Onlooker} from
 */
export function nearDrawing(holder, from) {
  const { see } = VIEWERS[from];
  const id = `near-${from}-text`;
  const svg = shape('svg', { viewBox: [BOX.left, BOX.top, BOX.right - BOX.left, BOX.bottom - BOX.top].join(' '), role: 'img', class: 'gantry-svg near', id: `near-${from}`, 'aria-labelledby': id });
  const title = shape('title', { id });
  const caption = make('figcaption');
  const layer = (/** @type {string} */ name, /** @type {keyof SVGElementTagNameMap} */ tag = 'path') => {
    const element = shape(tag, { class: `n-${name}` });
    svg.append(element);
    return element;
  };
  svg.append(title);
  const [neighbours, bone, below, ray, aimRay, halo, lit, needle] = ['neighbours', 'bone', 'below', 'ray', 'aim', 'lit-halo', 'lit', 'needle'].map((n) => layer(n));
  const [target, tip] = [layer('target', 'circle'), layer('tip', 'circle')];
  ENDS[from].forEach((text, i) => {
    const word = layer('word', 'text');
    word.setAttribute('x', String(i ? BOX.right - 9 : BOX.left + 9));
    word.setAttribute('y', String(BOX.bottom - 4));
    say(word, text);
  });
  const ends = { receptor: layer('word', 'text'), source: layer('word', 'text') };
  /** @type {SeenPart[]} */
  let parts = [];

  return {
    svg,
    caption,
    /**
     * Another patient, level or side.
     * @param {SeenPart[]} seen
     * @param {Target} target
     * @param {Level | null | undefined} levelBelow
     */
    bones(seen, { level, side }, levelBelow) {
      parts = seen;
      const isBelow = (/** @type {Label} */ l) => l.level === levelBelow && l.part === 'superior_articular_process' && l.side === side;
      neighbours.setAttribute('d', linesOf(parts, (l) => l.level !== level && !isBelow(l)));
      bone.setAttribute('d', linesOf(parts, (l) => l.level === level));
      below.setAttribute('d', linesOf(parts, isBelow));
    },
    /**
     * Rays of `raysOf` or null, the point aimed at or null, hub and tip or null.
     * @param {ReturnType<typeof raysOf> | null} rays
     * @param {Point | null} aim
     * @param {Point[] | null} needleEnds
     */
    rays(rays, aim, needleEnds) {
      ray.setAttribute('d', rays ? line([rays.source, rays.end].map(see)) : '');
      aimRay.setAttribute('d', rays?.landing ? line([rays.source, rays.landing].map(see)) : '');
      needle.setAttribute('d', needleEnds ? line(needleEnds.map(see)) : '');
      put(target, rays?.landing && aim ? see(aim) : null);
      put(tip, needleEnds && see(needleEnds[1]));
      for (const name of /** @type {const} */ (['receptor', 'source'])) {
        const element = ends[name];
        const at = rays && beside(see(rays.isocentre), see(name === 'receptor' ? rays.end : rays.source), see(aim ?? rays.isocentre));
        element.toggleAttribute('hidden', !at);
        if (!at) continue;
        element.setAttribute('x', at[0].toFixed(1));
        element.setAttribute('y', at[1].toFixed(1));
        say(element, texts.gantry[name]);
      }
    },
    /** @param {Label | null} label */
    light(label) {
      const d = label ? linesOf(parts, (l) => sameLabel(l, label)) : '';
      for (const path of [halo, lit]) path.setAttribute('d', d);
    },
    /**
     * @param {PageState} state
     * @param {Shown | null} shown
     * @param {string[]} sentences
     */
    describe(state, shown, sentences) {
      say(caption, t[`near_${from}`](state));
      const where = from === 'feet' ? t.fromFeet : t.fromSide;
      say(title, [t.describeNear({ level: state.level, from: where }), shown ? t.centralRay(shown) : t.noPicture, ...sentences].join(' '));
    },
    /** @param {boolean} on */
    show(on) {
      if (on && !svg.isConnected) holder.append(svg, caption);
      svg.toggleAttribute('hidden', !on);
      caption.hidden = !on;
    },
  };
}

/**
 * @param {SVGElement} circle
 * @param {Flat | null} at
 */
function put(circle, at) {
  circle.toggleAttribute('hidden', !at);
  if (!at) return;
  circle.setAttribute('cx', at[0].toFixed(2));
  circle.setAttribute('cy', at[1].toFixed(2));
}

/**
 * Where a ray's end is named: near the border, beside the ray and on the side where the target is not.
 * @param {Flat} from
 * @param {Flat} to
 * @param {Flat} target
 */
function beside([x0, y0], [x1, y1], [targetX, targetY]) {
  const [dx, dy] = [x1 - x0, y1 - y0];
  if (Math.abs(dx) > Math.abs(dy)) {
    const x = dx > 0 ? BOX.right - 15 : BOX.left + 15;
    const on = y0 + ((x - x0) * dy) / dx;
    return [x, on + (targetY < y0 ? 7 : -7)];
  }
  const y = dy > 0 ? BOX.bottom - 13 : BOX.top + 6;
  const on = x0 + ((y - y0) * dx) / dy;
  const left = targetX > x0 + ((targetY - y0) * dx) / dy;
  return [on + (left ? -16 : 16), y];
}
