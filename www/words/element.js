// The course element, over what it shares with the page. Sentences in texts/…/element.ftl and view.ftl.

import { viewWords } from './view.js';

/**
 * @import { Target } from '../pkg/values.js'
 * @import { Rule } from '../base/rules.js'
 * @import { Sayer } from './sentences.js'
 */

/** @type {Record<string, string>} */
const NAMED = { digest: 'allowedDigest', named: 'allowedPatient' };

/**
 * The table of a language, of sayers of its `view` and `element` parts.
 * @param {Sayer<typeof import('../pkg/texts/en/view.js').view>} viewSay
 * @param {Sayer<typeof import('../pkg/texts/en/element.js').element>} say
 */
export function elementWords(viewSay, say) {
  const view = viewWords(viewSay);
  const own = say.tree({
    allowed: (/** @type {Rule} */ rule) => (Object.hasOwn(NAMED, rule.kind) ? say(NAMED[rule.kind]) : view.allowed(rule)),
    title: (/** @type {Target & { view: 'free' | keyof typeof view.checks.views }} */ s) => (s.view === 'free' ? view.place(s) : say('titleView', { place: view.place(s), view: view.checks.nameOf(s.view) })),
    patient: (/** @type {{ patient: string }} */ s) => say('patient', { patient: view.case.patientName(s.patient) }),
    throughFailed: (/** @type {string} */ why) => say('throughFailed', { why }),
    loading: {
      failedFetch: (/** @type {string} */ why) => say('loading-failedFetch', { why }),
      failedStart: (/** @type {string} */ why) => say('loading-failedStart', { why }),
      failedRun: (/** @type {string} */ why) => say('loading-failedRun', { why }),
      failedIntegrity: (/** @type {string} */ file) => say('loading-failedIntegrity', { file }),
    },
    problem: {
      attribute: (/** @type {string} */ name, /** @type {string} */ value, /** @type {string} */ allowed, /** @type {string} */ kept) => say('problem-attribute', { name, value, allowed, kept }),
      patient: (/** @type {string} */ why, /** @type {string} */ kept) => say('problem-patient', { why: why.replace(/^./, (c) => c.toUpperCase()), kept }),
      integrity: (/** @type {string} */ value, /** @type {string} */ allowed) => say('problem-integrity', { value, allowed }),
      style: (/** @type {string} */ why) => say('problem-style', { why }),
    },
  });
  return { ...view, ...own, loading: { ...view.loading, ...own.loading } };
}
