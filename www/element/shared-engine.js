// One engine for all elements of a page: fetched, compiled and started once, by the first that needs it.

import { IntegrityError, loadEngine } from '../engine/engine-load.js';

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 * @import { LoadingWords, OnProgress } from '../engine/engine-load.js'
 * @import { Stand } from './patients.js'
 *
 * The engine as all elements use it: its patients by name.
 * @typedef {{ TeachingRoom: typeof TeachingRoom, memory: WebAssembly.Memory, patients: Map<string, Stand> }} Engine
 */

/**
 * The digests that were asked for, a promise, and the engine once it is there.
 * @type {{ integrity: string, loading: Promise<Engine>, engine: Engine | null } | null}
 */
let current = null;
/** @type {Set<OnProgress>} */
const watchers = new Set();

/**
 * The engine of this page. `progress` gets percent, or null while the size is unknown.
 * An engine that was loaded under other digests, or none, is not handed out: nobody has checked it against these.
 * @param {string} integrity
 * @param {LoadingWords & { otherIntegrity: string }} words
 * @param {OnProgress} progress
 */
export async function sharedEngine(integrity, words, progress) {
  watchers.add(progress);
  try {
    for (;;) {
      current ??= { integrity, loading: load(integrity, words), engine: null };
      const mine = current;
      try {
        mine.engine = await mine.loading;
      } catch (error) {
        // A load that failed is not kept; one that failed under other digests says nothing about these.
        if (current === mine) current = null;
        if (mine.integrity === integrity) throw error;
        continue;
      }
      if (mine.integrity !== integrity) throw new IntegrityError(words.otherIntegrity);
      return mine.engine;
    }
  } finally {
    watchers.delete(progress);
  }
}

/**
 * @param {string} integrity
 * @param {LoadingWords} words
 * @returns {Promise<Engine>}
 */
async function load(integrity, words) {
  const glue = await loadEngine((percent) => watchers.forEach((watch) => watch(percent)), words, integrity);
  // Once started, the glue's start function only hands the engine's exports out again.
  const { memory } = await glue.default();
  return { TeachingRoom: glue.TeachingRoom, memory, patients: new Map() };
}

/**
 * The engine has stopped: the next one who needs it loads it again.
 * @param {Engine} engine
 */
export function forgetEngine(engine) {
  if (current?.engine === engine) current = null;
}

/** What all elements use together. */
export function usage() {
  const stands = [...(current?.engine?.patients.values() ?? [])];
  return {
    views: stands.reduce((sum, stand) => sum + stand.users, 0),
    patients: stands.map((stand) => stand.name),
    memory_bytes: current?.engine?.memory.buffer.byteLength ?? 0,
  };
}
