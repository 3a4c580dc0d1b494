// The picture: radiograph and outlines drawn by the engine on two canvases, marks and names drawn on top.

import { DETECTOR_MM, LOOKS, outlineStyle } from './film-look.js';
import { drawDogNames, drawEdgeLetters } from './labels.js';
import { drawMarks } from './marks.js';
import { byId, penOf, say, screenPixels } from '../base/dom.js';
import { showDogNames, showKey } from './picture-key.js';
import { BEAM, keyOf, PATIENT, sameBeam } from '../state/positioning.js';
import { texts } from '../words/texts.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { BeamSettings, DogPart, Label, Report } from '../pkg/values.js'
 * @import { Beam, PageState } from '../state/page-state.js'
 * @import { Positioning } from '../state/positioning.js'
 * @import { LiveFilm } from './live.js'
 *
 * An exposure: where and of what it was taken, with what, its number, its dog, and the engine's report of it.
 * @typedef {Positioning & Beam & { kind: BeamSettings['kind'], number: number, dog: DogPart[], report: Report }} Exposure
 *
 * What stands in the picture: the page's state with the positioning of the picture, its field (mm on the detector) and its dog.
 * @typedef {PageState & { magnification: number, open: [number, number], dog?: DogPart[], field_mm: number, kind?: BeamSettings['kind'], number?: number }} Shown
 *
 * Needle and contrast in the picture: as of which tick, and a text that changes with them.
 * @typedef {{ tick: number, key: string }} NeedleInPicture
 *
 * What stands over the picture beside outlines and names: places in mm on the detector, and a part that is lit.
 * @typedef {{ mark?: Place | null, area?: Place[] | null, hub?: Place | null, tip?: Place | null, cross?: Place | null, lit?: Label | null, dimension?: (pen: CanvasRenderingContext2D, at: (mm: Place) => number[], scale: number) => void }} Marks
 * @typedef {readonly number[]} Place right and up of the middle
 */

/** @type {{ magnification: number, open: [number, number] }} */
const WHOLE = { magnification: 1, open: [1, 1] };

/**
 * What stands in the picture: the page's state with the angles and the case of the picture, its field and the parts of its dog.
 * Live that is the state itself; by exposure the last one taken, and null before there is any.
 * @param {PageState} state
 * @param {Report | null} report
 * @param {Exposure | null} exposure
 * @returns {Shown | null}
 */
export function shownIn(state, report, exposure) {
  const from = state.byExposure ? exposure : { ...WHOLE, dog: report?.dog };
  return from && { ...state, ...from, field_mm: DETECTOR_MM / from.magnification };
}

/**
 * Sets up the canvases.
 * @param {() => void} onResize
 */
export function picture(onResize) {
  const radiograph = penOf(byId('radiograph', HTMLCanvasElement), { alpha: false });
  const overlay = byId('overlay', HTMLCanvasElement);
  const pen = penOf(overlay);
  const film = byId('film-image');
  // Kept from one change of size to the next: asking for it after the page's words have changed would lay the page out twice a frame.
  let width_px = 1;
  let screen_px = 1;
  const fit = () => {
    // A film that is not laid out at the moment keeps the size that it had.
    if (film.clientWidth === 0) return;
    width_px = film.clientWidth;
    const pixels = screenPixels(width_px);
    if (screen_px === pixels) return;
    screen_px = pixels;
    onResize();
  };
  // While a slow machine follows the hand the lines are as coarse as the CSS pixels: fewer to stroke, and to hand over to the screen.
  const sizeOverlay = () => {
    const pixels = live?.hurried() ? Math.min(screen_px, width_px) : screen_px;
    if (overlay.width !== pixels) overlay.width = overlay.height = pixels;
    else pen.clearRect(0, 0, pixels, pixels);
  };
  new ResizeObserver(fit).observe(film);
  fit();

  let drawn = '';
  // The live film with its own pace and sharpness, once it has come (film/live.js).
  /** @type {LiveFilm | null} */
  let live = null;
  return {
    /** The side of the film in screen pixels. */
    screen: () => screen_px,
    /**
     * Draws the live film with `film` from now on.
     * @param {LiveFilm} film
     */
    liveWith(film) {
      live = film;
      drawn = '';
      onResize();
    },
    /**
     * Radiograph, live or the last exposure, only if something that shows in it changed.
     * @param {TeachingRoom} room
     * @param {PageState} state
     * @param {Exposure | null} exposure
     * @param {NeedleInPicture | null} [needle]
     */
    draw(room, state, exposure, needle) {
      const shown = state.byExposure ? heldKey(state, exposure) : [keyOf(state, BEAM), greys(state), needle?.key].join();
      if (shown === drawn) return;
      live?.stop();
      if (!state.byExposure && needle) room.showNeedleAt(needle.tick);
      if (!state.byExposure && live) live.draw(room, radiograph, { who: keyOf(state, PATIENT), boneDark: state.boneDark, tick: needle?.tick });
      else if (!state.byExposure) room.drawRadiograph(radiograph, state.boneDark);
      else if (exposure) room.showHeld(radiograph, state.boneDark);
      else radiograph.fillRect(0, 0, radiograph.canvas.width, radiograph.canvas.height);
      drawn = shown;
    },
    /** Whether the live film is drawn coarser than it should be, to keep up with the hand. */
    hurried: () => Boolean(live?.hurried()),
    /** The film at rest is wanted at another sharpness. */
    rest: () => live?.rest(),
    /**
     * Takes an exposure and draws it.
     * @param {TeachingRoom} room
     * @param {BeamSettings} settings
     * @param {number} pulses
     * @param {PageState} state
     * @param {{ number: number }} exposure
     * @param {number} [tick]
     */
    expose(room, settings, pulses, state, exposure, tick) {
      live?.stop();
      room.expose(radiograph, settings, pulses, state.boneDark, tick);
      drawn = heldKey(state, exposure);
    },
    /**
     * Outlines, edge letters and names of what is shown, and where the shutters stand for the next exposure.
     * @param {TeachingRoom} room
     * @param {PageState} state
     * @param {Shown | null} shown
     * @param {Marks | null} marks
     */
    mark(room, state, shown, marks) {
      sizeOverlay();
      const scale = overlay.width / width_px;
      drawOver(pen, room, state, shown, { marks, scale, hurried: live?.hurried() });
      if (state.byExposure) drawShutters(pen, nextField(state.beam, shown), scale);
    },
    /** Nothing drawn any more (the engine is gone): the next one starts afresh. */
    forget() {
      live?.stop();
      drawn = '';
    },
  };
}

/**
 * Draws what lies over the radiograph of `shown` onto a square canvas: outlines, edge letters, names and marks. `scale` is canvas pixels a
 * CSS pixel. `hurried`: the faint lines as thin as a pixel, which a processor strokes in a tenth of the time.
 * @param {CanvasRenderingContext2D} pen
 * @param {TeachingRoom} room
 * @param {PageState} state
 * @param {Shown | null} shown
 * @param {{ marks?: Marks | null, scale: number, hurried?: boolean }} how
 */
export function drawOver(pen, room, state, shown, { marks, scale, hurried = false }) {
  const size = pen.canvas.width;
  if (shown?.outlines) {
    const style = outlineStyle(state, size, marks?.lit, scale);
    if (hurried) style.context.width_px = Math.min(1, style.context.width_px);
    const [width, height] = shown.open.map((share) => share * size);
    pen.save();
    pen.beginPath();
    pen.rect((size - width) / 2, (size - height) / 2, width, height);
    pen.clip();
    if (state.byExposure) room.drawHeldOutlines(pen, style);
    else room.drawOutlines(pen, style);
    pen.restore();
  }
  if (shown) drawEdgeLetters(pen, shown, scale, texts.picture);
  if (shown?.labels) drawDogNames(pen, shown, scale, texts.picture);
  const at = /** @param {Place} mm */ (mm) => [size * (0.5 + mm[0] / fieldOf(shown)), size * (0.5 - mm[1] / fieldOf(shown))];
  marks?.dimension?.(pen, at, scale);
  if (marks) drawMarks(pen, at, scale, marks);
}

/**
 * The width of what is shown, mm on the detector.
 * @param {Shown | null} shown
 */
const fieldOf = (shown) => shown?.field_mm ?? DETECTOR_MM;

/**
 * Names the picture on the canvas: the number of an exposure, and its look.
 * @param {PageState} state
 * @param {{ number: number } | null} exposure
 */
const heldKey = (state, exposure) => `exposure ${exposure?.number} ${greys(state)}`;

/**
 * What of the state changes the grey values alone.
 * @param {PageState} state
 */
const greys = (state) => `${state.boneDark} ${state.contrast} ${state.brightness}`;

/**
 * The next exposure's field as shares of the picture that is shown, or null where that is the field one sees.
 * @param {Beam} beam
 * @param {Shown | null} shown
 */
function nextField(beam, shown) {
  const zoom = (shown?.magnification ?? 1) / beam.magnification;
  const share = beam.open.map((open) => open * zoom);
  const now = shown?.open ?? [1, 1];
  return share.every((x, i) => Math.abs(x - now[i]) < 1e-9) ? null : share;
}

/**
 * A dashed frame: the field that the next exposure will open.
 * @param {CanvasRenderingContext2D} pen
 * @param {number[] | null} share
 * @param {number} scale
 */
function drawShutters(pen, share, scale) {
  if (!share) return;
  const size = pen.canvas.width;
  const [width, height] = share.map((x) => x * size);
  pen.save();
  /** @type {[string, number[]][]} */
  const strokes = [[LOOKS.onDark.halo, []], [LOOKS.onDark.target, [6, 5]]];
  for (const [colour, dash] of strokes) {
    pen.setLineDash(dash.map((d) => d * scale));
    pen.strokeStyle = colour;
    pen.lineWidth = (dash.length ? 1.5 : 3.5) * scale;
    pen.strokeRect((size - width) / 2, (size - height) / 2, width, height);
  }
  pen.restore();
}

/**
 * The words that go with the picture: key of the lines, names of the dog's parts, where the last exposure was taken, and the text
 * in place of the picture. `seen` is said of the C-arm as it stands, `beamOn` of the moment.
 * @param {PageState} live
 * @param {Shown | null} shown
 * @param {string} seen
 * @param {boolean} beamOn
 */
export function pictureWords(live, shown, seen, beamOn) {
  const { byExposure } = live;
  const words = texts.exposure;
  const moved = shown !== null && !sameBeam(shown, live);
  const last = !byExposure ? '' : !shown ? words.noPicture : words.last(shown, { on: beamOn, moved, otherLevel: shown.level !== live.level });
  say(byId('last-picture'), last);
  byId('last-picture').hidden = !byExposure;
  byId('film-empty').hidden = !byExposure || Boolean(shown);
  const state = shown ?? live;
  const picture = byExposure ? (shown ? words.alternative(shown, moved) : words.none) : texts.picture.alternative(state);
  say(byId('picture-text'), `${picture} ${seen}`);
  const key = byId('key');
  key.hidden = !shown?.outlines;
  showKey(key, state, texts.picture);
  const dog = byId('dog');
  dog.hidden = !shown?.labels || !shown.dog?.length;
  if (!shown || dog.hidden) return;
  say(byId('dog-heading'), texts.picture.dogHeading(state));
  showDogNames(byId('dog-list'), shown, texts.picture);
}
