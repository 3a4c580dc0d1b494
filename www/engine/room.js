// The engine in the page's language.

import { loadEngine as load, loadFirstPart as loadFirst } from './engine-load.js';
import { texts } from '../words/texts.js';

export { reason } from './engine-load.js';

/** @import { OnProgress } from './engine-load.js' */

/**
 * Loads the whole engine. `onProgress` gets percent, or null while the size is unknown. Throws an Error with a sentence.
 * @param {OnProgress} onProgress
 */
export const loadEngine = (onProgress) => load(onProgress, texts.loading);

/**
 * Loads what a first picture needs of it, with a function that adds the rest.
 * @param {OnProgress} onProgress
 */
export const loadFirstPart = (onProgress) => loadFirst(onProgress, texts.loading);
