// The angles of the page (turn.js), in its language. Table and window come with the picture's sheet (picture-sheet.js).

import { texts } from '../words/texts.js';
import { turnControl as turnControlIn } from './turn.js';

export { dragToTurn } from './turn.js';

/** A turn control in the page's language. */
export function turnControl(holder, key, range, app, options) {
  return turnControlIn(holder, key, range, app, texts, options);
}
