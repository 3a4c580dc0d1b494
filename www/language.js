// The page's language: chosen before anything is said (`enter`), and fixed from then on. English is in the modules of www/words as they
// come; another language is fetched whole.

import { setting } from './storage.js';
import { sayer } from './sentences.js';

/** The languages besides English, with what brings their messages. */
const OTHERS = {
  de: () => import('./pkg/texts/de/all.js'),
  es: () => import('./pkg/texts/es/all.js'),
};

/** Their tags, English first. */
export const LANGUAGES = ['en', ...Object.keys(OTHERS)];

const chosen = { tag: 'en', parts: {} };

/** Takes the language that is asked for: by `?lang=` in the address, by the learner's choice kept here, or by the browser. */
export async function enter() {
  const tag = [new URLSearchParams(location.search).get('lang'), setting('language', ['', ...LANGUAGES]), ...(navigator.languages ?? [])]
    .map((asked) => asked?.toLowerCase().split('-')[0])
    .find((asked) => LANGUAGES.includes(asked));
  if (!Object.hasOwn(OTHERS, tag ?? 'en')) return;
  try {
    chosen.parts = await OTHERS[tag]();
    chosen.tag = tag;
  } catch {
    // The page goes on in English, which it says by itself.
  }
}

/** What says the messages of a part in the page's language. */
export const pageSayer = (part, english) => sayer(chosen.tag, chosen.parts[part] ?? {}, english);
