/** Has the browser keep the app itself, so that it opens without a network. Browsers that can't do it go on as before. */
export function keepOffline(): void {
  if (!('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('./offline.js').catch(() => undefined);
}
