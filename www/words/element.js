// The course element, over what it shares with the page. Sentences in texts/…/element.ftl and view.ftl.

import { viewWords } from './view.js';

const NAMED = { digest: 'allowedDigest', named: 'allowedPatient' };

/** The table of a language, of sayers of its `view` and `element` parts. */
export function elementWords(viewSay, say) {
  const view = viewWords(viewSay);
  const own = say.tree({
    allowed: (rule) => (Object.hasOwn(NAMED, rule.kind) ? say(NAMED[rule.kind]) : view.allowed(rule)),
    title: (s) => (s.view === 'free' ? view.place(s) : say('titleView', { place: view.place(s), view: view.checks.views[s.view] })),
    patient: (s) => say('patient', { patient: view.case.patientName(s.patient) }),
    throughFailed: (why) => say('throughFailed', { why }),
    loading: {
      failedFetch: (why) => say('loading-failedFetch', { why }),
      failedStart: (why) => say('loading-failedStart', { why }),
      failedRun: (why) => say('loading-failedRun', { why }),
      failedIntegrity: (file) => say('loading-failedIntegrity', { file }),
    },
    problem: {
      attribute: (name, value, allowed, kept) => say('problem-attribute', { name, value, allowed, kept }),
      patient: (why, kept) => say('problem-patient', { why: why.replace(/^./, (c) => c.toUpperCase()), kept }),
      integrity: (value, allowed) => say('problem-integrity', { value, allowed }),
      style: (why) => say('problem-style', { why }),
    },
  });
  return { ...view, ...own, loading: { ...view.loading, ...own.loading } };
}
