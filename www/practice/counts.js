// What a class answered, over the film: an arrow at the edge for a direction, and a bar beside each answer.

import { byId, make, say, within } from '../base/dom.js';
import { shape } from '../base/svg.js';
import { practice as t } from '../words/practice.js';

/** @import { ShownQuestion } from '../pkg/values.js' */

/**
 * Where an arrow of a direction stands and points, [right, down]. The receptor's left is the picture's left.
 * @type {Record<string, [number, number]>}
 */
const WAYS = { left: [-1, 0], right: [1, 0], cephalad: [0, -1], caudad: [0, 1], head: [0, -1], feet: [0, 1], patients_left: [-1, 0], patients_right: [1, 0] };
/** Half the film less the arrow's room, mm. */
const EDGE = 84;
const LONGEST = 26;

/**
 * Draws the counts of a question's choices; `answer` is the true one, or null before it is shown.
 * @param {ShownQuestion} question
 * @param {number[]} counts
 * @param {number | null} answer
 */
export function countsOver(question, counts, answer) {
  const most = Math.max(1, ...counts);
  const all = counts.reduce((sum, n) => sum + n, 0);
  for (const choice of byId('answers').querySelectorAll('button')) {
    const i = Number(choice.dataset.choice);
    let bar = choice.parentElement?.querySelector('.tally');
    if (!bar) choice.after((bar = make('p', { class: 'tally' }, make('span', { class: 'tally-text' }), make('meter', { min: 0, max: 1 }))));
    const meter = within(bar, 'meter', HTMLMeterElement);
    meter.value = all ? counts[i] / all : 0;
    meter.setAttribute('aria-hidden', 'true');
    say(within(bar, '.tally-text'), t.teacher.countOf(counts[i]) + (i === answer ? ` · ${t.teacher.true}` : ''));
  }
  const arrows = question.choices.flatMap((choice, i) => {
    const way = 'to' in choice ? WAYS[choice.to] : undefined;
    return way && counts[i] > 0 ? arrow(way, counts[i] / most, counts[i], i === answer) : [];
  });
  let layer = byId('overlay').querySelector('.class-arrows');
  if (!layer) byId('overlay').append((layer = shape('g', { class: 'class-arrows' })));
  layer.replaceChildren(...arrows);
}

/**
 * @param {[number, number]} way
 * @param {number} share
 * @param {number} count
 * @param {boolean} right
 */
function arrow([dx, dy], share, count, right) {
  const length = 8 + (LONGEST - 8) * share;
  const [x, y] = [dx * EDGE, dy * EDGE];
  const from = [x - dx * length, y - dy * length];
  const d = `M${from[0]} ${from[1]}L${x} ${y}M${x - dx * 5 - dy * 4} ${y - dy * 5 - dx * 4}L${x} ${y}L${x - dx * 5 + dy * 4} ${y - dy * 5 + dx * 4}`;
  return ['rim', 'ink'].flatMap((kind) => [
    shape('path', { class: `${kind} class-arrow${right ? ' is-true' : ''}`, d }),
    shape('text', { class: `${kind} class-count`, x: x + dx * 8, y: y + dy * 8 + 3, 'text-anchor': 'middle' }, String(count)),
  ]);
}
