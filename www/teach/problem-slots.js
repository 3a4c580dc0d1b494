// What the engine has against a lesson, each thing at the field that it is about.

import { make, say } from '../base/dom.js';

/**
 * @import { ReadError } from '../pkg/values.js'
 *
 * A problem and the id of the field that it is about; null where none fits.
 * @typedef {ReadError & { target: string | null }} Placed
 *
 * @typedef {ReturnType<typeof problemSlots>} Slots
 */

/** Keeps the places where a problem can be said. */
export function problemSlots() {
  /** @type {Map<string, { line: HTMLElement, inputs: Element[] }>} */
  const slots = new Map();
  let number = 0;
  return {
    /**
     * A place below `holder` for what is wrong at `path`, said of `inputs`. Another for the same path takes its place.
     * @param {string} path
     * @param {Element} holder
     * @param {Element[]} inputs
     */
    add(path, holder, inputs) {
      number += 1;
      const line = make('p', { class: 'complaint', id: `problem-${number}`, hidden: true });
      holder.append(line);
      slots.set(path, { line, inputs });
    },
    /**
     * Forgets the places for paths that begin so.
     * @param {string} start
     */
    drop(start) {
      for (const path of [...slots.keys()]) if (path.startsWith(start)) slots.delete(path);
    },
    /**
     * Says every problem at the nearest field.
     * @param {ReadError[]} problems
     * @returns {Placed[]}
     */
    show(problems) {
      /** @type {Map<string, string[]>} */
      const said = new Map();
      const placed = problems.map(({ path, problem }) => {
        const fitting = [...slots.keys()].filter((key) => path === key || path.startsWith(`${key}.`) || path.startsWith(`${key}[`));
        const key = fitting.sort((a, b) => b.length - a.length)[0];
        if (key === undefined) return { path, problem, target: null };
        const rest = path.slice(key.length).replace(/^\./, '');
        said.set(key, [...(said.get(key) ?? []), rest ? `${rest}: ${problem}` : problem]);
        return { path, problem, target: slots.get(key)?.inputs.find((input) => input.id)?.id ?? null };
      });
      // A field may have more places than one: its own, and that of the group that it is in.
      /** @type {Map<Element, string[]>} */
      const wrong = new Map();
      for (const [key, { line, inputs }] of slots) {
        const words = (said.get(key) ?? []).map(sentence).join(' ');
        line.hidden = words === '';
        say(line, words);
        for (const input of inputs) wrong.set(input, [...(wrong.get(input) ?? []), ...(words ? [line.id] : [])]);
      }
      for (const [input, lines] of wrong) describe(input, lines);
      return placed;
    },
  };
}

/** The engine's words as a sentence. */
export const sentence = (/** @type {string} */ words) => `${words[0]?.toUpperCase() ?? ''}${words.slice(1)}${/[.!?…]$/.test(words) ? '' : '.'}`;

/**
 * @param {Element} input
 * @param {string[]} lines ids of the sentences about it
 */
function describe(input, lines) {
  const others = (input.getAttribute('aria-describedby') ?? '').split(' ').filter((name) => name && !name.startsWith('problem-'));
  const ids = [...others, ...lines];
  if (ids.length > 0) input.setAttribute('aria-describedby', ids.join(' '));
  else input.removeAttribute('aria-describedby');
  if (lines.length > 0) input.setAttribute('aria-invalid', 'true');
  else input.removeAttribute('aria-invalid');
}
