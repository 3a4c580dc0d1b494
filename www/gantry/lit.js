// The part that is lit: under the pointer, or chosen by a touch or from the list. The picture and the drawings light the same one.

import { DETECTOR_MM } from '../film/film-look.js';
import { onceAFrame } from '../base/frame.js';
import { byId, make, say } from '../base/dom.js';
import { gantryLink as t } from '../words/gantry.js';
import { labelKey, sameLabel } from './bones.js';

/**
 * @import { Shown } from '../film/picture.js'
 * @import { Label, Level } from '../pkg/values.js'
 * @import { App } from '../state/page-state.js'
 *
 * @typedef {ReturnType<typeof litPart>} LitPart
 */

/**
 * As near as this to a line the pointer means it, mm on the detector; a finger needs more.
 * @type {Record<string, number>}
 */
const REACH_MM = { mouse: 5, pen: 5, touch: 8 };
const STILL_PX = 6;
/** From the middle outwards and downwards: the order in which the list has them. */
const ORDER = ['spinous_process', 'median_crest', 'lamina', 'pedicle', 'pars', 'superior_articular_process', 'inferior_articular_process', 'transverse_process', 'ala', 'body'];

/**
 * Sets up the list in `holder` and the picture. `act`: `tells()` whether parts may be named, `shown()` what stands in the picture, `busy()`
 * whether a press on the picture means something else, `field_mm()`, `changed()` when another part is lit.
 * @param {App} app
 * @param {Element} holder
 * @param {{ tells: () => boolean, shown: () => Shown | null, busy: () => boolean, field_mm: () => number, changed: () => void }} act
 */
export function litPart(app, holder, act) {
  const film = byId('picture');
  const surface = byId('overlay');
  const name = make('p', { class: 'lit-name', id: 'lit-name', hidden: true });
  const list = make('select', { id: 'lit-part' }, make('option', { value: '' }, t.none));
  // There is nothing to choose from before the engine has told its bones.
  const field = make('div', { class: 'choice', hidden: true }, make('label', { for: 'lit-part' }, t.find), list);
  const hint = make('p', { class: 'quiet', id: 'gantry-hint' });
  film.append(name);
  holder.append(field, hint);
  /** @type {Map<string, Label>} */
  let labels = new Map();
  /** @type {Label | null} */
  let under = null;
  /** @type {Label | null} */
  let chosen = null;
  /** @type {{ x: number; y: number; } | null} */
  let press = null;
  /** @type {PointerEvent | null} */
  let moved = null;

  const now = () => (act.tells() ? (under ?? chosen) : null);
  const seeable = () => (act.tells() && app.state.outlines && !act.busy() && byId('film-state').hidden ? act.shown() : null);

  function changed() {
    const lit = now();
    name.hidden = !lit;
    if (lit) say(name, t.name(lit));
    const key = chosen && act.tells() ? labelKey(chosen) : '';
    list.value = labels.has(key) ? key : '';
    act.changed();
  }

  /** @param {Label | null | undefined} label */
  function hover(label) {
    if (sameLabel(label, under) || (label ?? null) === under) return;
    under = label ?? null;
    changed();
  }

  /**
   * Keeps a part lit, or none, and says so once.
   * @param {Label | null} label
   */
  function choose(label) {
    chosen = label;
    under = null;
    changed();
    say(byId('status'), sentence(label));
  }

  /** @param {Label | null} label */
  function sentence(label) {
    if (!label) return t.unlit;
    const { outlines, byExposure } = app.state;
    const shown = act.shown();
    if (!outlines) return t.noOutlines(label);
    if (!shown) return t.notInPicture(label);
    return app.room?.partsShown(byExposure).some((l) => sameLabel(l, label)) ? t.lit(label) : t.notInPicture(label);
  }

  /**
   * The part at a place of the picture, inside the open field.
   * @param {PointerEvent} event
   */
  function partAt(event) {
    const shown = seeable();
    if (!shown || !app.room) return null;
    const box = surface.getBoundingClientRect();
    const [x, y] = [(event.clientX - box.left) / box.width - 0.5, 0.5 - (event.clientY - box.top) / box.height];
    if (Math.abs(x) > shown.open[0] / 2 || Math.abs(y) > shown.open[1] / 2) return null;
    const mm = act.field_mm();
    return app.room.partAt(x * mm, y * mm, ((REACH_MM[event.pointerType] ?? REACH_MM.touch) * mm) / DETECTOR_MM, app.state.byExposure);
  }

  const look = onceAFrame(() => moved && !press && hover(partAt(moved)));
  surface.addEventListener('pointermove', (event) => {
    if (event.pointerType === 'touch' || event.buttons) return;
    moved = event;
    look();
  });
  surface.addEventListener('pointerleave', () => {
    moved = null;
    hover(null);
  });
  surface.addEventListener('pointerdown', (event) => {
    press = event.button === 0 && event.isPrimary ? { x: event.clientX, y: event.clientY } : null;
    hover(null);
  });
  surface.addEventListener('pointerup', (event) => {
    const was = press;
    press = null;
    if (!was || !seeable() || Math.hypot(event.clientX - was.x, event.clientY - was.y) > STILL_PX) return;
    take(partAt(event));
  });
  surface.addEventListener('pointercancel', () => (press = null));
  list.addEventListener('change', () => choose(labels.get(list.value) ?? null));
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && now() && !event.defaultPrevented) {
      under = null;
      choose(null);
    }
  });

  /**
   * A press on a part keeps it lit; on the lit one, or beside all, it goes out.
   * @param {Label | null | undefined} label
   */
  function take(label) {
    if (!label && !chosen) return;
    choose(sameLabel(label, chosen) ? null : (label ?? null));
  }

  return {
    now,
    hover,
    take: (/** @type {Label | null | undefined} */ label) => act.tells() && take(label),
    /**
     * The parts that can be chosen for this level: `seen` of the engine's bones.
     * @param {Label[]} seen
     * @param {Level} level
     * @param {Level | null | undefined} below
     */
    offer(seen, level, below) {
      const rank = (/** @type {Label} */ l) => ORDER.indexOf(l.part) * 2 + (l.side === 'right' ? 1 : 0);
      /** @type {{ of: Level | null | undefined, some: Label[] }[]} */
      const groups = [
        { of: level, some: seen.filter((l) => l.level === level) },
        { of: below, some: seen.filter((l) => l.level === below && l.part === 'superior_articular_process') },
      ].filter(({ some }) => some.length > 0);
      labels = new Map(groups.flatMap(({ some }) => some.map((l) => /** @type {const} */ ([labelKey(l), l]))));
      list.replaceChildren(make('option', { value: '' }, t.none), ...groups.map(({ of, some }) => make('optgroup', { label: of ?? '' }, ...some.sort((a, b) => rank(a) - rank(b)).map((l) => make('option', { value: labelKey(l) }, t.name(l))))));
      if (chosen && ![level, below].includes(chosen.level)) chosen = null;
      changed();
    },
    /** Whether parts may be told has changed, perhaps. */
    refresh() {
      const tells = act.tells();
      if (field.hidden === !tells && hint.textContent) return;
      field.hidden = !tells;
      say(hint, tells ? t.hint : t.hintTurn);
      if (!tells) under = chosen = null;
      changed();
    },
  };
}
