// The page's button and key for the way through the beam. While they are held the film fades into the bones; released, only the film is left. A
// short press leaves it on, for whoever cannot hold; Escape or another press ends it. Where parts may not be told it is not offered.

import { byId, make, penOf, say } from '../base/dom.js';
import { shape } from '../base/svg.js';
import { reason } from '../engine/room.js';
import { BEAM, keyOf, PATIENT } from '../state/positioning.js';
import { pageSayer } from '../words/language.js';
import { texts } from '../words/texts.js';
import { throughWords } from '../words/through.js';
import { through as english } from '../pkg/texts/en/through.js';
import { STRAIGHT, within } from './beam-eye.js';
import { throughDrawing } from './through.js';

/**
 * @import { Report } from '../pkg/values.js'
 * @import { App } from '../state/page-state.js'
 * @import { Shown } from '../film/picture.js'
 * @import { Swing } from './beam-eye.js'
 *
 * What the page tells it: `whole()` whether the patient stands in the engine, `shown()` what stands in the picture or null, `report()` the engine's on
 * that picture, `tells()` whether parts may be told, `needle()` its hub and tip, mm from the target's centre, or null, `revision()` of the attempt,
 * `aim()` turns the engine back to where the page stands, `said(sentence)`, `notice(sentences)`.
 * @typedef {object} ThroughActs
 * @property {() => boolean} whole
 * @property {() => Shown | null} shown
 * @property {() => Report | null} report
 * @property {() => boolean} tells
 * @property {() => readonly (readonly number[])[] | null} needle
 * @property {() => number} revision
 * @property {() => void} aim
 * @property {(sentence: string) => void} said
 * @property {(sentences: string[]) => void} notice
 */

/** A press shorter than this, with nothing dragged, stays on, ms; so far a drag swings the eye, degrees a CSS px; so far an arrow key. Choices, no source. */
const [SHORT_MS, SWING_DEG_PER_PX, ARROW_DEG] = [280, 0.35, 5];
/** @type {Record<string, [number, number]>} */
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
const KEY = 'x';

/**
 * How the end plate lies, in words.
 * @param {Report} report
 */
function squaredOf(report) {
  const found = report.criteria.find((c) => c.id === 'squared');
  return found ? texts.checks.measured(found) : '';
}

/** Its sign: a source, and two rays to a bone's ring. */
function icon() {
  const svg = shape('svg', { viewBox: '0 0 24 24', 'aria-hidden': 'true', class: 'through-icon' });
  svg.append(shape('path', { d: 'M12 21L5 5M12 21L19 5' }), shape('ellipse', { cx: 12, cy: 7, rx: 4.4, ry: 3.2 }), shape('circle', { cx: 12, cy: 21, r: 1.6 }));
  return svg;
}

/**
 * Puts the button on the film. Returns `{ update(), key() }`: `update` after each frame, `key` for the key's press.
 * @param {App} app
 * @param {ThroughActs} act
 */
export function throughButton(app, act) {
  const t = throughWords(pageSayer('through', english));
  const film = byId('picture');
  const canvas = make('canvas', { id: 'film-bones', class: 'film-bones', 'aria-hidden': 'true' });
  byId('radiograph').after(canvas);
  const pen = penOf(canvas);
  const drawing = throughDrawing();
  const hint = make('span', { class: 'unseen', id: 'through-hint' }, t.hint);
  const button = make('button', { type: 'button', class: 'through', id: 'through', 'aria-pressed': 'false', 'aria-describedby': hint.id, 'aria-keyshortcuts': 'X', title: t.hint }, make('span', { class: 'through-word' }, t.name));
  button.prepend(icon());
  film.append(button, hint);

  /** @type {'' | 'held' | 'key' | 'stays'} */
  let on = '';
  let drawn = '';
  /** @type {Swing} */
  let swing = STRAIGHT;
  /** @type {{ x: number, y: number, at_ms: number, from: Swing, was: boolean, moved: boolean } | null} */
  let press = null;

  // Beside the best view the film shows two, and the divider is dragged there.
  const offered = () => act.whole() && act.tells() && byId('view').dataset.comparing !== 'yes' && !app.state.lessons && act.shown() !== null && act.report() !== null;

  /** @param {'' | 'held' | 'key' | 'stays'} how */
  function show(how) {
    if (how !== '' && !offered()) return;
    const first = on === '';
    on = how;
    button.setAttribute('aria-pressed', String(on !== ''));
    if (on === '') {
      swing = STRAIGHT;
      drawn = '';
      delete film.dataset.through;
      return act.said(t.ended);
    }
    draw();
    if (first && on) film.dataset.through = 'on';
  }

  /** Draws what the picture shows, if that is another thing than was drawn. */
  function draw() {
    const [shown, report, { room }] = [act.shown(), act.report(), app];
    if (!shown || !report || !room) return;
    const needle = act.needle();
    const pixels = byId('overlay', HTMLCanvasElement).width;
    const key = [keyOf(shown, BEAM), shown.side, shown.magnification, swing.right_deg, swing.up_deg, needle, pixels, act.revision()].join();
    if (key === drawn) return;
    drawn = key;
    if (canvas.width !== pixels) canvas.width = canvas.height = pixels;
    try {
      room.setOrientation(shown.oblique_deg, shown.tilt_deg);
      room.setImageRotation(shown.rotation_deg);
      room.setTableShift(shown.table_x_mm, shown.table_y_mm, shown.table_z_mm);
      const drawn = drawing.draw(pen, { room, report, who: keyOf(shown, PATIENT), table_mm: [shown.table_x_mm, shown.table_y_mm, shown.table_z_mm], needle, magnification: shown.magnification, swing }, { names: t.names, scale: pixels / byId('film-image').clientWidth });
      act.said([t.sentence(report.level, squaredOf(report), drawn.tip_mm), swing === STRAIGHT ? '' : t.swung(swing)].filter(Boolean).join(' '));
    } catch (error) {
      act.notice([t.failed(reason(error))]);
      show('');
    } finally {
      act.aim();
    }
  }

  /** @param {Swing} to */
  function turn(to) {
    swing = within(to);
    draw();
  }

  button.addEventListener('pointerdown', (event) => {
    if (event.button !== 0 || !event.isPrimary) return;
    button.setPointerCapture(event.pointerId);
    press = { x: event.clientX, y: event.clientY, at_ms: event.timeStamp, from: swing, was: on !== '', moved: false };
    show('held');
  });
  button.addEventListener('pointermove', (event) => {
    if (!press || !event.isPrimary) return;
    const [dx, dy] = [event.clientX - press.x, event.clientY - press.y];
    press.moved ||= Math.hypot(dx, dy) > 6;
    if (press.moved) turn({ right_deg: press.from.right_deg + dx * SWING_DEG_PER_PX, up_deg: press.from.up_deg - dy * SWING_DEG_PER_PX });
  });
  const release = (/** @type {PointerEvent} */ event) => {
    if (!press) return;
    const { was, moved, at_ms } = press;
    press = null;
    show(!was && !moved && event.type === 'pointerup' && event.timeStamp - at_ms < SHORT_MS ? 'stays' : '');
  };
  for (const type of /** @type {const} */ (['pointerup', 'pointercancel'])) button.addEventListener(type, release);
  button.addEventListener('contextmenu', (event) => event.preventDefault());
  // By Enter, Space or a screen reader: there is no pointer that holds.
  button.addEventListener('click', (event) => {
    if (event.detail === 0) show(on === '' ? 'stays' : '');
  });

  document.addEventListener('keydown', (event) => {
    if (on === '' || event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === 'Escape' && !document.querySelector('[popover]:popover-open, dialog[open]')) {
      event.preventDefault();
      event.stopPropagation();
      return show('');
    }
    const way = ARROWS[event.key];
    // Left on, the arrows on the film and on the sliders turn the C-arm, and the bones follow.
    if (!way || (on === 'stays' && document.activeElement !== button)) return;
    event.preventDefault();
    event.stopPropagation();
    turn({ right_deg: swing.right_deg + way[0] * ARROW_DEG, up_deg: swing.up_deg + way[1] * ARROW_DEG });
  }, { capture: true });
  document.addEventListener('keyup', (event) => on === 'key' && event.key.toLowerCase() === KEY && show(''));
  addEventListener('blur', () => ['key', 'held'].includes(on) && show(''));

  return {
    update() {
      button.hidden = hint.hidden = !offered();
      if (on === '') return;
      if (button.hidden) show('');
      else draw();
    },
    /** The key is pressed: it comes again and again while it is held. */
    key: () => (on === '' ? show('key') : on === 'stays' && show('')),
  };
}
