// The teacher's and the author's page. Sentences in texts/…/teach.ftl; what is wrong with a lesson or a receipt the engine says.

import { pageSayer } from './language.js';
import { teach as english } from '../pkg/texts/en/teach.js';
import { view } from './view-page.js';

const say = pageSayer('teach', english);

const percent = (share) => say('percent', { n: Math.round(100 * share) });
const receipts = (n) => say('receipts', { n });
const bands = ['under25', 'to49', 'to74', 'from75'].map((name) => say(`check-lesson-band-${name}`));

export const teach = say.tree({
  language: say.tag,
  percent,
  /** A share with a decimal. */
  percentFine: (share) => say('percent', { n: say.number(100 * share, 1) }),
  stepName: view.step,
  stopped: (why) => say('stopped', { why }),
  noEngine: (why) => say('noEngine', { why }),
  shelf: {
    missing: (name) => say('shelf-missing', { name }),
    tooLarge: (name) => say('shelf-tooLarge', { name }),
    notText: (name) => say('shelf-notText', { name }),
    bad: (name, why) => say('shelf-bad', { name, why }),
  },
  check: {
    reading: (n, all) => say('check-reading', { n, all }),
    checking: (n, all) => say('check-checking', { n, receipts: receipts(all) }),
    stopped: (n, left) => say('check-stopped', { n, left }),
    stoppedReading: (n, all) => say('check-stoppedReading', { n, files: say('files', { n: all }) }),
    done: (n) => say('check-done', { n }),
    leftOut: (n) => say('check-leftOut', { n }),
    more: (n) => say('check-more', { n }),
    lessonsState: (n, own) => say(own ? 'check-lessonsStateOwn' : 'check-lessonsState', { n, own }),
    added: (title) => say('check-added', { title }),
    countsHeading: receipts,
    countsStopped: (n, left) => say('check-countsStopped', { receipts: receipts(n), left }),
    lesson: {
      sums: (c) =>
        say('check-lesson-sums', { receipts: receipts(c.receipts), verified: c.verified, learners: say('learners', { n: c.learners }), passed: c.passed, mean: percent(c.mean_total) }),
      none: (c) => say('check-lesson-nothing', { receipts: receipts(c.receipts) }),
      bands,
      bar: (step, counts) => say('check-lesson-bar', { step, bands: counts.map((n, i) => say('check-lesson-bandCount', { n, band: bands[i] })).join(', ') }),
      names: (names) => say('check-lesson-names', { n: names.length, names: names.join(', ') }),
      gate: (gate, names) => say('check-lesson-gate', { gate, names: names.join(', ') }),
      moreNames: (n) => say('check-lesson-moreNames', { n }),
      caption: (title) => say('check-lesson-caption', { title }),
      histogram: (title) => say('check-lesson-histogram', { title }),
      tenth: (from) => say('check-lesson-tenth', { from, to: from === 90 ? 100 : from + 9 }),
      quartiles: (three) => three.map(percent).join(' · '),
    },
    learners: {
      state: (n) => say('check-learners-state', { n }),
      named: (name, code) => (name ? say('check-learners-named', { name, code }) : code),
      notListed: (code) => (code ? say('check-learners-notListed', { code }) : say('check-rows-noCode')),
      missing: (names) => say('check-learners-missing', { n: names.length, names: names.join(', ') }),
      noneVerified: (n) => say('check-learners-noneVerified', { n }),
      tries: (totals) => say('check-learners-tries', { totals: totals.map(percent).join(', ') }),
      everyTry: (name) => say('check-learners-everyTry', { name }),
      replayOf: (n) => say('check-learners-replayOf', { n }),
      rows: (rows) => say('check-learners-rows', { n: rows.length, rows: rows.join(', ') }),
    },
    rows: {
      shown: (n, all) => (n === all ? say('check-rows-shownAll', { n }) : say('check-rows-shownOf', { n, all })),
      more: (n) => say('check-rows-more', { n }),
      sort: (name) => say('check-rows-sort', { name }),
      weakest: (name, share) => say('check-rows-weakest', { name, percent: percent(share) }),
      sameLog: (n) => say('check-rows-sameLog', { n }),
      alike: (n, share) => say('check-rows-alike', { n, percent: percent(share) }),
      repeat: (n) => say('check-rows-repeat', { n }),
      gatesFailed: (names) => say('check-rows-gatesFailed', { names: names.join(', ') }),
      place: (source, line) => (line === null ? source : say('check-rows-place', { source, line })),
    },
  },
  author: {
    handoutText: (title, link, code, mark) => [say('author-handoutOpen', { title }), link, say(code ? 'author-handoutCode' : 'author-handoutNoCode'), say('author-handoutMark', { mark }), say('author-handoutEnd')].join('\n'),
    language: (tag) => say('author-language', { tag }),
    titleIn: (tag) => say('author-titleIn', { tag }),
    introIn: (tag) => say('author-introIn', { tag }),
    removeLanguage: (tag) => say('author-removeLanguage', { tag }),
    partNumber: (n) => say('author-partNumber', { n }),
    partName: view.picture.part,
    removePart: (n) => say('author-removePart', { n }),
    which: (name) => say('author-which', { name }),
    among: (name) => say('author-among', { name }),
    patientName: view.case.patientName,
    patientLine: (p) => say('author-patientLine', { name: view.case.patientName(p.name), sentence: view.case.patientSentence(p) }),
    usual: (value) => say('author-usual', { value }),
    fullOf: (name) => say('author-fullOf', { name }),
    noneOf: (name) => say('author-noneOf', { name }),
    unknown: (value) => say('author-unknown', { value }),
    bad: (n) => say('author-bad', { n }),
    atPlace: (place, problem) => (place ? say('author-atPlace', { place, problem }) : problem),
    sample: (n) => say('author-sample', { n }),
    gets: (d) => say('author-gets', { patient: view.case.patientName(d.patient), place: view.place(d), seed: d.seed }),
    picture: {
      failed: (why) => say('author-picture-failed', { why }),
      caption: (name, d, at) => say('author-picture-caption', { view: name, place: view.place(d), at }),
      alternative: (name, d) => say('author-picture-alternative', { view: name, place: view.place(d) }),
      none: (name, d) => say('author-picture-none', { view: name, level: d.level }),
    },
  },
});
