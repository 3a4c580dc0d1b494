// The fluoroscopy pedal: a button that gives pulses for as long as it is held (pointer, Space or Enter), or that is switched on
// and off when it is latched or when something other than a hand presses it, such as a screen reader.

const MOST_PULSES = 30;

/**
 * A pedal. `act`: `rate()` in pulses a second, `began()`, `pulse(n)` (returns false if there was none), `ended()`. `latched()` says whether
 * a press switches.
 * @param {HTMLButtonElement} button
 * @param {() => boolean} latched
 * @param {{ rate: () => number, began: () => void, pulse: (n: number) => boolean, ended: () => void }} act
 */
export function pedal(button, latched, act) {
  let timer = 0;
  let on = false;
  let began_ms = 0;
  let given = 0;

  function start() {
    if (on || button.disabled) return;
    on = true;
    given = 0;
    began_ms = performance.now();
    button.setAttribute('aria-pressed', 'true');
    act.began();
    tick();
  }

  function stop() {
    if (!on) return;
    on = false;
    clearTimeout(timer);
    button.setAttribute('aria-pressed', 'false');
    act.ended();
  }

  /** Gives the pulses that are due. A picture that takes longer than a pulse is skipped, not its dose. */
  function tick() {
    const interval_ms = 1000 / act.rate();
    const due = 1 + Math.floor((performance.now() - began_ms) / interval_ms) - given;
    const pulses = Math.min(due, MOST_PULSES);
    if (pulses > 0) {
      given += pulses;
      if (!act.pulse(pulses)) return stop();
    }
    if (on) timer = setTimeout(tick, Math.max(0, began_ms + given * interval_ms - performance.now()));
  }

  /** @param {KeyboardEvent} event */
  const isPress = (event) => [' ', 'Enter'].includes(event.key) && !event.altKey && !event.ctrlKey && !event.metaKey;
  button.addEventListener('pointerdown', (event) => {
    if (latched() || event.button !== 0) return;
    // Captured, so that a hand that slides off the button while it looks at the picture does not lose the beam.
    button.setPointerCapture(event.pointerId);
    start();
  });
  for (const type of ['pointerup', 'pointercancel', 'lostpointercapture', 'blur']) button.addEventListener(type, () => void (latched() || stop()));
  button.addEventListener('keydown', (event) => {
    if (latched() || !isPress(event)) return;
    event.preventDefault();
    if (!event.repeat) start();
  });
  button.addEventListener('keyup', (event) => {
    if (latched() || !isPress(event)) return;
    event.preventDefault();
    stop();
  });
  button.addEventListener('click', (event) => {
    // A click of a hand that holds has been dealt with by its pointer; one without a pointer has no length.
    if (!latched() && event.detail !== 0) return;
    if (on) stop();
    else start();
  });
  button.addEventListener('contextmenu', (event) => event.preventDefault());
  // Nobody is looking any more.
  addEventListener('blur', stop);
  addEventListener('pagehide', stop);
  document.addEventListener('visibilitychange', () => document.hidden && stop());
  document.addEventListener('keydown', (event) => event.key === 'Escape' && stop());

  return { on: () => on, stop };
}
