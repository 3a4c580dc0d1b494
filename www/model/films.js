// The films: each canvas names its view, and what is to be drawn into it; the engine draws, and its report gives the numbers of the
// caption.

import { penOf, within } from '../base/dom.js';
import { rest } from '../base/frame.js';
import { outlineStyle } from '../film/film-look.js';
import { drawDogNames, drawEdgeLetters } from '../film/labels.js';
import { texts } from '../words/texts.js';
import { shown } from './numbers.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { BeamSettings, DoseReadout, Level, NeedleReport, OutlineStyle, Report, Side, ViewKind } from '../pkg/values.js'
 * @import { Model } from './numbers.js'
 *
 * On the canvas, pixels from its upper left.
 * @typedef {[number, number]} Point
 * @typedef {CanvasRenderingContext2D} Drawer
 */

const FIELD_MM = 512 * 0.4;
const PIXELS = 1024;
const BRIGHT = '#ffc163';
const COOL = '#8fe3ff';
const SHADE = 'rgba(6,9,12,.85)';

/**
 * All films, one after the other, so that the page can be read meanwhile.
 * @param {TeachingRoom} room
 * @param {Model | null} model
 */
export async function drawFilms(room, model) {
  // Without the engine's file the view and the injections that stand only there stay away.
  const films = [.../** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-film]'))].filter((f) => model || !(f.dataset.view === 'steep_oblique' || f.dataset.contrast));
  // Films of one patient together: another patient takes a fifth of a second to shape.
  const order = [...new Set(films.map((f) => patientOf(model, f)))];
  for (const patient of order) {
    room.setPatient(patient);
    for (const film of films.filter((f) => patientOf(model, f) === patient)) {
      drawFilm(room, model, film);
      await rest();
    }
  }
  for (const figure of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('figure[data-needs="engine"]'))) if (films.some((film) => figure.contains(film))) figure.dataset.drawn = 'yes';
}

/** The injection that a film shows, out of the engine's file; none where it shows none. */
const injectionOf = (/** @type {Model | null} */ model, /** @type {HTMLElement} */ film) => model?.contrast.find(({ pattern }) => pattern === film.dataset.contrast);
const patientOf = (/** @type {Model | null} */ model, /** @type {HTMLElement} */ film) => injectionOf(model, film)?.patient ?? film.dataset.patient ?? 'average';

/** What a film's element asks for. */
function askedBy(/** @type {HTMLElement} */ film) {
  const { level = 'L4', side = 'left', view = 'true_ap', approach } = film.dataset;
  return /** @type {{ level: Level, side: Side, view: ViewKind, approach: 'subpedicular' | 'infraneural' | undefined }} */ ({ level, side, view, approach });
}

/**
 * @param {TeachingRoom} room
 * @param {Model | null} model
 * @param {HTMLElement} film
 */
function drawFilm(room, model, film) {
  const { level, side, view, approach } = askedBy(film);
  const { dx = 0, dy = 0, beam, draw: what = '' } = film.dataset;
  const [injection, patient] = [injectionOf(model, film), patientOf(model, film)];
  room.setTarget(level, side);
  room.newAttempt(approach ? { approach } : {});
  if (injection) room.resumeLog(injection.log);
  const best = bestOf(room, model, patient, { level, side, view });
  if (!best) return;
  room.setOrientation(best.oblique + Number(dx), best.tilt + Number(dy));
  const [picture, lines] = film.querySelectorAll('canvas');
  const pen = penOf(picture, { alpha: false });
  picture.width = picture.height = 512;
  lines.width = lines.height = PIXELS;
  const over = penOf(lines);
  /** @type {Partial<BeamSettings> | null} */
  const exposed = beam ? JSON.parse(beam) : null;
  if (exposed) {
    room.resetDose();
    room.expose(pen, exposed, 1, false);
    room.release();
  } else {
    if (injection) room.showNeedleAt(injection.tick);
    room.drawRadiograph(pen, false);
  }
  const report = room.report();
  // Lines of a canvas that is twice as fine as it is shown.
  if (what.includes('outlines')) room.drawOutlines(over, thick(outlineStyle({ boneDark: false }, PIXELS), 2 / devicePixelRatio));
  if (what.includes('names')) drawDogNames(over, { ...report, field_mm: FIELD_MM, open: [1, 1] }, 2.4, texts.picture);
  drawEdgeLetters(over, { oblique_deg: best.oblique + Number(dx), rotation_deg: 0 }, 2.4, texts.picture);
  if (what.includes('area')) area(over, room.procedure(0).area_mm);
  for (const [name, marks] of Object.entries(MARKS)) if (what.includes(name)) marks(over, report, level, side);
  fillCaption(film, report, exposed ? room.dose() : null, injection ? room.procedure(injection.tick).needle : null);
}

/**
 * The best view of a kind: the report's, or, for the steep oblique, which it does not list, that of the engine's file.
 * @param {TeachingRoom} room
 * @param {Model | null} model
 * @param {string} patient
 * @param {{ level: Level, side: Side, view: ViewKind }} of
 */
function bestOf(room, model, patient, { level, side, view }) {
  const best = room.report().views.find((v) => v.view === view)?.best;
  if (best) return best;
  const found = model?.views.find((v) => v.patient === patient && v.level === level && v.side === side);
  const place = found?.[view];
  if (!place) return null;
  const [oblique, tilt] = place;
  return { oblique: side === 'left' ? oblique : -oblique, tilt };
}

/**
 * @param {OutlineStyle} style
 * @param {number} by
 */
function thick(style, by) {
  const made = { ...style };
  for (const key of /** @type {const} */ (['halo', 'context', 'target', 'posterior', 'below'])) {
    const pen = style[key];
    made[key] = { ...pen, width_px: pen.width_px * by, dash_px: pen.dash_px.map((d) => d * by) };
  }
  return made;
}

/**
 * `{…}` in a caption: criteria by their names, oblique, tilt, measures, what the exposure took, and how deep a needle is.
 * @param {HTMLElement} film
 * @param {Report} report
 * @param {DoseReadout | null} dose
 * @param {NeedleReport | null} needle
 */
function fillCaption(film, report, dose, needle) {
  const line = /** @type {HTMLElement | null} */ (film.querySelector('[data-says]'));
  if (!line) return;
  /** @type {Record<string, [value: number | null, digits?: number]>} */
  const known = {
    oblique: [report.orientation.oblique, 1],
    tilt: [report.orientation.tilt, 1],
    ...(needle ? { depth_mm: [needle.depth_mm, 1] } : {}),
    ...Object.fromEntries(report.criteria.map((c) => [c.id, [c.value, 1]])),
    ...Object.fromEntries(report.criteria.map((c) => [`${c.id}_score`, [100 * c.score, 0]])),
    ...numbersOf(report.measures, (value) => [value, 1]),
    ...(dose ? numbersOf({ ...dose, ...dose.last }, (value) => [Number(value.toPrecision(3))]) : {}),
  };
  line.textContent = (line.dataset.says ?? '').replace(/\{(\w+)\}/g, (whole, key) => (known[key] ? shown(...known[key]) : whole));
  // What is read off the film is also what it is called.
  within(film, '[role="img"]').setAttribute('aria-label', `${film.dataset.title}. ${line.textContent}`);
}

/**
 * The numbers of an object by name; those of a list of numbers by name and place.
 * @param {object} of
 * @param {(value: number) => [value: number, digits?: number]} as
 */
function numbersOf(of, as) {
  /** @type {Record<string, [value: number | null, digits?: number]>} */
  const found = {};
  for (const [key, value] of Object.entries(of)) {
    if (typeof value === 'number' || value === null) found[key] = value === null ? [null] : as(value);
    if (Array.isArray(value)) value.forEach((v, i) => typeof v === 'number' && (found[`${key}_${i}`] = as(v)));
  }
  return found;
}

/** @type {(mm: readonly number[]) => Point} */
const at = (mm) => [PIXELS * (0.5 + mm[0] / FIELD_MM), PIXELS * (0.5 - mm[1] / FIELD_MM)];
/** @type {(report: Report, name: string, level: Level, side?: Side | null) => Point} */
function find(report, name, level, side = null) {
  const landmark = report.landmarks.find((l) => l.name === name && l.level === level && l.side === side);
  if (!landmark) throw new Error(`no landmark ${name} at ${level}`);
  return at(landmark.detector_mm);
}
/** @type {(level: Level) => Level} */
const below = (level) => (level === 'L5' ? 'S1' : /** @type {Level} */ (`L${Number(level[1]) + 1}`));

/**
 * A line that shows on bright and dark: `trace` lays its path.
 * @param {Drawer} pen
 * @param {string} colour
 * @param {() => void} trace
 * @param {number[]} dash
 */
function drawn(pen, colour, trace, dash = []) {
  for (const { stroke, width } of [{ stroke: SHADE, width: 8 }, { stroke: colour, width: 4 }]) {
    pen.setLineDash(stroke === SHADE ? [] : dash);
    pen.strokeStyle = stroke;
    pen.lineWidth = width;
    pen.beginPath();
    trace();
    pen.stroke();
  }
  pen.setLineDash([]);
}

/** @type {(pen: Drawer, a: Point, b: Point, colour: string, dash?: number[]) => void} */
function line(pen, a, b, colour, dash) {
  drawn(pen, colour, () => {
    pen.moveTo(...a);
    pen.lineTo(...b);
  }, dash);
}

/** @type {(place: Point, pen: Drawer, colour: string, size?: number) => void} */
function cross([x, y], pen, colour, size = 16) {
  line(pen, [x - size, y - size], [x + size, y + size], colour);
  line(pen, [x - size, y + size], [x + size, y - size], colour);
}

/** @type {(place: Point, pen: Drawer, colour: string, radius?: number) => void} */
function ring([x, y], pen, colour, radius = 17) {
  drawn(pen, colour, () => pen.arc(x, y, radius, 0, 7));
}

/**
 * The area aimed at, as the page shows it.
 * @param {Drawer} pen
 * @param {readonly (readonly number[])[]} corners_mm
 */
function area(pen, corners_mm) {
  drawn(pen, COOL, () => {
    for (const corner of corners_mm) pen.lineTo(...at(corner));
    pen.closePath();
  });
}

/** @type {(a: Point, b: Point) => Point} */
const middle = (a, b) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
/** @type {(place: Point, length: number) => [Point, Point]} */
const upwards = ([x, y], length) => [[x, y - length], [x, y + length]];

/** Where the outline of the articular process below begins and ends. */
const ends = (/** @type {Drawer} */ pen, /** @type {Report} */ report) => report.measures.facet_ends_mm?.forEach((end) => cross(at(end), pen, BRIGHT, 10));

/**
 * What each criterion looks at: rings are where something should be, crosses what is held against it.
 * @type {Record<string, (pen: Drawer, report: Report, level: Level, side: Side) => void>}
 */
const MARKS = {
  spinous(pen, report, level) {
    const [left, right] = /** @type {const} */ (['left', 'right']).map((side) => find(report, 'pedicle_centre', level, side));
    line(pen, left, right, COOL);
    line(pen, ...upwards(middle(left, right), 90), COOL, [14, 10]);
    ring(left, pen, COOL);
    ring(right, pen, COOL);
    cross(find(report, 'spinous_tip', level), pen, BRIGHT);
  },
  rims(pen, report, level) {
    const [front, back] = ['upper_plate_front', 'upper_plate_back'].map((name) => find(report, name, level));
    for (const { at: [x, y], colour, dash } of [{ at: front, colour: BRIGHT, dash: [] }, { at: back, colour: COOL, dash: [14, 10] }]) line(pen, [x - 150, y], [x + 150, y], colour, dash);
  },
  facet(pen, report, level, side) {
    const pedicle = find(report, 'pedicle_centre', level, side);
    line(pen, ...upwards(pedicle, 150), COOL, [14, 10]);
    ring(pedicle, pen, COOL);
    ends(pen, report);
  },
  midplate(pen, report, level) {
    const centre = find(report, 'upper_plate_centre', below(level));
    line(pen, ...upwards(centre, 120), COOL, [14, 10]);
    ring(centre, pen, COOL);
    ends(pen, report);
  },
  superimposed(pen, report, level) {
    ring(find(report, 'pedicle_centre', level, 'left'), pen, COOL, 26);
    cross(find(report, 'pedicle_centre', level, 'right'), pen, BRIGHT);
  },
  foramina(pen, report, level, side) {
    ring(find(report, 'posterior_foramen', level, side), pen, COOL, 26);
    cross(find(report, 'anterior_foramen', level, side), pen, BRIGHT);
  },
};
