// SCORM 2004 4th edition (ADL, Run-Time Environment 1.1, 2009): names, limits and rules. Completion and success are two fields.

import { findHost } from './host-calls.js';
import { scormDelivery } from './scorm.js';
import { duration } from './time.js';
import { delivery as texts } from '../words/delivery.js';

/**
 * @import { DeliveryActs } from './choose.js'
 * @import { Form } from './scorm.js'
 */

/** @type {Form} */
const FORM = {
  name: 'scorm2004',
  title: 'SCORM 2004',
  names: { start: 'Initialize', get: 'GetValue', set: 'SetValue', commit: 'Commit', end: 'Terminate', error: 'GetLastError', errorText: 'GetErrorString' },
  lasting: ['201', '351', '401', '402', '403', '404', '405', '406', '407', '408'],
  unset: '403',
  closed: ['132', '142'],
  keys: {
    suspend: 'cmi.suspend_data', exit: 'cmi.exit', location: 'cmi.location', time: 'cmi.session_time', learner: 'cmi.learner_id',
    mode: 'cmi.mode', status: 'cmi.success_status', raw: 'cmi.score.raw', mastery: 'cmi.scaled_passing_score',
  },
  essential: ['cmi.completion_status', 'cmi.success_status', 'cmi.score.scaled', 'cmi.suspend_data'],
  /** Smallest permitted maximum of cmi.suspend_data (4.2.24). */
  suspendMost: 64_000,
  time: duration,
  percent: (mark) => Math.round(mark * 1e4) / 100,
  alreadyOpen: (error) => error.code === '103',
  opened: ({ status }) => (['passed', 'failed'].includes(status) ? [] : [['cmi.completion_status', 'incomplete']]),
  result({ score, passed: ownPassed, complete, steps }, before, mark) {
    const scaled = Math.floor(score * 1e6 + 1e-4) / 1e6;
    const raw = Math.floor(score * 1e4 + 1e-6) / 100;
    const passed = Number.isFinite(mark) ? scaled >= mark : ownPassed;
    const better = before.status === 'passed' ? passed && !(raw <= before.raw) : before.status !== 'failed' || passed || !(raw < before.raw);
    const done = steps.filter((step) => typeof step.score === 'number').length;
    return {
      passed,
      better,
      values: [
        ['cmi.score.min', 0], ['cmi.score.max', 100], ['cmi.score.raw', raw], ['cmi.score.scaled', scaled],
        ['cmi.success_status', passed ? 'passed' : 'failed'],
        ['cmi.completion_status', complete || passed ? 'completed' : 'incomplete'],
        ['cmi.progress_measure', complete || passed ? 1 : Math.round((100 * done) / Math.max(1, steps.length)) / 100],
      ],
    };
  },
  /** An interaction is only for the teacher's statistics. */
  step({ id, name, score }, n) {
    const place = `cmi.interactions.${n}`;
    const done = typeof score === 'number';
    return [
      [`${place}.id`, id],
      [`${place}.type`, 'other'],
      [`${place}.description`, String(name ?? id).slice(0, 250)],
      [`${place}.learner_response`, done ? texts.ofHundred(Math.round(score * 100)) : texts.notDone],
      [`${place}.result`, done ? Math.round(score * 1e4) / 1e4 : 'neutral'],
    ];
  },
};

/** The host's object; null when this page is in no SCORM 2004 host. */
export const host = () => findHost('API_1484_11');

/**
 * A Delivery to the SCORM 2004 host around this page; null when there is none.
 * @param {DeliveryActs} act
 */
export async function connect(act) {
  const api = host();
  return api && scormDelivery(FORM, api, act);
}
