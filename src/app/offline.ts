/** What is fetched for later stays out of the way of whoever goes straight to a bench, ms after the page has come. */
const LATER_MS = 6000;

/** Registers the service worker of a built app; a browser that refuses it works on, online only. */
export async function keepOffline(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  if (navigator.serviceWorker.controller === null) await new Promise((go) => setTimeout(go, LATER_MS));
  try {
    await navigator.serviceWorker.register('./offline-worker.js');
  } catch (error) {
    console.warn('Slot & Riser will not be there without a network:', error);
  }
}
