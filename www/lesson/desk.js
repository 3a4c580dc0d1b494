// The engine's module for lessons, loaded when the first lesson is wanted.

import { late } from '../base/late.js';
import { reason } from '../engine/room.js';
import { lesson as t } from '../words/lesson.js';

/** @type {Promise<typeof import('../pkg/lessons.js')> | null} */
let loading = null;

/**
 * Resolves to the module: `LessonDesk` and `ClassRoom`. Throws one sentence, `failed(why)`; the next call tries again.
 * @param {(why: string) => string} failed
 */
export function lessonModule(failed = t.noEngine) {
  loading ??= late(() => import('../pkg/lessons.js'), new URL('../pkg/lessons.js', import.meta.url)).then(async (module) => {
    await module.default();
    return module;
  });
  return loading.catch((error) => {
    loading = null;
    throw new Error(failed(reason(error)), { cause: error });
  });
}

/**
 * Resolves to `LessonDesk`.
 * @param {(why: string) => string} [failed]
 */
export const lessonDesk = (failed) => lessonModule(failed).then((module) => module.LessonDesk);

/**
 * The text of a lesson that ships with the page, by its id.
 * @param {string} id
 */
export async function shipped(id) {
  return fetched(`lessons/${id}.json`);
}

/**
 * The ids of the course, in its order.
 * @returns {Promise<string[]>}
 */
export async function course() {
  return JSON.parse(await fetched('lessons/index.json')).lessons;
}

/** @param {string} path */
async function fetched(path) {
  const answer = await fetch(new URL(`../${path}`, import.meta.url)).catch(() => null);
  if (!answer?.ok) throw new Error(t.noFile(path.split('/').at(-1) ?? path));
  return answer.text();
}
