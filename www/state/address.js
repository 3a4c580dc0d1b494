// The state in the address: #level=L4&side=left&oblique=25&… A fragment is never sent to a server.
// One table drives reading and writing; whatever does not fit is ignored with a sentence.

import { between, clip, oneOf, onOff } from '../base/rules.js';
import { tenth } from '../base/tenth.js';
import { texts } from '../words/texts.js';

/**
 * @import { Rule } from '../base/rules.js'
 * @import { Catalogue, PageState } from './page-state.js'
 */

/**
 * What may stand in the fragment, by its name there and in the state.
 * @param {Catalogue} catalogue
 * @returns {[string, keyof PageState, Rule][]}
 */
function entries(catalogue) {
  /** @param {[number, number]} limits */
  const within = ([low, high]) => between(low, high);
  return [
    ['patient', 'patient', oneOf(catalogue.patients.map((p) => p.name))],
    ['level', 'level', oneOf(catalogue.levels)],
    ['side', 'side', oneOf(['left', 'right'])],
    ['start', 'start', between(1, 9999, true)],
    ['oblique', 'oblique_deg', within(catalogue.range.oblique_deg)],
    ['tilt', 'tilt_deg', within(catalogue.range.tilt_deg)],
    ['self-test', 'selfTest', onOff],
    ['exposures', 'byExposure', onOff],
    ['injection', 'injection', onOff],
  ];
}

/**
 * Reads a fragment: what it asks for, and a sentence for every entry that does not fit.
 * @param {string} fragment
 * @param {Catalogue} catalogue
 */
export function readAddress(fragment, catalogue) {
  /** @type {Record<string, string | number | boolean>} */
  const asked = {};
  /** @type {string[]} */
  const complaints = [];
  const known = new Map(entries(catalogue).map(([name, key, rule]) => /** @type {const} */ ([name, { key, rule }])));
  for (const [name, text] of new URLSearchParams(fragment.replace(/^#/, ''))) {
    const entry = known.get(name);
    if (!entry) {
      complaints.push(texts.notice.unknownFragment(clip(name)));
      continue;
    }
    const value = entry.rule.read(text);
    if (value === undefined) complaints.push(texts.notice.badFragment(name, clip(text), texts.allowed(entry.rule)));
    else asked[entry.key] = value;
  }
  return { asked: /** @type {Partial<PageState>} */ (asked), complaints };
}

/**
 * The fragment that brings this state back.
 * @param {PageState} state
 * @param {Catalogue} catalogue
 */
export function writeAddress(state, catalogue) {
  const parts = new URLSearchParams();
  for (const [name, key, rule] of entries(catalogue)) {
    const value = state[key];
    if (rule === onOff) {
      if (value) parts.set(name, 'on');
    } else {
      parts.set(name, String(typeof value === 'number' ? tenth(value) : value));
    }
  }
  return `#${parts}`;
}
