// What stands over the picture while there is none: loading with progress, or what went wrong and a way to try again.

import { byId, say } from '../base/dom.js';
import { texts } from '../words/texts.js';

/**
 * Sets up the cover over the film. `onRetry` is called by its button.
 * @param {() => void} onRetry
 */
export function filmState(onRetry) {
  const cover = byId('film-state');
  const heading = byId('film-state-heading');
  const text = byId('film-state-text');
  const progress = byId('film-progress', HTMLProgressElement);
  const retry = byId('retry');
  retry.addEventListener('click', onRetry);
  /** @type {(sentence: string, how?: { failed?: boolean, percent?: number | null }) => void} */
  const show = (sentence, { failed = false, percent = null } = {}) => {
    cover.hidden = false;
    cover.dataset.failed = String(failed);
    heading.hidden = !failed;
    say(heading, texts.loading.failedHeading);
    say(text, sentence);
    progress.hidden = failed;
    if (percent === null) progress.removeAttribute('value');
    else progress.value = percent;
    retry.hidden = !failed;
    byId('film-image').hidden = failed;
  };
  return {
    /** @type {(sentence: string, percent?: number | null) => void} */
    loading: (sentence, percent = null) => show(sentence, { percent }),
    /** @param {string} sentence */
    failed: (sentence) => {
      show(sentence, { failed: true });
      say(byId('status'), sentence);
    },
    clear: () => {
      cover.hidden = true;
      byId('film-image').hidden = false;
    },
  };
}
