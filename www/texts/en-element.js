// The English sentences of the course element.

import { view } from './en-view.js';

const NAMED = { digest: 'sha256-, sha384- or sha512-, each followed by a digest in base64', named: 'a patient’s name' };

export const element = {
  ...view,
  language: 'en',
  allowed: (rule) => NAMED[rule.kind] ?? view.allowed(rule),
  title: (s) => `${s.level} ${s.side}${s.view === 'free' ? '' : `: ${view.checks.views[s.view]}`}`,
  patient: (s) => `Patient “${view.case.patientName(s.patient)}”`,
  waiting: 'The picture is drawn when this comes into view.',
  turns: 'Turn the C-arm',
  checksHeading: 'How close',
  showingBest: 'The best view that this machine reaches here. It does not count as found.',

  loading: {
    ...view.loading,
    failedFetch: (why) => `The engine did not load (${why}). Check the connection and try again.`,
    failedStart: (why) => `The engine could not be started (${why}). This needs a browser with WebAssembly that the page’s content policy lets run.`,
    failedRun: (why) => `The engine stopped (${why}). Load it again to go on; your position is kept.`,
    failedIntegrity: (file) => `The engine was not started: ${file} is not the file whose digest this page gives in “integrity”.`,
    otherIntegrity: 'The engine was not used: another element of this page has loaded it under another “integrity”, or none. Give all the same.',
  },

  problem: {
    attribute: (name, value, allowed, kept) => `${name}="${value}" does not fit: allowed is ${allowed}. ${kept} is used.`,
    patient: (why, kept) => `${why.replace(/^./, (c) => c.toUpperCase())}. “${kept}” is used.`,
    integrity: (value, allowed) => `integrity="${value}" does not fit: allowed is ${allowed}. The engine is not loaded without it.`,
    style: (why) => `The look did not load (${why}); everything works without it.`,
    nothingChecked: 'view="free" has no best view: nothing is checked there.',
    notHere: 'The element is not in a page, so there is no picture.',
  },
};
