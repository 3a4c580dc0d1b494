// The learner's answers in the browser's storage: taken up, and written after each one. What cannot be read is never written over.

import { store, stored } from '../base/storage.js';
import { complaint } from './module.js';

const KEY = 'downbeam.practice';

/** @import { PracticeRoom } from './module.js' */

/**
 * Joins a practice room with the storage.
 * @param {PracticeRoom} room
 */
export function keptPractice(room) {
  let locked = false;
  let problem = null;
  const found = stored(KEY);
  if (found !== null) {
    try {
      room.load(found);
    } catch (error) {
      locked = true;
      problem = complaint(error);
    }
  }
  return {
    /** Why what was found could not be read, or null. */
    problem,
    /** Writes what is there, with what another page of the site may have added meanwhile. Returns whether it is kept. */
    write() {
      if (locked) return false;
      const there = stored(KEY);
      if (there !== null) {
        try {
          room.merge(there);
        } catch {
          // Another page wrote what this one cannot read: it stays as it is.
          locked = true;
          return false;
        }
      }
      return store(KEY, room.toJson());
    },
  };
}
