// The engine's module for practice, and the page's texts of practice in their places.

import { late } from '../base/late.js';
import { reason } from '../engine/room.js';
import { practice as t } from '../words/practice.js';

/** Resolves to the module: `PracticeRoom` and `ClassDesk`. Throws one sentence. */
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
  const text = (path) => path.split('.').reduce((part, key) => part?.[key], t);
  for (const element of root.querySelectorAll('[data-practice]')) element.textContent = text(element.dataset.practice);
  for (const element of root.querySelectorAll('[data-practice-label]')) element.setAttribute('aria-label', text(element.dataset.practiceLabel));
}

/** What went wrong, in a sentence. */
export const complaint = (error) => (error instanceof WebAssembly.RuntimeError ? t.noPage(reason(error)) : String(error?.message ?? error));

/** The number of the learner's own day since 1970. */
export function today(now = new Date()) {
  return Math.floor((now.getTime() - now.getTimezoneOffset() * 60_000) / 86_400_000);
}
