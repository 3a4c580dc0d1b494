// The sentences of the injection, which join the page's (texts.needle, texts.remarks) once the first picture is there.

import { needle } from './needle.js';
import { remarks } from './remark.js';
import { fillTexts, texts } from './texts.js';

export { texts } from './texts.js';

/** Whether a path in the page's skeleton is one of these. */
const own = (path) => path.startsWith('needle.');

Object.assign(texts, { needle, remarks });
fillTexts(document, texts, own);
