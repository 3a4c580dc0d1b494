// What can be taken away: the picture as PNG, the outlines as SVG, and the page on paper. Always of the picture that is shown.

import { button, byId, make, penOf, say } from '../base/dom.js';
import { tenth } from '../base/tenth.js';
import { drawOver, shownIn } from '../film/picture.js';
import { reason } from '../engine/room.js';
import { saveBlob, saveText } from '../base/save.js';
import { texts } from '../words/texts.js';
import { picture as t } from '../words/tools.js';
import { outlineDrawing } from './outline-drawing.js';
import { outlineLines } from './outline-lines.js';
import { square } from '../film/shown.js';

/**
 * @import { Shaping } from '../engine/shaping.js'
 * @import { Record } from '../exposure/record.js'
 * @import { Marks, NeedleInPicture, Shown } from '../film/picture.js'
 * @import { AttemptKeeper } from '../injection/attempt.js'
 * @import { App } from '../state/page-state.js'
 */

/** Canvas pixels of the file for one of the detector's: each stays a square of its own, and lines and names are crisp. */
const TIMES = 2;
const FILM_PX = 512;
const FOOT_PX = 64;

/**
 * Puts the buttons into the menu, and what only print shows before the picture.
 * @param {App} app
 * @param {Shaping} patient
 * @param {{ attempt: AttemptKeeper, inPicture: () => NeedleInPicture | null, marks: () => Marks | null }} needle
 * @param {Record} record
 * @param {{ notice: (sentences: string[]) => void }} act
 */
export function exporting(app, patient, needle, record, act) {
  /** @type {[string, string, () => void][]} */
  const items = [['save-png', t.png, png], ['save-svg', t.svg, svg], ['print-result', t.print, () => window.print()]];
  byId('menu-list').prepend(...items.map(([id, text, does]) => make('li', {}, button(text, () => (byId('menu').hidePopover(), does()), { id, class: '' }))));
  const about = make('p', {});
  const checked = make('p', {});
  byId('view').before(make('div', { class: 'print-head', id: 'print-head' }, about, checked, make('p', {}, t.credit)));

  /** What is shown, or null after saying why there is nothing to save. */
  function shownNow() {
    const { room, report } = app;
    if (!room || !report || !patient.ready()) return void act.notice([t.noEngine]);
    const shown = shownIn(app.state, report, record.exposure());
    if (!shown) return void act.notice([t.noPicture]);
    return { room, shown };
  }

  /** @param {Shown} shown */
  const aboutOf = (shown) => t.about(shown, texts.case.patientName(shown.patient));

  function png() {
    const now = shownNow();
    if (!now) return;
    const { room, shown } = now;
    try {
      draw(room, shown).toBlob((blob) => (blob ? saveBlob(`${fileName(shown)}.png`, blob) : act.notice([t.failed(t.png)])), 'image/png');
    } catch (error) {
      act.notice([t.failed(reason(error))]);
    }
  }

  /**
   * The film at the detector's own pixels: as it stands on the page, or drawn for this where the page shows it finer or coarser.
   * @param {NonNullable<App['room']>} room
   */
  function film(room) {
    const shown = byId('radiograph', HTMLCanvasElement);
    if (shown.width === FILM_PX || app.state.byExposure) return shown;
    const own = square(FILM_PX);
    const inPicture = needle.inPicture();
    if (inPicture) room.showNeedleAt(inPicture.tick);
    room.drawRadiograph(penOf(own), app.state.boneDark, FILM_PX);
    return own;
  }

  /**
   * @param {NonNullable<App['room']>} room
   * @param {Shown} shown
   */
  function draw(room, shown) {
    const size = FILM_PX * TIMES;
    const [whole, over] = [square(size), square(size)];
    whole.height = size + FOOT_PX;
    const pen = penOf(whole);
    pen.imageSmoothingEnabled = false;
    patient.aim();
    pen.drawImage(film(room), 0, 0, size, size);
    drawOver(penOf(over), room, app.state, shown, { marks: needle.marks(), scale: TIMES });
    pen.drawImage(over, 0, 0);
    pen.fillStyle = '#fff';
    pen.fillRect(0, size, size, FOOT_PX);
    pen.fillStyle = '#111';
    pen.textBaseline = 'middle';
    for (const [text, y, weight] of /** @type {[string, number, number][]} */ ([[aboutOf(shown), 20, 400], [t.credit, 46, 600]])) {
      pen.font = `${weight} 18px system-ui, sans-serif`;
      pen.fillText(text, 12, size + y, size - 24);
    }
    return whole;
  }

  function svg() {
    const now = shownNow();
    if (!now) return;
    const { room, shown } = now;
    // Outlines may be what the lesson keeps back.
    const asks = app.lesson && !needle.attempt.report()?.finished && (app.lesson.assessment || app.lesson.asks.has('name_parts'));
    if (asks) return act.notice([t.hidden]);
    try {
      patient.aim();
      saveText(`${fileName(shown)}.svg`, outlineDrawing(outlineLines(room, app.state.byExposure, shown.field_mm), shown, aboutOf(shown)), 'image/svg+xml');
    } catch (error) {
      act.notice([t.failed(reason(error))]);
    }
  }

  return {
    after() {
      const shown = shownIn(app.state, app.report, record.exposure());
      say(about, shown ? aboutOf(shown) : t.noPicture);
      const views = !app.state.injection && !app.state.lessons;
      checked.hidden = !views || !byId('check-total').hidden;
      say(checked, t.notChecked);
    },
  };
}

/**
 * Tells case and angles in letters that every file system takes.
 * @param {Shown} shown
 */
function fileName({ patient, level, side, oblique_deg, tilt_deg }) {
  /** @type {(name: string, degrees: number, more: string, less: string) => string} */
  const angle = (name, degrees, more, less) => `${name}-${Math.abs(tenth(degrees))}${degrees > 0 ? `-${more}` : degrees < 0 ? `-${less}` : ''}`;
  return ['downbeam', patient, level, side, angle('oblique', oblique_deg, 'left', 'right'), angle('tilt', tilt_deg, 'cephalad', 'caudad')].join('-').replace(/[^\w.-]+/g, '_');
}
