/** The page's own worker: keeps the page for a start without network and takes new versions only between visits. */
let registration = null;

/** The one script address this page ever hands out, for browsers that ask for proof of it. */
const WORKER = '/table/worker.js';
const address = () => (window.trustedTypes
  ? window.trustedTypes.createPolicy('stepwell-worker', { createScriptURL: () => WORKER }).createScriptURL(WORKER)
  : WORKER);

export async function keepForOffline() {
  if (!('serviceWorker' in navigator)) {
    return;
  }
  try {
    registration = await navigator.serviceWorker.register(address(),
      { scope: '/table/', updateViaCache: 'none' });
    await navigator.serviceWorker.ready;
    await registration.sync?.register('stepwell-send').catch(() => {});
  } catch {
    // Without a worker the page still logs and sends; it only cannot be opened without network.
  }
}

/** Asks the worker for a new version; it is used from the next opening on, never under a page that is open. */
export async function takeNewVersion(between) {
  if (between()) {
    registration?.active?.postMessage('refresh');
  }
}
