// Settings kept between visits. Storage can throw (sandboxed frame, blocked by the browser): then they last for this page only.

const KEY = 'downbeam.settings';
let kept = {};
let works = true;

try {
  kept = JSON.parse(localStorage.getItem(KEY) ?? '{}');
  if (typeof kept !== 'object' || kept === null || Array.isArray(kept)) kept = {};
} catch (error) {
  // Unreadable JSON is only an old or foreign value; a storage that throws is worth a sentence to the learner.
  works = error instanceof SyntaxError;
}

/** The setting of that name, if it is one of the allowed values; else the first of them. */
export function setting(name, allowed) {
  return allowed.includes(kept[name]) ? kept[name] : allowed[0];
}

/** Keeps a setting. Returns false if the browser will not. */
export function keep(name, value) {
  kept[name] = value;
  try {
    localStorage.setItem(KEY, JSON.stringify(kept));
  } catch {
    works = false;
  }
  return works;
}

/** Whether settings outlast the page, as far as is known yet. */
export const storageWorks = () => works;
