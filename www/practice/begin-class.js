// The page begins here: first its language, then everything else, which speaks it.

import { enter } from '../words/language.js';

enter().then(() => import('./teacher.js'));
