// Which delivery applies, decided once when the page opens:
// 1. a package says so itself: <meta name="downbeam-delivery" content="scorm12">, its lesson in lesson.json beside the page, or, of several
//    lessons, in the file that <meta name="downbeam-lesson"> names;
// 2. the address is a launch: cmi5 (endpoint and fetch) or xAPI (endpoint and auth);
// 3. the page is in a frame and the address names the origin around it (host);
// 4. else the page keeps what it can by itself (local.js).
// Whatever of that fails ends in 4, with a sentence.

import { delivery as texts } from '../words/delivery.js';
import { Trouble, sentence } from './trouble.js';

/**
 * What is handed in. Scores are 0 to 1, that of a step not done null; `lines` is the log, `receipt` empty where there is none.
 * @typedef {{ lesson: string, title: string, score: number, passed: boolean, complete: boolean, seconds: number,
 *   steps: { id: string, name: string, score: number | null }[], receipt: string, lines: string[] }} Result
 */

/**
 * @typedef {object} Delivery
 * @property {'page'|'frame'|'scorm12'|'scorm2004'|'cmi5'|'xapi'} name
 * @property {string|null} lesson text of a lesson file that the place carries; null: the page decides
 * @property {string|null} learner the learner's code, if the place knows who it is; null: the page asks
 * @property {boolean} keepsProgress false: the page says that progress is not kept
 * @property {(lesson: { sha256: string, learner: string }) => void} [opened] whose attempt `resume` and `keep` are about from now on
 * @property {() => Promise<string[]|null>} resume log lines of an attempt that was left
 * @property {(lines: string[]) => void} keep the attempt so far, at most once a second; never throws
 * @property {(result: Result) => Promise<{ accepted: boolean, said: string|null }>} finish hands it in
 * @property {() => void} leave the page is hidden or closed: hand over what can be
 *
 * What a place is given: `notice([sentence])` tells the learner; `lesson` is the text of the package's own.
 * @typedef {{ notice: (sentences: string[]) => void, lesson: string | null }} DeliveryActs
 */

/**
 * A Delivery; never throws. `notice([sentence])` tells the learner.
 * @param {{ notice: (sentences: string[]) => void }} act
 * @returns {Promise<Delivery>}
 */
export async function connect({ notice }) {
  /** @type {DeliveryActs} */
  const act = { notice, lesson: null };
  const query = new URLSearchParams(location.search);
  const packed = metaOf('downbeam-delivery');
  try {
    if (packed) act.lesson = await packedLesson();
    const found = await outside(packed, query, act);
    if (found) return found;
    if (packed && packed !== 'page') notice([texts.alone]);
  } catch (error) {
    notice([sentence(error)]);
  }
  return { ...(await here(act)), ...(act.lesson === null ? {} : { lesson: act.lesson }) };
}

/**
 * What a meta element of the page says, or null.
 * @param {string} name
 */
const metaOf = (name) => document.querySelector(`meta[name="${name}"]`)?.getAttribute('content') ?? null;

/**
 * The Delivery to a place outside this page, or null when there is none.
 * @param {string | null} packed
 * @param {URLSearchParams} query
 * @param {DeliveryActs} act
 * @returns {Promise<Delivery | null>}
 */
async function outside(packed, query, act) {
  if (packed === 'scorm12' || packed === 'scorm2004') {
    // Literal paths, for tools that look for what a module imports.
    const { connect: to } = packed === 'scorm12' ? await import('./scorm12.js') : await import('./scorm2004.js');
    return to(act);
  }
  if (packed === 'cmi5' || query.has('fetch')) {
    const { connect: to, launchOf } = await import('./cmi5.js');
    const launch = launchOf(query);
    if (launch) return to(act, launch);
  }
  if (packed === null && query.has('endpoint')) {
    const { connect: to, launchOf } = await import('./xapi.js');
    const launch = launchOf(query);
    if (launch) return to(act, launch);
  }
  if (packed === null && query.has('host') && window.parent !== window) {
    const { connect: to, hostOf } = await import('./frame.js');
    const host = hostOf(query);
    if (host !== null) return to(act, host, await here({ ...act, notice: () => {} }));
  }
  return null;
}

/** The lesson that a package carries. */
async function packedLesson() {
  const file = metaOf('downbeam-lesson') ?? 'lesson.json';
  const response = await fetch(new URL(file, document.baseURI)).catch(() => null);
  if (!response?.ok) throw new Trouble(texts.noLesson(response?.status ?? 0));
  try {
    return await response.text();
  } catch (error) {
    // Cut off on its way.
    throw new Trouble(texts.noLesson(0), { cause: error });
  }
}

/**
 * What the page keeps by itself; without even that, nothing is kept.
 * @param {DeliveryActs} act
 * @returns {Promise<Delivery>}
 */
async function here(act) {
  try {
    const { connect: to } = await import('./local.js');
    return await to(act);
  } catch {
    return {
      name: 'page', lesson: null, learner: null, keepsProgress: false,
      resume: async () => null,
      keep() {},
      finish: async () => ({ accepted: false, said: null }),
      leave() {},
    };
  }
}
