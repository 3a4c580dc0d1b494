// Reads the element's attributes and properties by the table in interface.js.

import { clip } from '../base/rules.js';
import { ATTRIBUTES } from './interface.js';

/**
 * @import { Said } from './interface.js'
 * @import { Problem } from './problems.js'
 * @import { Texts } from './words.js'
 *
 * @typedef {Said[keyof Said]} AttributeValue
 */

export const BY_NAME = new Map(ATTRIBUTES.map((entry) => [entry.name, entry]));

/** The state of an element without attributes. */
export const fallbacks = () => /** @type {Said} */ (Object.fromEntries(ATTRIBUTES.map(({ key, fallback }) => [key, fallback])));

/**
 * Reads one: `{ value }`, or `{ problem }` where it does not fit. Nothing at all (`null`) is the fallback. `now`: the value that is kept.
 * @param {string} name
 * @param {unknown} given
 * @param {AttributeValue} now
 * @param {Texts} texts
 * @returns {{ value: string | number | boolean, problem?: undefined } | { value?: undefined, problem: Problem }}
 */
export function readAttribute(name, given, now, texts) {
  const { rule, fallback } = attributeOf(name);
  if (given === null || given === undefined) return { value: fallback };
  const text = String(given);
  const value = rule.read(text);
  if (value !== undefined) return { value };
  const { problem } = texts;
  const sentence = rule.kind === 'digest'
    ? problem.integrity(clip(text), texts.allowed(rule))
    : problem.attribute(name, clip(text), texts.allowed(rule), written(now));
  return { problem: { about: rule.kind === 'digest' ? 'integrity' : 'attribute', attribute: name, value: text, sentence } };
}

/**
 * The attribute of that name.
 * @param {string} name
 */
export function attributeOf(name) {
  const found = BY_NAME.get(name);
  if (!found) throw new Error(`no attribute '${name}'`);
  return found;
}

/** A value as it would stand in the attribute. */
const written = (/** @type {AttributeValue} */ value) => (typeof value === 'boolean' ? (value ? 'on' : 'off') : String(value));
