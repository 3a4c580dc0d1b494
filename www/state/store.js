// A store: one plain object that says how things stand, and who is told when something of it changes. The page has one and so has each
// course element.

/**
 * @template {object} S
 * @typedef {{
 *   state: S,
 *   set: (patch: Partial<S>) => boolean,
 *   subscribe: (keys: readonly (keyof S)[] | null, heard: (changed: readonly (keyof S)[]) => void) => () => void,
 * }} Store
 */

/**
 * Makes one. `along(state, changed, patch)`: what else changes with that, such as what no longer holds.
 *
 * `set` takes a patch and returns whether anything in it was new. Everyone who subscribed to one of the changed fields (null: to any) is
 * then told which have changed, in the order in which they subscribed, with the state already as it now is.
 * @template {object} S
 * @param {S} first
 * @param {(state: S, changed: readonly (keyof S)[], patch: Partial<S>) => Partial<S>} [along]
 * @returns {Store<S>}
 */
export function createStore(first, along) {
  const state = { ...first };
  /** @type {Set<{ keys: readonly (keyof S)[] | null, heard: (changed: readonly (keyof S)[]) => void }>} */
  const subscribers = new Set();
  /** @type {(patch: Partial<S>) => (keyof S)[]} */
  const differing = (patch) => /** @type {(keyof S)[]} */ (Object.keys(patch)).filter((key) => state[key] !== patch[key]);

  return {
    state,
    set(patch) {
      const changed = differing(patch);
      if (changed.length === 0) return false;
      Object.assign(state, patch);
      const more = along?.(state, changed, patch) ?? {};
      changed.push(...differing(more));
      Object.assign(state, more);
      for (const { keys, heard } of [...subscribers]) if (!keys || changed.some((key) => keys.includes(key))) heard(changed);
      return true;
    },
    subscribe(keys, heard) {
      const subscriber = { keys, heard };
      subscribers.add(subscriber);
      return () => void subscribers.delete(subscriber);
    },
  };
}
