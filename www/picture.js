// The picture: radiograph and outlines drawn by the engine on two canvases, marks and names drawn on top.

import { levelBelow } from './catalogue.js';
import { drawDogNames, drawEdgeLetters } from './labels.js';
import { byId, make, say } from './page.js';
import { texts } from './texts.js';

// Line looks for each kind of outline: colour, width in CSS px, dash in CSS px. Told apart by width and dash, not by colour alone.
const LOOKS = {
  onLight: { halo: 'rgba(12,16,19,.72)', context: 'rgba(14,30,40,.42)', target: 'rgba(10,20,28,.85)', posterior: '#ffc163', below: '#8fe3ff' },
  onDark: { halo: 'rgba(4,7,9,.8)', context: 'rgba(196,214,224,.36)', target: 'rgba(240,246,249,.85)', posterior: '#ffb84d', below: '#7bd8ff' },
};
const WIDTHS_PX = { context: 0.9, target: 1.4, posterior: 2, below: 2.8, halo: 1.6 };
const DASH_PX = [8, 4];

/** Sets up the canvases. Returns `draw(room, state)` and `mark(state, report)`. */
export function picture(onResize) {
  const radiograph = byId('radiograph').getContext('2d', { alpha: false });
  const overlay = byId('overlay');
  const pen = overlay.getContext('2d');
  const film = byId('film-image');
  const fit = () => {
    const pixels = Math.max(1, Math.round(film.clientWidth * devicePixelRatio));
    if (overlay.width === pixels) return;
    overlay.width = overlay.height = pixels;
    onResize();
  };
  new ResizeObserver(fit).observe(film);
  fit();

  let drawn = '';
  return {
    /** Radiograph, only if something that shows in it changed. */
    draw(room, state) {
      const shown = [state.patient, state.level, state.oblique, state.tilt, state.rotation, state.tableX, state.tableZ, state.boneDark].join();
      if (shown === drawn) return;
      room.drawRadiograph(radiograph, state.boneDark);
      drawn = shown;
    },
    /** Outlines, edge letters and names. */
    mark(room, state, report) {
      pen.clearRect(0, 0, overlay.width, overlay.height);
      if (state.outlines) room.drawOutlines(pen, outlineStyle(state, overlay.width));
      const scale = overlay.width / film.clientWidth;
      drawEdgeLetters(pen, state, scale);
      if (state.labels) drawDogNames(pen, report, state, scale);
    },
    /** Nothing drawn any more (the engine is gone): the next one starts afresh. */
    forget() {
      drawn = '';
    },
  };
}

/** What the engine needs to know to stroke the outlines on a canvas of `pixels` by `pixels`. */
export function outlineStyle(state, pixels) {
  const look = state.boneDark ? LOOKS.onLight : LOOKS.onDark;
  const ratio = devicePixelRatio;
  const pen = (kind, dash = []) => ({ colour: look[kind], width_px: WIDTHS_PX[kind] * ratio, dash_px: dash.map((d) => d * ratio) });
  return {
    canvas_px: pixels,
    halo: { colour: look.halo, width_px: WIDTHS_PX.halo * ratio, dash_px: [] },
    context: pen('context'),
    target: pen('target'),
    posterior: pen('posterior'),
    below: pen('below', DASH_PX),
  };
}

/** The words that go with the picture: key of the lines, names of the dog's parts, and the text in place of the picture. */
export function pictureWords(state, report, seen) {
  const below = levelBelow(state.level);
  say(byId('picture-text'), texts.picture.alternative(state, seen));
  const key = byId('key');
  key.hidden = !state.outlines;
  key.dataset.bone = state.boneDark ? 'dark' : 'white';
  const rows = [
    ['posterior', texts.picture.keyPosterior(state)],
    ...(state.level === 'S1' ? [] : [['below', texts.picture.keyBelow(state, below)], ['target', texts.picture.keyTarget(state)]]),
  ];
  if (key.dataset.for !== state.level) {
    key.dataset.for = state.level;
    key.replaceChildren(...rows.map(([kind, text]) => make('li', {}, make('span', { class: `sample ${kind}`, 'aria-hidden': 'true' }), text)));
  }
  const dog = byId('dog');
  dog.hidden = !state.labels || !report?.dog?.length;
  if (dog.hidden) return;
  say(byId('dog-heading'), texts.picture.dogHeading(state));
  const list = byId('dog-list');
  const names = report.dog.map((d) => texts.picture.dogPart(texts.picture.dogName(d, state), texts.picture.part(d.part), d.level));
  if (list.dataset.for === names.join()) return;
  list.dataset.for = names.join();
  list.replaceChildren(...names.map((name) => make('li', {}, name)));
}
