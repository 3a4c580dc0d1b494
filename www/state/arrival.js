// The page's address and its state, in step: taken at once, again once the engine's own lists are there, and whenever it changes.

import { readAddress, writeAddress } from './address.js';
import { startPosition } from './start.js';

/** @import { App } from './page-state.js' */

/**
 * Takes what the address asks for into the state at once. `act`: `restart()`, `notice(sentences)` for what does not fit, and for lessons
 * `leadsToLesson(fragment)`, `lesson(fragment)`, `leaveLesson()`.
 * @param {App} app
 * @param {{ restart: () => void, notice: (sentences: string[]) => void, leadsToLesson: (fragment: string) => boolean,
 *   lesson: (fragment: string) => void, leaveLesson: () => void }} act
 */
export function addressKeeper(app, act) {
  // Until the engine's own lists have been used to read the address, nothing may overwrite it.
  let read = false;
  const firstState = takeAtOnce();

  addEventListener('hashchange', () => {
    if (read && act.leadsToLesson(location.hash)) return act.lesson(location.hash);
    act.leaveLesson();
    if (read && location.hash !== writeAddress(app.state, app.catalogue)) take();
  });

  /** As far as the address can be read without the engine, so that a page without one is the right page too. */
  function takeAtOnce() {
    const { asked } = readAddress(location.hash, app.catalogue);
    const given = asked.start ?? app.state.start;
    // Before anyone has subscribed.
    Object.assign(app.state, startPosition(given), { start: given }, asked);
    return JSON.stringify(app.state);
  }

  function take() {
    const { asked, complaints } = readAddress(location.hash, app.catalogue);
    const given = asked.start ?? app.state.start;
    act.restart();
    app.change({ ownView: null, ...startPosition(given), start: given, ...asked });
    if (complaints.length > 0) act.notice(complaints);
  }

  return {
    /** The address read against the engine's own lists, once; a learner who has moved on meanwhile keeps the place. */
    takeInFull() {
      if (read) return;
      if (act.leadsToLesson(location.hash)) {
        read = true;
        return act.lesson(location.hash);
      }
      if (JSON.stringify(app.state) === firstState) {
        take();
      } else {
        const { asked } = readAddress(location.hash, app.catalogue);
        if (asked.patient) app.change({ patient: asked.patient });
      }
      read = true;
    },
    /** Puts the state into the address. */
    write() {
      // A lesson's address stays what it is.
      if (read && !app.lesson && !app.state.lessons) history.replaceState(null, '', writeAddress(app.state, app.catalogue));
    },
  };
}
