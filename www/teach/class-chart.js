// A lesson's class by step: how many learners lie in each quarter of the marks, the mean, and who stays under the pass mark. The bars
// stand in the cells of a table, so that what is drawn is also read; the four bands differ in pattern, not in colour alone.

import { make } from '../base/dom.js';
import { shape } from '../base/svg.js';
import { remarks } from '../words/remark.js';
import { teach } from '../words/teach.js';

const t = teach.check.lesson;
/**
 * @import { LessonSummary, StepSummary } from '../pkg/values.js'
 */

const BANDS = [0, 1, 2, 3];
/** Names that are shown before the rest is folded away. */
const NAMES = 6;
/** Least share of a bar that a number fits into. */
const LEAST_LABELLED = 0.075;

/** The patterns of the bands, once for the page. */
export function bandPatterns() {
  /**
   * @param {string} id
   * @param {number} size
   * @param {...SVGElement} shapes
   */
  const pattern = (id, size, ...shapes) => shape('pattern', { id, width: size, height: size, patternUnits: 'userSpaceOnUse' }, shape('rect', { width: size, height: size, class: 'band-ground' }), ...shapes);
  return shape('svg', { class: 'unseen', width: 1, height: 1, 'aria-hidden': 'true', focusable: 'false' },
    shape('defs', {},
      pattern('band-1', 7, shape('path', { class: 'band-ink', d: 'M-1 8L8 -1M-1 1L1 -1M6 8L8 6' })),
      pattern('band-2', 8, shape('circle', { class: 'band-dot', cx: 2, cy: 2, r: 1.2 }), shape('circle', { class: 'band-dot', cx: 6, cy: 6, r: 1.2 }))));
}

/** How a band is filled: two of them by a pattern. */
const fillOf = (/** @type {number} */ band) => /** @type {Record<string, string>} */ (band === 1 || band === 2 ? { fill: `url(#band-${band})`, class: 'band' } : { class: `band band-${band}` });

/**
 * One step's bar: the class as a whole is its width.
 * @param {StepSummary} step
 * @param {number} learners
 */
function bar(step, learners) {
  const svg = shape('svg', { class: 'bands', role: 'img', 'aria-label': t.bar(teach.stepName(step), step.bands) });
  let before = 0;
  for (const band of BANDS) {
    const count = step.bands[band];
    if (count === 0) continue;
    const share = count / learners;
    const percent = (/** @type {number} */ part) => `${100 * part}%`;
    svg.append(shape('rect', { x: percent(before), width: percent(share), y: 1, height: 24, ...fillOf(band) }));
    if (share >= LEAST_LABELLED) svg.append(shape('text', { x: percent(before + share / 2), y: 18, class: `band-count on-${band}` }, String(count)));
    before += share;
  }
  return svg;
}

function key() {
  const sample = (/** @type {number} */ band) => shape('svg', { class: 'band-sample', 'aria-hidden': 'true' }, shape('rect', { x: 1, y: 1, width: 26, height: 14, ...fillOf(band) }));
  return make('ul', { class: 'band-key', 'aria-label': t.key }, ...BANDS.map((band) => make('li', {}, sample(band), t.bands[band])));
}

/**
 * Who stays under the pass mark; a long list is folded.
 * @param {StepSummary} step
 */
function names(step) {
  const who = step.below_pass;
  if (who.length === 0) return [make('span', { class: 'quiet' }, t.nobody)];
  if (who.length <= NAMES + 1) return [t.names(who)];
  const rest = who.slice(NAMES);
  return [
    `${who.length}: ${who.slice(0, NAMES).join(', ')}`,
    make('details', { class: 'more-names' }, make('summary', {}, t.moreNames(rest.length)), make('p', {}, rest.join(', '))),
  ];
}

/**
 * @param {string} name
 * @param {...(Node | string)} content
 */
const cell = (name, ...content) => make('td', { role: 'cell', 'data-name': name }, ...content);
const head = (/** @type {string} */ name) => make('th', { scope: 'col', role: 'columnheader' }, name);

/** @param {LessonSummary} lesson */
function table(lesson) {
  const { columns } = t;
  const rows = lesson.steps.map((step) => make('tr', { role: 'row' },
    make('th', { scope: 'row', role: 'rowheader' }, teach.stepName(step)),
    make('td', { role: 'cell', class: 'bar-cell' }, bar(step, lesson.learners)),
    cell(columns.mean, teach.percent(step.mean)),
    cell(columns.quartiles, t.quartiles(step.quartiles)),
    cell(columns.below, ...names(step))));
  return make('table', { class: 'by-step', role: 'table', 'aria-label': t.caption(lesson.title) },
    make('thead', { role: 'rowgroup' }, make('tr', { role: 'row' }, head(columns.step), head(columns.bands), head(columns.mean), head(columns.quartiles), head(columns.below))),
    make('tbody', { role: 'rowgroup' }, ...rows));
}

/**
 * The same as numbers.
 * @param {LessonSummary} lesson
 */
function numbers(lesson) {
  const rows = lesson.steps.map((step) => make('tr', {}, make('th', { scope: 'row' }, teach.stepName(step)), ...step.bands.map((n) => make('td', {}, String(n))), make('td', {}, teach.percent(step.mean))));
  return make('details', { class: 'more numbers' }, make('summary', {}, t.numbers),
    make('div', { class: 'scrolled', tabindex: '0', role: 'region', 'aria-label': t.caption(lesson.title) },
      make('table', { class: 'plain-table' },
        make('thead', {}, make('tr', {}, make('th', { scope: 'col' }, t.columns.step), ...t.bands.map((band) => make('th', { scope: 'col' }, band)), make('th', { scope: 'col' }, t.columns.mean))),
        make('tbody', {}, ...rows))));
}

/**
 * How many learners lie in each tenth of the total: bars over their numbers, in a table that is read too.
 * @param {LessonSummary} lesson
 */
function histogram(lesson) {
  const most = Math.max(...lesson.histogram);
  const column = (/** @type {number} */ n, /** @type {number} */ i) => {
    const svg = shape('svg', { class: 'tenth', 'aria-hidden': 'true', viewBox: '0 0 20 60', preserveAspectRatio: 'none' }, shape('rect', { x: 1, width: 18, y: 60 - (59 * n) / most, height: (59 * n) / most }));
    return make('td', { 'data-tenth': i }, ...(n > 0 ? [svg] : []), make('span', {}, String(n)));
  };
  return make('div', { class: 'scrolled', tabindex: '0', role: 'region', 'aria-label': t.histogram(lesson.title) },
    make('table', { class: 'histogram' }, make('caption', { class: 'keys-heading' }, t.totals),
      make('tbody', {}, make('tr', {}, make('th', { scope: 'row' }, t.columns.learners), ...lesson.histogram.map(column))),
      make('tfoot', {}, make('tr', {}, make('th', { scope: 'row' }, t.columns.total), ...lesson.histogram.map((/** @type {number} */ _, /** @type {number} */ i) => make('th', { scope: 'col' }, t.tenth(10 * i)))))));
}

/**
 * Which gates failed whom; nothing where all were kept to.
 * @param {LessonSummary} lesson
 */
function gates(lesson) {
  const failed = lesson.gates.filter((gate) => gate.failed.length > 0);
  if (failed.length === 0) return [];
  return [make('h3', { class: 'keys-heading' }, t.gates), make('ul', { class: 'class-gates' }, ...failed.map(({ id, failed: who }) => make('li', { 'data-gate': id }, t.gate(remarks.gate(id), who))))];
}

/**
 * The section of a lesson's class, the lesson's title its heading.
 * @param {LessonSummary} lesson
 * @param {number} number
 */
export function classSection(lesson, number) {
  const id = `class-${number}`;
  const section = make('section', { class: 'panel class', 'aria-labelledby': id }, make('h2', { id }, lesson.title));
  if (lesson.learners === 0) section.append(make('p', { class: 'quiet' }, t.none(lesson)));
  else section.append(make('p', { class: 'quiet' }, t.sums(lesson)), histogram(lesson), key(), table(lesson), ...gates(lesson), numbers(lesson));
  return section;
}
