// The lesson that runs in this tab, so that a reload in the middle of it can offer to go on. The browser's storage of the tab may throw or be
// empty: then nothing is offered, and the list still says what was begun.

const KEY = 'downbeam.running';

/** The text of the lesson that ran when the page was left, or null. */
export function interrupted() {
  try {
    return sessionStorage.getItem(KEY);
  } catch {
    return null;
  }
}

/**
 * Notes the lesson that runs, by its text; null: none does.
 * @param {string | null} json
 */
export function noteRunning(json) {
  try {
    if (json === null) sessionStorage.removeItem(KEY);
    else sessionStorage.setItem(KEY, json);
  } catch {
    // Nothing is offered after a reload then.
  }
}
