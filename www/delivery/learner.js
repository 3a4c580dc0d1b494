// The learner's code when the host knows who it is: what draws the patient, and stands in the receipt.

import { delivery as texts } from '../words/delivery.js';
import { Trouble } from './trouble.js';

/**
 * A short code of a host's identity: the same for the same learner everywhere, and not the login or address itself, since receipts are
 * passed around. Two 32-bit FNV-1a sums over UTF-8, 13 digits of base 32. Not a secret: who has a list of identities can find the one
 * that fits.
 * @param {...string} identity
 */
export function codeOf(...identity) {
  const bytes = new TextEncoder().encode(identity.join('\n'));
  if (identity.join('').trim() === '') return null;
  let number = 0n;
  for (const start of [0x811c9dc5, 0x9747b28c]) {
    let h = start;
    for (const byte of bytes) h = Math.imul(h ^ byte, 0x01000193);
    number = (number << 32n) | BigInt(h >>> 0);
  }
  return number.toString(32).padStart(13, '0');
}

/**
 * Who an xAPI statement is about, by one of four identifiers (xAPI 1.0.3, part 2, 2.4.2.1).
 * @typedef {{ account?: { homePage?: string, name?: string }, mbox?: string, mbox_sha1sum?: string, openid?: string, name?: string, objectType?: string }} Agent
 */

/**
 * The agent of a launch's `actor`. Throws one sentence when it is none.
 * @param {string | null} text
 * @returns {Agent}
 */
export function actorOf(text) {
  try {
    const agent = JSON.parse(text ?? '');
    if (typeof agent === 'object' && agent !== null) return agent;
  } catch {
    // Said below.
  }
  throw new Trouble(texts.launchIncomplete);
}

/**
 * The code of an xAPI agent, from whichever of the four identifiers it has.
 * @param {Agent | null} agent
 */
export function codeOfAgent(agent) {
  const { account, mbox, mbox_sha1sum: sum, openid } = agent ?? {};
  if (account) return codeOf(account.homePage ?? '', account.name ?? '');
  return codeOf(mbox ?? sum ?? openid ?? '');
}
