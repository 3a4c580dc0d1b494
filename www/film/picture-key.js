// The words under the picture: what each kind of line is, and the parts of the dog. `words` is the `picture` table of the texts.

import { levelBelow } from '../engine/catalogue.js';
import { make } from '../base/dom.js';

/**
 * @import { DogPart, Level } from '../pkg/values.js'
 *
 * The `picture` table of the texts, as far as it goes with a key.
 * @typedef {{
 *   keyPosterior: (s: { level: Level }) => string, keyBelow: (s: { level: Level }, below: Level) => string, keyTarget: (s: { level: Level }) => string,
 *   dogName: (d: DogPart, s: { level: Level }) => string, dogPart: (dog: string, part: string, level: Level) => string, part: (name: string) => string,
 * }} KeyWords
 */

/**
 * Fills the key of the outlines for `state`'s level and polarity.
 * @param {HTMLElement} key
 * @param {{ level: Level, boneDark: boolean }} state
 * @param {KeyWords} words
 */
export function showKey(key, state, words) {
  key.dataset.bone = state.boneDark ? 'dark' : 'white';
  if (key.dataset.for === state.level) return;
  key.dataset.for = state.level;
  const below = levelBelow(state.level);
  const rows = [
    ['posterior', words.keyPosterior(state)],
    ...(state.level === 'S1' ? [] : [['below', words.keyBelow(state, below)], ['target', words.keyTarget(state)]]),
  ];
  key.replaceChildren(...rows.map(([kind, text]) => make('li', {}, make('span', { class: `sample ${kind}`, 'aria-hidden': 'true' }), text)));
}

/**
 * Fills the list of the dog's parts.
 * @param {HTMLElement} list
 * @param {{ level: Level, dog?: DogPart[] }} shown
 * @param {KeyWords} words
 */
export function showDogNames(list, shown, words) {
  const names = (shown.dog ?? []).map((d) => words.dogPart(words.dogName(d, shown), words.part(d.part), d.level));
  if (list.dataset.for === names.join()) return;
  list.dataset.for = names.join();
  list.replaceChildren(...names.map((name) => make('li', {}, name)));
}
