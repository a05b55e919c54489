/** Registers the service worker of a built app; a browser that refuses it works on, online only. */
export async function keepOffline(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  try {
    await navigator.serviceWorker.register('./offline-worker.js');
  } catch (error) {
    console.warn('Slot & Riser will not be there without a network:', error);
  }
}
