// The page without a network, on its own site only: not in a frame, not in a package, not from a file.

import { texts } from './texts.js';

/** Registers the service worker; `notice([sentence])` when there is a new version. */
export async function offline({ notice }) {
  // Written in by `downbeam pack --site`, into no other page.
  const known = document.querySelector('meta[name="downbeam-offline"]') !== null;
  if (!known || globalThis.parent !== globalThis || !('serviceWorker' in navigator) || !/^https?:$/.test(location.protocol)) return;
  try {
    const address = new URL('service-worker.js', import.meta.url);
    const registration = await navigator.serviceWorker.register(address, { updateViaCache: 'none' });
    tellUpdates(registration, notice);
  } catch {
    // Without it the page works as any page: with a network.
  }
}

/** A version that waits is taken at the next visit; the learner's attempt is not pulled away from under them. */
function tellUpdates(registration, notice) {
  const tell = () => navigator.serviceWorker.controller && notice([texts.delivery.update]);
  if (registration.waiting) tell();
  registration.addEventListener('updatefound', () => {
    const coming = registration.installing;
    coming?.addEventListener('statechange', () => coming.state === 'installed' && tell());
  });
}
