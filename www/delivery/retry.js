// Trying again what a host did not take, ever more slowly.

const FIRST_MS = 2000;
const LONGEST_MS = 60_000;

/**
 * `again(attempt)` has `attempt` called after 2 s, 4 s, 8 s… up to a minute apart, and at once when the browser says that the network
 * is back; `stop()` forgets it and begins at 2 s the next time.
 */
export function retrier() {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;
  let wait = FIRST_MS;
  /** @type {(() => void) | null} */
  let attempt = null;
  const go = () => {
    clearTimeout(timer);
    const act = attempt;
    attempt = null;
    act?.();
  };
  addEventListener('online', go);
  return {
    /** @param {() => void} act */
    again(act) {
      clearTimeout(timer);
      attempt = act;
      timer = setTimeout(go, wait);
      wait = Math.min(wait * 2, LONGEST_MS);
    },
    waiting: () => attempt !== null,
    stop() {
      clearTimeout(timer);
      attempt = null;
      wait = FIRST_MS;
    },
  };
}

/**
 * Waits.
 * @param {number} ms
 * @returns {Promise<void>}
 */
export const pause = (ms) => new Promise((done) => setTimeout(done, ms));
