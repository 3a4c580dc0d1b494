// Brings in the engine's module for lessons and classes, with one clear sentence when that fails.

import { reason } from '../room.js';
import { teach } from './texts.js';

/** The module's handles: `ClassRoom`, `LessonDesk`, `lessonChoices`. Throws an Error with a sentence. */
export async function loadLessonEngine() {
  if (typeof WebAssembly === 'undefined') throw new Error(teach.engine.failedStart('no WebAssembly'));
  try {
    const engine = await import('../pkg/lessons.js');
    await engine.default();
    return engine;
  } catch (error) {
    throw new Error(teach.engine.failedFetch(reason(error)), { cause: error });
  }
}

/** What the engine says against a text; a trap (which no text should give) is told as such. */
export function complaint(error) {
  return error instanceof WebAssembly.RuntimeError ? teach.engine.stopped(reason(error)) : String(error?.message ?? error);
}
