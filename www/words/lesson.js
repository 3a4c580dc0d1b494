// What lessons on the page say; titles, introductions and reasons come from lesson and engine. Sentences in texts/…/lesson.ftl.

import { lesson as english } from '../pkg/texts/en/lesson.js';
import { pageSayer } from './language.js';
import { view } from './view-page.js';
import { points } from './view.js';

/**
 * @import { Label, Target } from '../pkg/values.js'
 */

const say = pageSayer('lesson', english);

const yes = (/** @type {boolean} */ is) => (is ? 'yes' : 'no');
/** A part of a bone, by the engine's label; what lies in the midline has no side. */
const part = (/** @type {Label} */ label) => say('naming-part', { side: label.side || 'none', part: view.picture.part(label.part), level: label.level });

export const lesson = say.tree({
  noList: (/** @type {string} */ why) => say('noList', { why }),
  noEngine: (/** @type {string} */ why) => say('noEngine', { why }),
  noFile: (/** @type {string} */ name) => say('noFile', { name }),
  unreadable: (/** @type {string} */ why) => say('unreadable', { why }),
  unknown: (/** @type {string} */ id) => say('unknown', { id }),
  standing: (/** @type {{ passed: boolean, best: number } | null} */ done, /** @type {boolean} */ begun) => [
    ...(begun ? [say('standingBegun')] : []),
    ...(done ? [say('standingDone', { passed: yes(done.passed), points: points(done.best) })] : begun ? [] : [say('standingNew')]),
  ].join(', '),
  goOn: (/** @type {number} */ n) => say('goOn', { n }),
  passMark: (/** @type {number} */ n) => say('passMark', { n }),
  drawn: (/** @type {Target} */ d, /** @type {string} */ patient) => say('drawn', { patient, place: view.place(d) }),
  running: (/** @type {string} */ title) => say('running', { title }),
  done: (/** @type {number} */ score, /** @type {boolean} */ passed) => say('done', { passed: yes(passed), points: points(score) }),
  next: (/** @type {string} */ title) => say('next', { title }),
  bad: (/** @type {string} */ why) => say('bad', { why }),
  completion: {
    heading: (/** @type {boolean} */ passed) => say('completion-heading', { passed: yes(passed) }),
    patientLine: (/** @type {Target} */ d, /** @type {string} */ patient) => say('completion-patientLine', { patient, place: view.place(d) }),
    engineLine: (/** @type {string} */ version, /** @type {string} */ scoring, /** @type {string} */ hash) => say('completion-engineLine', { version, scoring, hash }),
  },
  progress: {
    opened: (/** @type {number} */ n) => say('progress-opened', { n }),
  },
  naming: {
    ask: (/** @type {Label} */ label) => say('naming-ask', { part: part(label) }),
    /** Where to look for a part. */
    hint: (/** @type {Label} */ label) => say('naming-hint', { part: label.part, level: label.level }),
    count: (/** @type {number} */ found, /** @type {number} */ all) => say('naming-count', { found, all }),
    chosenOf: (/** @type {number} */ i, /** @type {number} */ n) => say('naming-chosenOf', { i, n }),
    right: (/** @type {Label} */ label) => say('naming-right', { part: part(label) }),
    wrong: (/** @type {Label} */ said) => say('naming-wrong', { part: part(said) }),
    shown: (/** @type {Label} */ was) => say('naming-shown', { part: part(was) }),
    later: (/** @type {Label} */ was) => say('naming-later', { part: part(was) }),
  },
});
