// The teacher's and the author's page. Sentences in texts/…/teach.ftl; what is wrong with a lesson or a receipt the engine says.

import { pageSayer } from './language.js';
import { teach as english } from '../pkg/texts/en/teach.js';
import { view } from './view-page.js';

/**
 * @import { DrawnEntry, LessonSummary, PatientEntry, Target } from '../pkg/values.js'
 */

const say = pageSayer('teach', english);

const percent = (/** @type {number} */ share) => say('percent', { n: Math.round(100 * share) });
const receipts = (/** @type {number} */ n) => say('receipts', { n });
const bands = ['under25', 'to49', 'to74', 'from75'].map((name) => say(`check-lesson-band-${name}`));

export const teach = say.tree({
  language: say.tag,
  percent,
  /** A share with a decimal. */
  percentFine: (/** @type {number} */ share) => say('percent', { n: say.number(100 * share, 1) }),
  stepName: view.step,
  stopped: (/** @type {string} */ why) => say('stopped', { why }),
  noEngine: (/** @type {string} */ why) => say('noEngine', { why }),
  shelf: {
    missing: (/** @type {string} */ name) => say('shelf-missing', { name }),
    tooLarge: (/** @type {string} */ name) => say('shelf-tooLarge', { name }),
    notText: (/** @type {string} */ name) => say('shelf-notText', { name }),
    bad: (/** @type {string} */ name, /** @type {string} */ why) => say('shelf-bad', { name, why }),
  },
  check: {
    reading: (/** @type {number} */ n, /** @type {number} */ all) => say('check-reading', { n, all }),
    checking: (/** @type {number} */ n, /** @type {number} */ all) => say('check-checking', { n, receipts: receipts(all) }),
    stopped: (/** @type {number} */ n, /** @type {number} */ left) => say('check-stopped', { n, left }),
    stoppedReading: (/** @type {number} */ n, /** @type {number} */ all) => say('check-stoppedReading', { n, files: say('files', { n: all }) }),
    done: (/** @type {number} */ n) => say('check-done', { n }),
    leftOut: (/** @type {number} */ n) => say('check-leftOut', { n }),
    more: (/** @type {number} */ n) => say('check-more', { n }),
    lessonsState: (/** @type {number} */ n, /** @type {number} */ own) => say(own ? 'check-lessonsStateOwn' : 'check-lessonsState', { n, own }),
    added: (/** @type {string} */ title) => say('check-added', { title }),
    countsHeading: receipts,
    countsStopped: (/** @type {number} */ n, /** @type {number} */ left) => say('check-countsStopped', { receipts: receipts(n), left }),
    lesson: {
      sums: (/** @type {LessonSummary} */ c) =>
        say('check-lesson-sums', { receipts: receipts(c.receipts), verified: c.verified, learners: say('learners', { n: c.learners }), passed: c.passed, mean: percent(c.mean_total) }),
      none: (/** @type {LessonSummary} */ c) => say('check-lesson-nothing', { receipts: receipts(c.receipts) }),
      bands,
      bar: (/** @type {string} */ step, /** @type {number[]} */ counts) => say('check-lesson-bar', { step, bands: counts.map((n, i) => say('check-lesson-bandCount', { n, band: bands[i] })).join(', ') }),
      names: (/** @type {string[]} */ names) => say('check-lesson-names', { n: names.length, names: names.join(', ') }),
      gate: (/** @type {string} */ gate, /** @type {string[]} */ names) => say('check-lesson-gate', { gate, names: names.join(', ') }),
      moreNames: (/** @type {number} */ n) => say('check-lesson-moreNames', { n }),
      caption: (/** @type {string} */ title) => say('check-lesson-caption', { title }),
      histogram: (/** @type {string} */ title) => say('check-lesson-histogram', { title }),
      tenth: (/** @type {number} */ from) => say('check-lesson-tenth', { from, to: from === 90 ? 100 : from + 9 }),
      quartiles: (/** @type {number[]} */ three) => three.map(percent).join(' · '),
    },
    learners: {
      state: (/** @type {number} */ n) => say('check-learners-state', { n }),
      named: (/** @type {string} */ name, /** @type {string} */ code) => (name ? say('check-learners-named', { name, code }) : code),
      notListed: (/** @type {string} */ code) => (code ? say('check-learners-notListed', { code }) : say('check-rows-noCode')),
      missing: (/** @type {string[]} */ names) => say('check-learners-missing', { n: names.length, names: names.join(', ') }),
      noneVerified: (/** @type {number} */ n) => say('check-learners-noneVerified', { n }),
      tries: (/** @type {number[]} */ totals) => say('check-learners-tries', { totals: totals.map(percent).join(', ') }),
      everyTry: (/** @type {string} */ name) => say('check-learners-everyTry', { name }),
      replayOf: (/** @type {number} */ n) => say('check-learners-replayOf', { n }),
      rows: (/** @type {number[]} */ rows) => say('check-learners-rows', { n: rows.length, rows: rows.join(', ') }),
    },
    rows: {
      shown: (/** @type {number} */ n, /** @type {number} */ all) => (n === all ? say('check-rows-shownAll', { n }) : say('check-rows-shownOf', { n, all })),
      more: (/** @type {number} */ n) => say('check-rows-more', { n }),
      sort: (/** @type {string} */ name) => say('check-rows-sort', { name }),
      weakest: (/** @type {string} */ name, /** @type {number} */ share) => say('check-rows-weakest', { name, percent: percent(share) }),
      sameLog: (/** @type {number} */ n) => say('check-rows-sameLog', { n }),
      alike: (/** @type {number} */ n, /** @type {number} */ share) => say('check-rows-alike', { n, percent: percent(share) }),
      repeat: (/** @type {number} */ n) => say('check-rows-repeat', { n }),
      gatesFailed: (/** @type {string[]} */ names) => say('check-rows-gatesFailed', { names: names.join(', ') }),
      place: (/** @type {string} */ source, /** @type {number | null | undefined} */ line) => (line === null || line === undefined ? source : say('check-rows-place', { source, line })),
    },
  },
  author: {
    handoutText: (/** @type {string} */ title, /** @type {string} */ link, /** @type {boolean} */ code, /** @type {number} */ mark) => [say('author-handoutOpen', { title }), link, say(code ? 'author-handoutCode' : 'author-handoutNoCode'), say('author-handoutMark', { mark }), say('author-handoutEnd')].join('\n'),
    language: (/** @type {string} */ tag) => say('author-language', { tag }),
    titleIn: (/** @type {string} */ tag) => say('author-titleIn', { tag }),
    introIn: (/** @type {string} */ tag) => say('author-introIn', { tag }),
    removeLanguage: (/** @type {string} */ tag) => say('author-removeLanguage', { tag }),
    partNumber: (/** @type {number} */ n) => say('author-partNumber', { n }),
    partName: view.picture.part,
    removePart: (/** @type {number} */ n) => say('author-removePart', { n }),
    which: (/** @type {string} */ name) => say('author-which', { name }),
    among: (/** @type {string} */ name) => say('author-among', { name }),
    patientName: view.case.patientName,
    patientLine: (/** @type {PatientEntry} */ p) => say('author-patientLine', { name: view.case.patientName(p.name), sentence: view.case.patientSentence(p) }),
    usual: (/** @type {number} */ value) => say('author-usual', { value }),
    fullOf: (/** @type {string} */ name) => say('author-fullOf', { name }),
    noneOf: (/** @type {string} */ name) => say('author-noneOf', { name }),
    unknown: (/** @type {string} */ value) => say('author-unknown', { value }),
    bad: (/** @type {number} */ n) => say('author-bad', { n }),
    atPlace: (/** @type {string} */ place, /** @type {string} */ problem) => (place ? say('author-atPlace', { place, problem }) : problem),
    sample: (/** @type {number} */ n) => say('author-sample', { n }),
    gets: (/** @type {DrawnEntry} */ d) => say('author-gets', { patient: view.case.patientName(d.patient), place: view.place(d), seed: d.seed }),
    picture: {
      failed: (/** @type {string} */ why) => say('author-picture-failed', { why }),
      caption: (/** @type {string} */ name, /** @type {Target} */ d, /** @type {string} */ at) => say('author-picture-caption', { view: name, place: view.place(d), at }),
      alternative: (/** @type {string} */ name, /** @type {Target} */ d) => say('author-picture-alternative', { view: name, place: view.place(d) }),
      none: (/** @type {string} */ name, /** @type {Target} */ d) => say('author-picture-none', { view: name, level: d.level }),
    },
  },
});
