// The page without a network: said wherever it runs, and kept by a service worker on its own site only (not in a frame, not in a
// package, not from a file).

import { byId, make, say } from '../base/dom.js';
import { texts } from '../words/texts.js';
import { delivery } from '../words/delivery.js';

/** Says at the foot of the page, where nothing moves for it, that there is no network and what that means. */
function tellNetwork() {
  const line = make('p', { class: 'network', id: 'network', role: 'status' });
  byId('caution').append(line);
  // One file holds everything; a page of its own site has been kept by its service worker.
  const kept = () => location.protocol === 'file:' || Boolean(navigator.serviceWorker?.controller);
  const lost = () => say(line, kept() ? texts.notice.offlineKept : texts.notice.offline);
  addEventListener('offline', lost);
  addEventListener('online', () => line.textContent && say(line, texts.notice.online));
  if (!navigator.onLine) lost();
}

/**
 * Registers the service worker; `notice([sentence])` when there is a new version.
 * @param {{ notice: (sentences: string[]) => void }} act
 */
export async function offline({ notice }) {
  tellNetwork();
  // Written in by `downbeam pack --site`, into no other page.
  const known = document.querySelector('meta[name="downbeam-offline"]') !== null;
  if (!known || window.parent !== window || !('serviceWorker' in navigator) || !/^https?:$/.test(location.protocol)) return;
  try {
    const address = new URL('../service-worker.js', import.meta.url);
    const registration = await navigator.serviceWorker.register(address, { updateViaCache: 'none' });
    tellUpdates(registration, notice);
  } catch {
    // Without it the page works as any page: with a network.
  }
}

/**
 * A version that waits is taken at the next visit; the learner's attempt is not pulled away from under them.
 * @param {ServiceWorkerRegistration} registration
 * @param {(sentences: string[]) => void} notice
 */
function tellUpdates(registration, notice) {
  const tell = () => navigator.serviceWorker.controller && notice([delivery.update]);
  if (registration.waiting) tell();
  registration.addEventListener('updatefound', () => {
    const coming = registration.installing;
    coming?.addEventListener('statechange', () => coming.state === 'installed' && tell());
  });
}
