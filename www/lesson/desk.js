// The engine's module for lessons, loaded when the first lesson is wanted.

import { reason } from '../room.js';
import { lesson as t } from '../texts/en-lesson.js';

let loading = null;

/** Resolves to `LessonDesk`. Throws one sentence; the next call tries again. */
export function lessonDesk() {
  loading ??= import('../pkg/lessons.js').then(async (module) => {
    await module.default();
    return module.LessonDesk;
  });
  return loading.catch((error) => {
    loading = null;
    throw new Error(t.noEngine(reason(error)));
  });
}

/** The text of a lesson that ships with the page, by its id. */
export async function shipped(id) {
  return fetched(`lessons/${id}.json`);
}

/** The ids of the course, in its order. */
export async function course() {
  return JSON.parse(await fetched('lessons/index.json')).lessons;
}

async function fetched(path) {
  const answer = await fetch(new URL(`../${path}`, import.meta.url)).catch(() => null);
  if (!answer?.ok) throw new Error(t.noFile(path.split('/').at(-1)));
  return answer.text();
}
