// What an element watches while it is in a page: its size, how near it is to the screen, the system's colour scheme.

/** An element begins to load when it comes this near to the screen. */
const NEAR = '300px';

/**
 * Watches until `stop()`. `act`: `resized()` whenever `film` has another size, `scheme()` when the system's colours change.
 * @param {Element} film
 * @param {{ resized: () => void, scheme: () => void }} act
 */
export function watchSurroundings(film, act) {
  const controller = new AbortController();
  const { signal } = controller;
  const light = matchMedia('(prefers-color-scheme: light)');
  light.addEventListener('change', () => act.scheme(), { signal });
  const size = new ResizeObserver(() => act.resized());
  size.observe(film);
  signal.addEventListener('abort', () => size.disconnect());

  return {
    stop: () => controller.abort(),
    /**
     * The look that a theme asks for here.
     * @param {string} theme
     */
    look: (theme) => (theme === 'light' || (theme === 'device' && light.matches) ? 'light' : 'dark'),
    /**
     * Calls `start` once, as soon as `host` is near the screen.
     * @param {Element} host
     * @param {() => void} start
     */
    whenNear(host, start) {
      const near = new IntersectionObserver((seen) => {
        if (!seen.some((entry) => entry.isIntersecting)) return;
        near.disconnect();
        start();
      }, { rootMargin: NEAR });
      near.observe(host);
      signal.addEventListener('abort', () => near.disconnect());
    },
  };
}
