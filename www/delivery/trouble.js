// What goes wrong on the way to a place outside, as a sentence for the learner.

import { delivery as texts } from '../words/delivery.js';

/** An error whose message is a sentence of the page. Any other error's message is the browser's, in its own words. */
export class Trouble extends Error {}

/**
 * What to tell the learner of an error.
 * @param {unknown} error
 */
export const sentence = (error) => (error instanceof Trouble ? error.message : texts.broken);
