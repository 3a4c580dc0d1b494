// An attempt as a file: saving it, and opening one again.

import { chooser } from '../base/chooser.js';
import { byId, make } from '../base/dom.js';
import { save } from '../base/save.js';
import { reason } from '../engine/room.js';
import { texts } from '../words/injection.js';

/** @import { AttemptKeeper } from './attempt.js' */

const MOST_BYTES = 2_000_000;

/**
 * Wires the two buttons.
 * @param {Pick<AttemptKeeper, 'trace' | 'open'>} attempt
 * @param {(sentences: string[]) => void} notice
 */
export function attemptFile(attempt, notice) {
  const t = texts.needle.file;
  const pick = make('input', { type: 'file', accept: '.json,application/json', hidden: true, id: 'attempt-file' });
  byId('attempt-open').after(pick);
  byId('attempt-save').addEventListener('click', () => {
    const trace = attempt.trace();
    if (trace) save('attempt.json', trace);
  });
  chooser(byId('attempt-open'), pick, async ([file]) => {
    try {
      if (file.size > MOST_BYTES) throw new Error(t.tooLarge);
      const text = await file.text();
      attempt.open(parsed(text));
    } catch (error) {
      notice([t.bad(reason(error))]);
    }
  });
}

/**
 * @param {string} text
 * @returns {unknown}
 */
function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    throw new Error(texts.needle.file.notJson);
  }
}
