// A lesson between text and object: keys in the order of the file, values by path. What a lesson may hold the engine knows.

/** @typedef {Record<string, any>} Loose an object of a file, whatever it holds: the engine says what is wrong with it */

const KEYS = ['$schema', 'format', 'id', 'title', 'intro', 'mode', 'steps', 'parts', 'patient', 'level', 'side', 'approach', 'medium', 'exposures', 'tolerances', 'par', 'gates', 'pass_mark'];

/** What every lesson has is English, in whatever language it is made. */
const TITLE = 'My lesson';
const INTRO = 'Set up the true AP and the oblique of the level that you are given, keep both, and hand in the receipt.';

/**
 * What a new lesson is: two views of a patient of each learner's own, by the code: another's log does not replay on it.
 * @param {number} format
 * @returns {Loose}
 */
export function newLesson(format) {
  return { format, id: 'my-lesson', title: { en: TITLE }, intro: { en: INTRO }, mode: 'practice', steps: ['true_ap', 'oblique'], patient: { name: 'average', seed_from: 'learner' }, level: 'L4', side: 'left', pass_mark: 75 };
}

/**
 * A lesson as the text of a file; keys that are not known come last.
 * @param {Loose} lesson
 */
export function written(lesson) {
  const known = KEYS.filter((key) => key in lesson);
  const others = Object.keys(lesson).filter((key) => !KEYS.includes(key));
  return `${JSON.stringify(Object.fromEntries([...known, ...others].map((key) => [key, lesson[key]])), null, 2)}\n`;
}

/**
 * The object in a text, or null where there is none.
 * @param {string} text
 * @returns {Loose | null}
 */
export function parsed(text) {
  try {
    const value = JSON.parse(text.replace(/^\uFEFF/, ''));
    return isObject(value) ? value : null;
  } catch {
    return null;
  }
}

/**
 * @param {unknown} value
 * @returns {value is Loose}
 */
export const isObject = (value) => typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * The value at a path such as `par.beam_s`; undefined where there is nothing.
 * @param {Loose} lesson
 * @param {string} path
 * @returns {unknown}
 */
export function at(lesson, path) {
  return path.split('.').reduce((value, key) => (isObject(value) ? value[key] : undefined), /** @type {unknown} */ (lesson));
}

/**
 * Puts a value at a path; undefined takes away what is there, and an object that is empty then.
 * @param {Loose} lesson
 * @param {string} path
 * @param {unknown} value
 */
export function put(lesson, path, value) {
  const names = path.split('.');
  const [keys, last] = [names.slice(0, -1), names[names.length - 1]];
  const holders = [lesson];
  let here = lesson;
  for (const key of keys) {
    if (!isObject(here[key])) {
      if (value === undefined) return;
      here[key] = {};
    }
    here = here[key];
    holders.push(here);
  }
  if (value !== undefined) {
    here[last] = value;
    return;
  }
  if (!(last in here)) return;
  delete here[last];
  for (let i = keys.length - 1; i >= 0 && Object.keys(holders[i + 1]).length === 0; i--) delete holders[i][keys[i]];
}

/** A number where a text is one, else the text itself: the engine then says what is allowed. */
export const numberOrText = (/** @type {string} */ text) => (/^[+-]?\d+([.,]\d+)?$/.test(text.trim()) ? Number(text.trim().replace(',', '.')) : text);

/** A value as it stands in a text field. */
export const asField = (/** @type {unknown} */ value) => (value === undefined ? '' : typeof value === 'string' ? value : JSON.stringify(value));
