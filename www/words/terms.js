// The terms of the field with their meanings. Sentences in texts/…/terms.ftl.

import { pageSayer } from './language.js';
import { terms as english } from '../pkg/texts/en/terms.js';

const say = pageSayer('terms', english);

/** Each term: its name, the words that stand for it, longest first, and what it means. @type {{ name: string, words: string[], means: string }[]} */
export const terms = Object.keys(english).filter((key) => key.endsWith('.words')).map((key) => {
  const name = key.replace('.words', '');
  return { name, words: say(key).split(', '), means: say(`${name}.means`) };
});
