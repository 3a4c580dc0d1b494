// What a learner asks of a part of the page that has not come yet: the last wish is kept, and done when the part comes.

import { byId } from '../base/dom.js';

/**
 * Keeps presses of these buttons from now on. Returns `{ ask(wish), come() }`: a wish by another way, and what is called once the part is there.
 * @param {string[]} ids
 */
export function early(ids) {
  const buttons = ids.map((id) => byId(id));
  /** @type {(() => void) | null} */
  let wanted = null;
  const keep = (/** @type {MouseEvent} */ event) => {
    const button = event.currentTarget;
    if (button instanceof HTMLElement) wanted = () => button.click();
  };
  for (const button of buttons) button.addEventListener('click', keep);
  return {
    /** @param {() => void} wish */
    ask(wish) {
      wanted = wish;
    },
    come() {
      for (const button of buttons) button.removeEventListener('click', keep);
      wanted?.();
      wanted = null;
    },
  };
}
