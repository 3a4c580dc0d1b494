// The angles of the page (turn.js), in its language. Table and window come with the picture's sheet (picture-sheet.js).

import { texts } from '../words/texts.js';
import { turnControl as turnControlIn } from './turn.js';

/**
 * @import { App } from '../state/page-state.js'
 * @import { Angle, TurnOptions } from './turn.js'
 */

export { dragToTurn } from './turn.js';

/**
 * A turn control in the page's language.
 * @param {HTMLElement} holder
 * @param {Angle} key
 * @param {[number, number]} range
 * @param {App} app
 * @param {TurnOptions} [options]
 */
export function turnControl(holder, key, range, app, options) {
  return turnControlIn(holder, key, range, app, texts, options);
}
