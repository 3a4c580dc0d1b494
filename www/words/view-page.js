// What the page and the course element both say, in the page's language.

import { pageSayer } from './language.js';
import { view as english } from '../pkg/texts/en/view.js';
import { viewWords } from './view.js';

export const view = viewWords(pageSayer('view', english));
