// xAPI statements (xAPI 1.0.3, part 2) and what they are made of. `xapi-profile.jsonld` describes what is sent.

import { uuid } from '../base/uuid.js';

const VERBS = 'http://adlnet.gov/expapi/verbs/';
/** Types of what is told about, and names of what is ours in a statement. */
export const ACTIVITY_TYPE = 'http://adlnet.gov/expapi/activities/assessment';
export const STEP_SCORES = 'urn:downbeam:step-scores';
export const RECEIPT = 'urn:downbeam:receipt';
const RECEIPT_FILE = 'urn:downbeam:attachment:receipt';
/** The category that says to which version of the profile a statement keeps. */
export const PROFILE = { id: 'urn:downbeam:xapi-profile:1' };

let last = 0;

/** Time stamps of one page are never equal: the order of cmi5's statements is that of their time stamps. */
function timestamp() {
  last = Math.max(Date.now(), last + 1);
  return new Date(last).toISOString();
}

/**
 * A statement: `actor`, `activity` (an object of the statement) and `context` as they are.
 * @param {string} verb
 * @param {{ actor: object, activity: object, context: object, result?: object }} about
 */
export function statement(verb, { actor, activity, context, result }) {
  const made = {
    id: uuid(),
    actor,
    verb: { id: VERBS + verb, display: { en: verb } },
    object: activity,
    context,
    timestamp: timestamp(),
  };
  return result ? { ...made, result } : made;
}

/**
 * The score of a result. Rounded down, so that no score below a pass mark is told as that mark; raw is whole (cmi5, 9.5.1).
 * @param {number} score 0 to 1
 */
export function scoreOf(score) {
  const scaled = Math.floor(score * 1e4 + 1e-6) / 1e4;
  return { scaled, raw: Math.floor(scaled * 100 + 1e-6), min: 0, max: 100 };
}

/**
 * Score of each step, `null` where it was not done, as an extension.
 * @param {{ id: string, score: number | null }[]} steps
 */
export const stepScores = (steps) => ({ [STEP_SCORES]: Object.fromEntries(steps.map(({ id, score }) => [id, score])) });

/**
 * The description of a receipt as an attachment (xAPI 1.0.3, part 2, 2.4.11); null where the page cannot hash.
 * @param {string} receipt
 */
export async function attachment(receipt) {
  const body = new TextEncoder().encode(receipt);
  try {
    const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
    const sha2 = Array.from(digest, (b) => b.toString(16).padStart(2, '0')).join('');
    return { usageType: RECEIPT_FILE, display: { en: 'Receipt' }, contentType: 'application/json', length: body.length, sha2 };
  } catch {
    return null;
  }
}
