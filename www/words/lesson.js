// What lessons on the page say; titles, introductions and reasons come from lesson and engine. Sentences in texts/…/lesson.ftl.

import { lesson as english } from '../pkg/texts/en/lesson.js';
import { pageSayer } from './language.js';
import { view } from './view-page.js';
import { points } from './view.js';

const say = pageSayer('lesson', english);

const yes = (is) => (is ? 'yes' : 'no');
/** A part of a bone, by the engine's label; what lies in the midline has no side. */
const part = (label) => say('naming-part', { side: label.side || 'none', part: view.picture.part(label.part), level: label.level });

export const lesson = say.tree({
  noList: (why) => say('noList', { why }),
  noEngine: (why) => say('noEngine', { why }),
  noFile: (name) => say('noFile', { name }),
  unreadable: (why) => say('unreadable', { why }),
  unknown: (id) => say('unknown', { id }),
  standing: (done, begun) => [
    ...(begun ? [say('standingBegun')] : []),
    ...(done ? [say('standingDone', { passed: yes(done.passed), points: points(done.best) })] : begun ? [] : [say('standingNew')]),
  ].join(', '),
  goOn: (n) => say('goOn', { n }),
  passMark: (n) => say('passMark', { n }),
  drawn: (d, patient) => say('drawn', { patient, place: view.place(d) }),
  running: (title) => say('running', { title }),
  done: (score, passed) => say('done', { passed: yes(passed), points: points(score) }),
  next: (title) => say('next', { title }),
  bad: (why) => say('bad', { why }),
  completion: {
    heading: (passed) => say('completion-heading', { passed: yes(passed) }),
    patientLine: (d, patient) => say('completion-patientLine', { patient, place: view.place(d) }),
    engineLine: (version, scoring, hash) => say('completion-engineLine', { version, scoring, hash }),
  },
  progress: {
    opened: (n) => say('progress-opened', { n }),
  },
  naming: {
    ask: (label) => say('naming-ask', { part: part(label) }),
    /** Where to look for a part. */
    hint: (label) => say('naming-hint', { part: label.part, level: label.level }),
    count: (found, all) => say('naming-count', { found, all }),
    chosenOf: (i, n) => say('naming-chosenOf', { i, n }),
    right: (label) => say('naming-right', { part: part(label) }),
    wrong: (said) => say('naming-wrong', { part: part(said) }),
    shown: (was) => say('naming-shown', { part: part(was) }),
    later: (was) => say('naming-later', { part: part(was) }),
  },
});
