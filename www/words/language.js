// The page's language: chosen before anything is said (`enter`), and fixed from then on. English is in the modules of www/words as they
// come; another language is fetched whole.

import { sayer } from './sentences.js';
import { keep, setting } from '../base/storage.js';

/** @import { Table } from './sentences.js' */

/**
 * The languages besides English, with what brings their messages.
 * @type {Record<string, () => Promise<Record<string, Table>>>}
 */
const OTHERS = {
  de: () => import('../pkg/texts/de/all.js'),
  es: () => import('../pkg/texts/es/all.js'),
};

/** Their tags, English first. */
export const LANGUAGES = ['en', ...Object.keys(OTHERS)];

/** The part of the address that asks for a language. */
const ASKED = 'lang';

/** @type {{ tag: string, parts: Record<string, Table>, missed: string | null }} */
const chosen = { tag: 'en', parts: {}, missed: null };

/** Takes the language that is asked for: by `?lang=` in the address, by the learner's choice kept here, or by the browser. */
export async function enter() {
  const tag = [new URLSearchParams(location.search).get(ASKED), setting('language', ['', ...LANGUAGES]), ...(navigator.languages ?? [])]
    .map((asked) => asked?.toLowerCase().split('-')[0])
    .find((asked) => asked !== undefined && LANGUAGES.includes(asked));
  if (tag === undefined || !Object.hasOwn(OTHERS, tag)) return;
  try {
    chosen.parts = await OTHERS[tag]();
    chosen.tag = tag;
  } catch {
    chosen.missed = tag;
  }
}

/** The language that was asked for and could not be fetched: the page then speaks English. */
export const missedLanguage = () => chosen.missed;

/**
 * Comes again in another language. The address says it too, since the browser may keep nothing for this page.
 * @param {string} tag
 */
export function speak(tag) {
  keep('language', tag);
  const address = new URL(location.href);
  address.searchParams.set(ASKED, tag);
  if (address.href === location.href) location.reload();
  else location.assign(address);
}

/**
 * What says the messages of a part in the page's language.
 * @template {Table} E
 * @param {string} part
 * @param {E} english
 */
export const pageSayer = (part, english) => sayer(chosen.tag, chosen.parts[part] ?? {}, english);
