// SCORM 1.2 (ADL, The SCORM Run-Time Environment, version 1.2, 2001): names, limits and rules. One field says both whether the lesson is
// over and whether it was passed.

import { findHost } from './host-calls.js';
import { scormDelivery } from './scorm.js';
import { timespan } from './time.js';
import { delivery as texts } from '../words/delivery.js';

const PASSED = ['passed', 'completed'];

/**
 * @import { DeliveryActs } from './choose.js'
 * @import { Form } from './scorm.js'
 */

/** @type {Form} */
const FORM = {
  name: 'scorm12',
  title: 'SCORM 1.2',
  names: { start: 'LMSInitialize', get: 'LMSGetValue', set: 'LMSSetValue', commit: 'LMSCommit', end: 'LMSFinish', error: 'LMSGetLastError', errorText: 'LMSGetErrorString' },
  /** Arguments, elements and types that will be refused for ever. */
  lasting: ['201', '202', '203', '401', '402', '403', '404', '405'],
  unset: '0',
  closed: ['301'],
  keys: {
    suspend: 'cmi.suspend_data', exit: 'cmi.core.exit', location: 'cmi.core.lesson_location', time: 'cmi.core.session_time', learner: 'cmi.core.student_id',
    mode: 'cmi.core.lesson_mode', status: 'cmi.core.lesson_status', raw: 'cmi.core.score.raw', mastery: 'cmi.student_data.mastery_score',
  },
  essential: ['cmi.core.lesson_status', 'cmi.core.score.raw', 'cmi.suspend_data'],
  /** CMIString4096. */
  suspendMost: 4096,
  time: timespan,
  percent: (mark) => mark,
  /** 101 is all that this version has for "already initialised": then values can be read. */
  alreadyOpen: (error, host) => error.code === '101' && Boolean(host.get('cmi.core.lesson_status')),
  /** A lesson that has a result keeps it until there is a better one. */
  opened: ({ status }) => (['passed', 'failed', 'completed'].includes(status) ? [] : [['cmi.core.lesson_status', 'incomplete']]),
  result({ score, passed: ownPassed, complete }, before, mark) {
    // Down, so that no score below a pass mark is written as that mark.
    const raw = Math.floor(score * 1e4 + 1e-6) / 100;
    const passed = Number.isFinite(mark) ? raw >= mark : ownPassed;
    const better = PASSED.includes(before.status) ? passed && !(raw <= before.raw) : before.status !== 'failed' || passed || !(raw < before.raw);
    const status = passed ? 'passed' : complete ? 'failed' : 'incomplete';
    return {
      passed,
      better,
      values: [['cmi.core.score.min', 0], ['cmi.core.score.max', 100], ['cmi.core.score.raw', raw], ['cmi.core.lesson_status', status]],
    };
  },
  /** An interaction is only for the teacher's statistics; its response is a CMIFeedback of 255 characters. */
  step({ id, score }, n) {
    const place = `cmi.interactions.${n}`;
    const done = typeof score === 'number';
    return [
      [`${place}.id`, id],
      [`${place}.type`, 'performance'],
      [`${place}.student_response`, done ? texts.ofHundred(Math.round(score * 100)).slice(0, 255) : texts.notDone],
      [`${place}.result`, done ? Math.round(score * 1e4) / 1e4 : 'neutral'],
    ];
  },
};

/** The host's object; null when this page is in no SCORM 1.2 host. */
export const host = () => findHost('API');

/**
 * A Delivery to the SCORM 1.2 host around this page; null when there is none.
 * @param {DeliveryActs} act
 */
export async function connect(act) {
  const api = host();
  return api && scormDelivery(FORM, api, act);
}
