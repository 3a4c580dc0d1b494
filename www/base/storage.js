// Settings kept between visits. Storage can throw (sandboxed frame, blocked by the browser): then they last for this page only.

const KEY = 'downbeam.settings';
let works = true;
/** @type {Record<string, string>} */
let kept = read() ?? {};

/** The settings in storage, or null: there are none, or the browser gives none. */
function read() {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return typeof found === 'object' && found !== null && !Array.isArray(found) ? found : null;
  } catch (error) {
    // Unreadable JSON is only an old or foreign value; a storage that throws is worth a sentence to the learner.
    works = error instanceof SyntaxError;
    return null;
  }
}

/**
 * The setting of that name, if it is one of the allowed values; else the first of them.
 * @param {string} name
 * @param {readonly string[]} allowed
 */
export function setting(name, allowed) {
  return allowed.includes(kept[name]) ? kept[name] : allowed[0];
}

/**
 * Keeps a setting. Returns false if the browser will not.
 * @param {string} name
 * @param {string} value
 */
export function keep(name, value) {
  // Another page may have kept something meanwhile.
  kept = { ...kept, ...read(), [name]: value };
  works = store(KEY, JSON.stringify(kept)) && works;
  return works;
}

/** Whether settings outlast the page, as far as is known yet. */
export const storageWorks = () => works;

/**
 * The text kept under a key, or null: there is none, or the browser gives none.
 * @param {string} key
 */
export function stored(key) {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

/**
 * Keeps a text under a key, or forgets it when it is null. Returns whether the browser let it.
 * @param {string} key
 * @param {string | null} text
 */
export function store(key, text) {
  try {
    if (text === null) localStorage.removeItem(key);
    else localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}
