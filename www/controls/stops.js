// A turn or a move of the table that would bring receptor or source to table or patient stops before it, and says what would hit what and what to move.
// What is free is the engine's to say. Loaded after the first picture.

import { byId } from '../base/dom.js';
import { tenth } from '../base/tenth.js';
import { gantryLink as t } from '../words/gantry.js';

/**
 * @import { App, PageState } from '../state/page-state.js'
 * @import { Place } from '../state/positioning.js'
 */

/** @type {readonly (keyof Place)[]} */
const MOVES = ['oblique_deg', 'tilt_deg', 'table_x_mm', 'table_y_mm', 'table_z_mm'];

/**
 * `act`: `aim()` brings the engine to where the page stands, `whole()` says whether it has a patient, `notice(sentences)` shows.
 * @param {App} app
 * @param {{ aim: () => void, whole: () => boolean, notice: (sentences: string[]) => void }} act
 */
export function stops(app, act) {
  let said = '';

  /**
   * How far the way to a place goes, or null where nothing stops it.
   * @param {Partial<Place>} to
   */
  function stopped(to) {
    if (!app.room || !act.whole() || !MOVES.some((key) => key in to && to[key] !== app.state[key])) return null;
    act.aim();
    const { oblique_deg, tilt_deg, table_x_mm, table_y_mm, table_z_mm } = { ...app.state, ...to };
    const way = app.room.reach(oblique_deg, tilt_deg, table_x_mm, table_y_mm, table_z_mm);
    if (way.hit) {
      said = t.hit(way.hit);
      act.notice([said]);
      return way;
    }
    // What was said of the last stop no longer holds.
    if (said !== '' && byId('notice-text').textContent === said) byId('notice').hidden = true;
    said = '';
    return null;
  }

  return {
    /**
     * What a change of the state becomes. Where the engine or the page sets the C-arm by itself (`ownView`), it is there already.
     * @param {Partial<PageState>} patch
     * @returns {Partial<PageState>}
     */
    held(patch) {
      if ('ownView' in patch) return patch;
      const way = stopped(patch);
      if (!way) return patch;
      const [x, y, z] = way.table_mm.map(tenth);
      return { ...patch, oblique_deg: tenth(way.oblique_deg), tilt_deg: tenth(way.tilt_deg), table_x_mm: x, table_y_mm: y, table_z_mm: z };
    },
    /** Whether the way to a place is free; says so if it is not. */
    free: (/** @type {Partial<Place>} */ to) => !stopped(to),
  };
}
