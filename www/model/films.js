// The films: each canvas names its view, and what is to be drawn into it; the engine draws, and its report gives the numbers of the
// caption.

import { outlineStyle } from '../film-look.js';
import { drawDogNames, drawEdgeLetters } from '../labels.js';
import { texts } from '../texts.js';
import { shown } from './numbers.js';

const FIELD_MM = 512 * 0.4;
const PIXELS = 1024;
const BRIGHT = '#ffc163';
const COOL = '#8fe3ff';
const SHADE = 'rgba(6,9,12,.85)';

const pause = () => new Promise((resolve) => setTimeout(resolve));

/** All films, one after the other, so that the page can be read meanwhile. */
export async function drawFilms(room) {
  const films = [...document.querySelectorAll('[data-film]')];
  // Films of one patient together: another patient takes a fifth of a second to shape.
  const order = [...new Set(films.map((f) => f.dataset.patient ?? 'average'))];
  for (const patient of order) {
    room.setPatient(patient);
    for (const film of films.filter((f) => (f.dataset.patient ?? 'average') === patient)) {
      drawFilm(room, film);
      await pause();
    }
  }
  for (const figure of document.querySelectorAll('figure[data-needs="engine"]')) if (figure.querySelector('[data-film]')) figure.dataset.drawn = 'yes';
}

function drawFilm(room, film) {
  const { level = 'L4', side = 'left', view, dx = 0, dy = 0, beam, draw: what = '' } = film.dataset;
  room.setTarget(level, side);
  const best = view === 'steep_oblique' ? steep(room, level) : room.report().views.find((v) => v.view === view).best;
  room.setOrientation(best.oblique + Number(dx), best.tilt + Number(dy));
  const [picture, lines] = film.querySelectorAll('canvas');
  const pen = picture.getContext('2d', { alpha: false });
  picture.width = picture.height = 512;
  lines.width = lines.height = PIXELS;
  const over = lines.getContext('2d');
  const exposed = beam ? JSON.parse(beam) : null;
  if (exposed) {
    room.resetDose();
    room.expose(pen, exposed, exposed.kind === 'spot' ? 1 : 1, false);
    room.release();
  } else {
    room.drawRadiograph(pen, false);
  }
  const report = room.report();
  // Lines of a canvas that is twice as fine as it is shown.
  if (what.includes('outlines')) room.drawOutlines(over, thick(outlineStyle({ boneDark: false }, PIXELS), 2 / devicePixelRatio));
  if (what.includes('names')) drawDogNames(over, { ...report, field_mm: FIELD_MM, open: [1, 1] }, 2.4, texts.picture);
  drawEdgeLetters(over, { oblique: best.oblique + Number(dx), rotation: 0 }, 2.4, texts.picture);
  for (const [name, marks] of Object.entries(MARKS)) if (what.includes(name)) marks(over, report, level, side);
  fillCaption(film, report, exposed ? room.dose() : null);
}

/** The steep oblique is asked of by its two criteria: its errors are nearly linear in the two angles. */
function steep(room, level) {
  let [oblique, tilt] = [40, room.report().views.find((v) => v.view === 'oblique').best.tilt];
  const errors = (o, t) => {
    room.setOrientation(o, t);
    const { landmarks } = room.report();
    const below = `L${Number(level[1]) + 1}`;
    const find = (name, side = null) => landmarks.find((l) => l.name === name && l.level === (below === 'L6' ? 'S1' : below) && l.side === side).detector_mm;
    const [tip, centre, front, back] = [find('superior_process_tip', 'left'), find('upper_plate_centre'), find('upper_plate_front'), find('upper_plate_back')];
    return [tip[0] - centre[0], back[1] - front[1]];
  };
  for (let i = 0; i < 8; i++) {
    const e = errors(oblique, tilt);
    const [a, b] = [errors(oblique + 0.5, tilt), errors(oblique, tilt + 0.5)];
    const [m, n, p, q] = [(a[0] - e[0]) * 2, (b[0] - e[0]) * 2, (a[1] - e[1]) * 2, (b[1] - e[1]) * 2];
    const d = m * q - n * p;
    oblique -= (q * e[0] - n * e[1]) / d;
    tilt -= (m * e[1] - p * e[0]) / d;
  }
  return { oblique, tilt };
}

function thick(style, by) {
  const pens = Object.entries(style).map(([key, pen]) => [key, pen?.width_px ? { ...pen, width_px: pen.width_px * by, dash_px: pen.dash_px.map((d) => d * by) } : pen]);
  return Object.fromEntries(pens);
}

/** `{…}` in a caption: criteria by their names, oblique, tilt, measures, and what the exposure took. */
function fillCaption(film, report, dose) {
  const line = film.querySelector('[data-says]');
  if (!line) return;
  const known = {
    oblique: [report.orientation.oblique, 1],
    tilt: [report.orientation.tilt, 1],
    ...Object.fromEntries(report.criteria.map((c) => [c.id, [c.value, 1]])),
    ...Object.fromEntries(report.criteria.map((c) => [`${c.id}_score`, [100 * c.score, 0]])),
    ...Object.fromEntries(Object.entries(report.measures).flatMap(([key, value]) => (Array.isArray(value) ? value.map((v, i) => [`${key}_${i}`, [v, 1]]) : [[key, [value, 1]]]))),
    ...(dose ? Object.fromEntries(Object.entries({ ...dose.totals, ...dose.technique }).filter(([, v]) => typeof v === 'number').map(([key, value]) => [key, [Number(value.toPrecision(3)), undefined]])) : {}),
  };
  line.textContent = line.dataset.says.replace(/\{(\w+)\}/g, (whole, key) => (known[key] ? shown(...known[key]) : whole));
  // What is read off the film is also what it is called.
  film.querySelector('[role="img"]').setAttribute('aria-label', `${film.dataset.title}. ${line.textContent}`);
}

const at = (mm) => [PIXELS * (0.5 + mm[0] / FIELD_MM), PIXELS * (0.5 - mm[1] / FIELD_MM)];
const find = (report, name, level, side = null) => at(report.landmarks.find((l) => l.name === name && l.level === level && l.side === side).detector_mm);
const below = (level) => (level === 'L5' ? 'S1' : `L${Number(level[1]) + 1}`);

function line(pen, a, b, colour, dash = []) {
  for (const [stroke, width] of [[SHADE, 8], [colour, 4]]) {
    pen.setLineDash(stroke === SHADE ? [] : dash);
    pen.strokeStyle = stroke;
    pen.lineWidth = width;
    pen.beginPath();
    pen.moveTo(...a);
    pen.lineTo(...b);
    pen.stroke();
  }
  pen.setLineDash([]);
}

function cross([x, y], pen, colour, size = 16) {
  line(pen, [x - size, y - size], [x + size, y + size], colour);
  line(pen, [x - size, y + size], [x + size, y - size], colour);
}

function ring([x, y], pen, colour, radius = 17) {
  for (const [stroke, width] of [[SHADE, 8], [colour, 4]]) {
    pen.strokeStyle = stroke;
    pen.lineWidth = width;
    pen.beginPath();
    pen.arc(x, y, radius, 0, 7);
    pen.stroke();
  }
}

const middle = (a, b) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
const upwards = ([x, y], length) => [[x, y - length], [x, y + length]];

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
    cross(find(report, 'superior_process_tip', below(level), side), pen, BRIGHT);
  },
  midplate(pen, report, level, side) {
    const centre = find(report, 'upper_plate_centre', below(level));
    line(pen, ...upwards(centre, 120), COOL, [14, 10]);
    ring(centre, pen, COOL);
    cross(find(report, 'superior_process_tip', below(level), side), pen, BRIGHT);
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
