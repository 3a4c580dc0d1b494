// Modules that are loaded when they are first wanted. Some browsers remember a failed import under its address (Chromium 148 does, 156
// does not), so once one has failed it is asked for under another.

/** @type {Map<string, number>} */
const failed = new Map();

/**
 * Loads a module: `load` imports it, `address` is where it is. Rejects as the import does; the next call tries again.
 * @template M
 * @param {() => Promise<M>} load
 * @param {URL} address
 * @returns {Promise<M>}
 */
export async function late(load, address) {
  const tries = failed.get(address.href) ?? 0;
  try {
    return await (tries === 0 ? load() : import(/* @vite-ignore */ `${address.href}?again=${tries}`));
  } catch (error) {
    failed.set(address.href, tries + 1);
    throw error;
  }
}
