// Pages of the same learner that are open beside this one in the same browser. What one of them has handed in the others must know, or
// a worse result of theirs would be written over it.

/**
 * A line to the other pages that use the same name; `heard(message)` for each of theirs. Without such a line nothing is heard.
 * @template M
 * @param {string} name
 * @param {(message: M) => void} heard
 */
export function otherTabs(name, heard) {
  /** @type {BroadcastChannel | null} */
  let channel = null;
  try {
    channel = new BroadcastChannel(name);
    channel.onmessage = ({ data }) => heard(data);
  } catch {
    // An old browser, or a sandbox.
  }
  return {
    /** @param {M} message */
    tell(message) {
      try {
        channel?.postMessage(message);
      } catch {
        // Closed with the page.
      }
    },
  };
}

/**
 * Does something while no other page does anything under that name, and gives its value. Without locks it is done at once.
 * @template T
 * @param {string} name
 * @param {() => T} act
 * @returns {Promise<Awaited<T>>}
 */
export async function alone(name, act) {
  let begun = false;
  const once = () => ((begun = true), act());
  try {
    return await navigator.locks.request(name, once);
  } catch (error) {
    if (begun) throw error;
    return await act();
  }
}
