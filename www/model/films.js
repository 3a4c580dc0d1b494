// The films: each canvas names its view, and what is to be drawn into it; the engine draws, and its report gives the numbers of the
// caption.

import { rest } from '../base/frame.js';
import { outlineStyle } from '../film/film-look.js';
import { drawDogNames, drawEdgeLetters } from '../film/labels.js';
import { texts } from '../words/texts.js';
import { shown } from './numbers.js';

const FIELD_MM = 512 * 0.4;
const PIXELS = 1024;
const BRIGHT = '#ffc163';
const COOL = '#8fe3ff';
const SHADE = 'rgba(6,9,12,.85)';

/** All films, one after the other, so that the page can be read meanwhile. */
export async function drawFilms(room, told) {
  // Without the engine's file the view and the injections that stand only there stay away.
  const films = [...document.querySelectorAll('[data-film]')].filter((f) => told || !(f.dataset.view === 'steep_oblique' || f.dataset.contrast));
  // Films of one patient together: another patient takes a fifth of a second to shape.
  const order = [...new Set(films.map((f) => patientOf(told, f)))];
  for (const patient of order) {
    room.setPatient(patient);
    for (const film of films.filter((f) => patientOf(told, f) === patient)) {
      drawFilm(room, told, film);
      await rest();
    }
  }
  for (const figure of document.querySelectorAll('figure[data-needs="engine"]')) if (films.some((film) => figure.contains(film))) figure.dataset.drawn = 'yes';
}

/** The injection that a film shows, out of the engine's file; none where it shows none. */
const injectionOf = (told, film) => told?.contrast.find(({ pattern }) => pattern === film.dataset.contrast);
const patientOf = (told, film) => injectionOf(told, film)?.patient ?? film.dataset.patient ?? 'average';

function drawFilm(room, told, film) {
  const { level = 'L4', side = 'left', view, dx = 0, dy = 0, beam, approach, draw: what = '' } = film.dataset;
  const [injection, patient] = [injectionOf(told, film), patientOf(told, film)];
  room.setTarget(level, side);
  room.newAttempt(approach ? { approach } : {});
  if (injection) room.resumeLog(injection.log);
  const best = bestOf(room, told, patient, level, side, view);
  room.setOrientation(best.oblique + Number(dx), best.tilt + Number(dy));
  const [picture, lines] = film.querySelectorAll('canvas');
  const pen = picture.getContext('2d', { alpha: false });
  picture.width = picture.height = 512;
  lines.width = lines.height = PIXELS;
  const over = lines.getContext('2d');
  const exposed = beam ? JSON.parse(beam) : null;
  if (exposed) {
    room.resetDose();
    room.expose(pen, exposed, 1, false);
    room.release();
  } else {
    room.drawRadiograph(pen, false, injection?.tick);
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

/** The best view of a kind: the report's, or, for the steep oblique, which it does not list, that of the engine's file. */
function bestOf(room, told, patient, level, side, view) {
  const best = room.report().views.find((v) => v.view === view)?.best;
  if (best) return best;
  const [oblique, tilt] = told.views.find((v) => v.patient === patient && v.level === level && v.side === side)[view];
  return { oblique: side === 'left' ? oblique : -oblique, tilt };
}

function thick(style, by) {
  const pens = Object.entries(style).map(([key, pen]) => [key, pen?.width_px ? { ...pen, width_px: pen.width_px * by, dash_px: pen.dash_px.map((d) => d * by) } : pen]);
  return Object.fromEntries(pens);
}

/** `{…}` in a caption: criteria by their names, oblique, tilt, measures, what the exposure took, and how deep a needle is. */
function fillCaption(film, report, dose, needle) {
  const line = film.querySelector('[data-says]');
  if (!line) return;
  const known = {
    oblique: [report.orientation.oblique, 1],
    tilt: [report.orientation.tilt, 1],
    ...(needle ? { depth_mm: [needle.depth_mm, 1] } : {}),
    ...Object.fromEntries(report.criteria.map((c) => [c.id, [c.value, 1]])),
    ...Object.fromEntries(report.criteria.map((c) => [`${c.id}_score`, [100 * c.score, 0]])),
    ...Object.fromEntries(Object.entries(report.measures).flatMap(([key, value]) => (Array.isArray(value) ? value.map((v, i) => [`${key}_${i}`, [v, 1]]) : [[key, [value, 1]]]))),
    ...(dose ? Object.fromEntries(Object.entries({ ...dose, ...dose.totals, ...dose.last }).filter(([, v]) => typeof v === 'number').map(([key, value]) => [key, [Number(value.toPrecision(3)), undefined]])) : {}),
  };
  line.textContent = line.dataset.says.replace(/\{(\w+)\}/g, (whole, key) => (known[key] ? shown(...known[key]) : whole));
  // What is read off the film is also what it is called.
  film.querySelector('[role="img"]').setAttribute('aria-label', `${film.dataset.title}. ${line.textContent}`);
}

const at = (mm) => [PIXELS * (0.5 + mm[0] / FIELD_MM), PIXELS * (0.5 - mm[1] / FIELD_MM)];
const find = (report, name, level, side = null) => at(report.landmarks.find((l) => l.name === name && l.level === level && l.side === side).detector_mm);
const below = (level) => (level === 'L5' ? 'S1' : `L${Number(level[1]) + 1}`);

/** A line that shows on bright and dark: `trace` lays its path. */
function drawn(pen, colour, trace, dash = []) {
  for (const [stroke, width] of [[SHADE, 8], [colour, 4]]) {
    pen.setLineDash(stroke === SHADE ? [] : dash);
    pen.strokeStyle = stroke;
    pen.lineWidth = width;
    pen.beginPath();
    trace();
    pen.stroke();
  }
  pen.setLineDash([]);
}

function line(pen, a, b, colour, dash) {
  drawn(pen, colour, () => {
    pen.moveTo(...a);
    pen.lineTo(...b);
  }, dash);
}

function cross([x, y], pen, colour, size = 16) {
  line(pen, [x - size, y - size], [x + size, y + size], colour);
  line(pen, [x - size, y + size], [x + size, y - size], colour);
}

function ring([x, y], pen, colour, radius = 17) {
  drawn(pen, colour, () => pen.arc(x, y, radius, 0, 7));
}

/** The area aimed at, as the page shows it. */
function area(pen, corners_mm) {
  drawn(pen, COOL, () => {
    for (const corner of corners_mm) pen.lineTo(...at(corner));
    pen.closePath();
  });
}

const middle = (a, b) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
const upwards = ([x, y], length) => [[x, y - length], [x, y + length]];

/** Where the outline of the articular process below begins and ends. */
const ends = (pen, report) => report.measures.facet_ends_mm.forEach((end) => cross(at(end), pen, BRIGHT, 10));

/** What each criterion looks at: rings are where something should be, crosses what is held against it. */
const MARKS = {
  spinous(pen, report, level) {
    const [left, right] = ['left', 'right'].map((side) => find(report, 'pedicle_centre', level, side));
    line(pen, left, right, COOL);
    line(pen, ...upwards(middle(left, right), 90), COOL, [14, 10]);
    ring(left, pen, COOL);
    ring(right, pen, COOL);
    cross(find(report, 'spinous_tip', level), pen, BRIGHT);
  },
  rims(pen, report, level) {
    const [front, back] = ['upper_plate_front', 'upper_plate_back'].map((name) => find(report, name, level));
    for (const [point, colour, dash] of [[front, BRIGHT, []], [back, COOL, [14, 10]]]) line(pen, [point[0] - 150, point[1]], [point[0] + 150, point[1]], colour, dash);
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
