// The engine's module for practice, and the page's texts of practice in their places.

import { late } from '../base/late.js';
import { reason } from '../engine/room.js';
import { practice as t } from '../words/practice.js';

/**
 * @typedef {typeof import('../pkg/practice.js')} PracticeModule
 * @typedef {InstanceType<PracticeModule['PracticeRoom']>} PracticeRoom
 */

/** Resolves to the module. Throws one sentence. */
export async function practiceModule() {
  try {
    const module = await late(() => import('../pkg/practice.js'), new URL('../pkg/practice.js', import.meta.url));
    await module.default();
    return module;
  } catch (error) {
    throw new Error(t.noEngine(reason(error)), { cause: error });
  }
}

/** Fills what carries `data-practice` (content) or `data-practice-label` (aria-label). */
export function fillPractice(root = document) {
  const text = (/** @type {string} */ path) => String(path.split('.').reduce((part, key) => /** @type {any} */ (part)?.[key], /** @type {unknown} */ (t)));
  const carriers = (/** @type {string} */ name) => [...root.querySelectorAll(`[data-${name}]`)].map((element) => /** @type {const} */ ([element, text(element.getAttribute(`data-${name}`) ?? '')]));
  for (const [element, words] of carriers('practice')) element.textContent = words;
  for (const [element, words] of carriers('practice-label')) element.setAttribute('aria-label', words);
}

/**
 * What went wrong, in a sentence.
 * @param {unknown} error
 */
export const complaint = (error) => (error instanceof WebAssembly.RuntimeError ? t.noPage(reason(error)) : error instanceof Error ? error.message : String(error));

/** The number of the learner's own day since 1970. */
export function today(now = new Date()) {
  return Math.floor((now.getTime() - now.getTimezoneOffset() * 60_000) / 86_400_000);
}
