// The sentences of the injection, which join the page's (texts.needle, texts.remarks) once the first picture is there.

import { needle } from './needle.js';
import { remarks } from './remark.js';
import { fillTexts, texts as page } from './texts.js';

/** Whether a path in the page's skeleton is one of these. */
const own = (/** @type {string} */ path) => path.startsWith('needle.');

export const texts = Object.assign(page, { needle, remarks });
fillTexts(document, texts, own);
