/** Keeps the page for the time without a network. Without a worker (an old browser) it works while it stays open. */
export async function keepPage(page: '/desk' | '/notebook'): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  await navigator.serviceWorker.register('/offline.worker.js', { scope: page }).catch(() => undefined);
}

/**
 * Asks the browser not to clear what is stored here when space runs short. Whether it agrees is its own affair: false
 * is a reason to install the page, and to keep paper at hand.
 */
export async function askForLastingStorage(): Promise<boolean> {
  const { storage } = navigator;
  if (typeof storage?.persist !== 'function') return false;
  return (await storage.persisted()) || (await storage.persist());
}
