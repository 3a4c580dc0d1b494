// When things are done: once a frame at most, once nothing more comes, after what else is waiting, after what is there has been painted.

/**
 * Returns a function that asks for `draw` to be run in the next frame.
 * @param {() => void} draw
 */
export function onceAFrame(draw) {
  let asked = false;
  return () => {
    if (asked) return;
    asked = true;
    requestAnimationFrame(() => {
      asked = false;
      draw();
    });
  };
}

/**
 * Returns a function that runs `act` once nothing has called it for `quiet_ms`.
 * @param {() => void} act
 * @param {number} quiet_ms
 */
export function onceQuiet(act, quiet_ms) {
  let timer = 0;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(act, quiet_ms);
  };
}

/** Resolves after whatever else is waiting, input first. */
export const rest = () => new Promise((resolve) => setTimeout(resolve));

/** Resolves once what is on the page has been painted, or after what is waiting on a page that is not shown. */
export const painted = () => (document.hidden ? rest() : new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve))));
