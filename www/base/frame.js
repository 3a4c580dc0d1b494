// One redraw for every animation frame at most, and only when something asked for one.

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
