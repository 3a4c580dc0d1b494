// A learning curve as an SVG, with the same as a table for who cannot see it.

import { make } from '../base/dom.js';
import { shape } from '../base/svg.js';
import { practice as t } from '../words/practice.js';

const SIZE = { width: 320, height: 150, left: 34, right: 8, top: 10, bottom: 24 };
/** So many answers are drawn at least, so that a short row is not stretched. */
const LEAST = 20;

/** @import { Curve, Overview, Skill, SkillCurve, Verdict } from '../pkg/values.js' */

/**
 * The section of a skill. `overview` has the rates.
 * @param {SkillCurve} of
 * @param {Overview} overview
 */
export function curveSection({ skill, curve }, overview) {
  return make(
    'section',
    { class: 'curve', 'data-skill': skill },
    make('h3', {}, t.skill(skill)),
    make('p', { class: 'reached' }, curve.reached === null ? t.notReached(curve.answers) : t.reached(curve.reached)),
    ...(curve.answers ? [make('p', { class: 'quiet' }, t.standing(curve.verdicts.at(-1)?.[1], overview)), chart(skill, curve), table(skill, curve)] : []),
  );
}

/**
 * @param {Skill} skill
 * @param {Curve} curve
 */
function chart(skill, curve) {
  const { width, height, left, right, top, bottom } = SIZE;
  const { h0, h1 } = curve.limits;
  const [low, high] = [Math.min(-h0, ...curve.cusum) - 0.3, Math.max(h1, ...curve.cusum) + 0.3];
  const x = (/** @type {number} */ n) => left + ((width - left - right) * n) / Math.max(LEAST, curve.answers);
  const y = (/** @type {number} */ value) => top + ((height - top - bottom) * (high - value)) / (high - low);
  const svg = shape('svg', { viewBox: `0 0 ${width} ${height}`, class: 'chart', role: 'img', 'aria-label': t.chart(skill, curve) });
  for (const [value, name] of /** @type {[number, string][]} */ ([[0, 'zero'], [h1, 'limit'], [-h0, 'limit']])) {
    svg.append(shape('line', { class: name, x1: left, x2: width - right, y1: y(value), y2: y(value) }), shape('text', { class: 'tick', x: left - 5, y: y(value) + 3.5, 'text-anchor': 'end' }, t.number(value, 1)));
  }
  // A new stretch after each limit.
  const ends = new Set(curve.verdicts.map(([at]) => at));
  let d = `M${x(0)} ${y(0)}`;
  curve.cusum.forEach((value, i) => {
    if (ends.has(i)) d += `M${x(i)} ${y(0)}`;
    d += `L${x(i + 1).toFixed(1)} ${y(value).toFixed(1)}`;
  });
  svg.append(shape('path', { class: 'sum', d }));
  for (const [at, verdict] of curve.verdicts) svg.append(sign(x(at), y(curve.cusum[at - 1]), verdict));
  if (curve.reached !== null) {
    svg.append(shape('line', { class: 'reached-line', x1: x(curve.reached), x2: x(curve.reached), y1: top, y2: height - bottom }));
  }
  for (const n of [0, Math.max(LEAST, curve.answers)]) svg.append(shape('text', { class: 'tick', x: x(n), y: height - 8, 'text-anchor': n ? 'end' : 'start' }, String(n)));
  return svg;
}

/**
 * A limit that was met: a dot for the good one, a square for the other.
 * @param {number} x
 * @param {number} y
 * @param {Verdict} verdict
 */
function sign(x, y, verdict) {
  return verdict === 'acceptable' ? shape('circle', { class: 'met', cx: x, cy: y, r: 4 }) : shape('rect', { class: 'met', x: x - 4, y: y - 4, width: 8, height: 8 });
}

/**
 * @param {Skill} skill
 * @param {Curve} curve
 */
function table(skill, curve) {
  const verdicts = new Map(curve.verdicts);
  const rows = curve.cusum.map((value, i) => {
    const before = i === 0 || verdicts.has(i) ? 0 : curve.cusum[i - 1];
    const verdict = verdicts.get(i + 1);
    const sum = t.number(value, 2) + (verdict ? ` (${t.verdict(verdict)}, ${t.begins})` : '');
    return make('tr', {}, make('th', { scope: 'row' }, String(i + 1)), make('td', {}, value < before ? t.isRight : t.isWrong), make('td', {}, sum), make('td', {}, `${t.number(curve.learning[i], 2)} / ${t.number(curve.reached_at, 1)}`));
  });
  const head = make('tr', {}, ...[t.col.answer, t.col.result, t.col.sum, t.col.learning].map((name) => make('th', { scope: 'col' }, name)));
  return make('details', {}, make('summary', {}, t.chartTable), make('div', { class: 'scrolled', tabindex: '0', role: 'region', 'aria-label': t.skill(skill) }, make('table', { class: 'plain-table' }, make('thead', {}, head), make('tbody', {}, ...rows))));
}

/**
 * What the curves can show.
 * @param {Overview} overview
 */
export function whatTheyShow(overview) {
  const { limits } = overview.skills[0].curve;
  return [t.what.sum(overview, limits), t.what.reached(overview), t.what.not].map((text) => make('p', {}, text));
}
