// The learner's own view beside the best one in one film. Both are drawn once; the divider only clips.

import { viewOf } from '../views/criterion-rows.js';
import { button, byId, make, say, screenPixels } from '../base/dom.js';
import { compare as t } from '../words/tools.js';
import { frozen } from '../film/shown.js';
import { keyOf, placeOf, POSITIONING } from '../state/positioning.js';
import { tenth } from '../base/tenth.js';

/**
 * @import { Shaping } from '../engine/shaping.js'
 * @import { App, PageState } from '../state/page-state.js'
 * @import { Needle } from './tools.js'
 */

/** What ends a comparison when it changes: the case, the C-arm, and how the picture is shown. */
/** @type {readonly (keyof PageState)[]} */
const SHOWN = [...POSITIONING, 'lesson', 'start', 'contrast', 'brightness', 'boneDark', 'outlines', 'view', 'byExposure', 'injection', 'lessons', 'selfTest'];
/**
 * Whether two angles so far apart are read as the same.
 * @param {number} degrees
 */
const alike = (degrees) => Math.abs(degrees) < 0.05;

/**
 * Puts the button beside `#best`. Returns `after()`, for after each frame.
 * @param {App} app
 * @param {Shaping} patient
 * @param {Needle} needle
 */
export function comparison(app, patient, needle) {
  const film = byId('picture');
  const view = byId('view');
  const opener = button(t.open, () => (open ? leave() : begin()), { id: 'compare', 'aria-pressed': 'false' });
  byId('best').after(opener);
  const slider = make('input', { type: 'range', id: 'compare-slider', min: 0, max: 100, step: 1, 'aria-label': t.slider, 'aria-describedby': 'compare-words' });
  const close = button(t.closeShort, () => leave(), { id: 'compare-close', 'aria-label': t.close });
  const bar = make('div', { class: 'compare-bar', hidden: true }, slider, close);
  const words = make('p', { class: 'compare-words', id: 'compare-words', hidden: true });
  const stage = make('div', { class: 'compare', id: 'compare-film', role: 'img', hidden: true });
  film.append(stage);
  byId('film-stage').append(words, bar);
  // The state that is compared, or null.
  /** @type {string | null} */
  let open = null;
  let split = 50;

  const standing = () => [keyOf(app.state, SHOWN), needle.inPicture()?.key].join();
  const best = () => viewOf(app.report, app.state.view)?.best;
  /** As the best view may be seen: in self-test after a check; never where pictures have to be taken. */
  const allowed = () => !app.state.byExposure && !byId('best', HTMLButtonElement).disabled && !byId('checks').hidden && Boolean(best()) && patient.ready();

  function begin() {
    const to = best();
    if (!allowed() || !to) return;
    const own = app.state.ownView ?? { oblique_deg: app.state.oblique_deg, tilt_deg: app.state.tilt_deg };
    const aim = placeOf(to);
    const pixels = screenPixels(byId('film-image').clientWidth);
    const both = /** @type {const} */ ([['own', own], ['best', aim]]);
    const sides = both.map(([name, angles]) => {
      const drawn = frozen(app, patient, angles, pixels, needle.inPicture());
      return make('div', { class: `compare-${name}` }, drawn.film, drawn.over);
    });
    const labels = both.map(([name, angles]) => make('p', { class: `compare-label ${name}` }, make('strong', {}, t[name]), t.angles(angles)));
    stage.replaceChildren(...sides, ...labels, make('div', { class: 'compare-line' }));
    stage.setAttribute('aria-label', t.picture(own, aim));
    const by = { oblique_deg: tenth(aim.oblique_deg - own.oblique_deg), tilt_deg: tenth(aim.tilt_deg - own.tilt_deg) };
    const text = alike(by.oblique_deg) && alike(by.tilt_deg) ? t.same : t.differs(by);
    say(words, text);
    say(byId('status'), text);
    open = standing();
    show();
    move(50);
    // The film is the page: the sheet with the button makes room.
    byId('checks-sheet').hidePopover();
    slider.focus({ preventScroll: true });
  }

  function show() {
    stage.hidden = bar.hidden = words.hidden = open === null;
    view.dataset.comparing = open === null ? 'no' : 'yes';
    opener.setAttribute('aria-pressed', String(open !== null));
    byId('film-image').inert = open !== null;
  }

  function leave() {
    const back = bar.contains(document.activeElement);
    open = null;
    show();
    stage.replaceChildren();
    if (back) (opener.checkVisibility() ? opener : byId('checks-button')).focus();
  }

  /** @param {number} percent */
  function move(percent) {
    split = Math.min(100, Math.max(0, Math.round(percent)));
    slider.value = String(split);
    slider.setAttribute('aria-valuetext', t.shareOwn(split));
    slider.style.setProperty('--from', '0%');
    slider.style.setProperty('--to', `${split}%`);
    stage.style.setProperty('--split', `${split}%`);
  }

  slider.addEventListener('input', () => move(Number(slider.value)));
  /** @param {PointerEvent} event */
  const follow = (event) => {
    const { left, width } = stage.getBoundingClientRect();
    move(((event.clientX - left) / width) * 100);
  };
  stage.addEventListener('pointerdown', (event) => {
    stage.setPointerCapture(event.pointerId);
    follow(event);
  });
  stage.addEventListener('pointermove', (event) => stage.hasPointerCapture(event.pointerId) && follow(event));
  document.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || open === null || event.defaultPrevented || document.querySelector('[popover]:popover-open')) return;
    event.preventDefault();
    leave();
  });

  return {
    after() {
      if (open !== null && (open !== standing() || !allowed())) leave();
      opener.disabled = !allowed();
      opener.hidden = app.state.byExposure;
      say(opener, open === null ? t.open : t.close);
    },
  };
}
