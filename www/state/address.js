// The state in the address: #level=L4&side=left&oblique=25&… A fragment is never sent to a server.
// One table drives reading and writing; whatever does not fit is ignored with a sentence.

import { between, clip, oneOf, onOff } from '../base/rules.js';
import { texts } from '../words/texts.js';

/** What may stand in the fragment, by its name there and in the state. */
function entries(catalogue) {
  return [
    ['patient', 'patient', oneOf(catalogue.patients.map((p) => p.name))],
    ['level', 'level', oneOf(catalogue.levels)],
    ['side', 'side', oneOf(['left', 'right'])],
    ['start', 'start', between(1, 9999, true)],
    ['oblique', 'oblique', between(...catalogue.range.oblique)],
    ['tilt', 'tilt', between(...catalogue.range.tilt)],
    ['self-test', 'selfTest', onOff],
    ['exposures', 'byExposure', onOff],
    ['injection', 'injection', onOff],
  ];
}

/** Reads a fragment: what it asks for, and a sentence for every entry that does not fit. */
export function readAddress(fragment, catalogue) {
  const asked = {};
  const complaints = [];
  const known = new Map(entries(catalogue).map(([name, key, rule]) => [name, { key, rule }]));
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
  return { asked, complaints };
}

/** The fragment that brings this state back. */
export function writeAddress(state, catalogue) {
  const parts = new URLSearchParams();
  for (const [name, key, rule] of entries(catalogue)) {
    const value = state[key];
    if (rule === onOff) {
      if (value) parts.set(name, 'on');
    } else {
      parts.set(name, typeof value === 'number' ? String(Math.round(value * 10) / 10) : value);
    }
  }
  return `#${parts}`;
}
