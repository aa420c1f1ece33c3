/** The larger parts are fetched when the first work is under way. */
const LATER_MS = 20_000;

/** Has the browser keep the app itself, so that it opens without a network. Browsers that can't do it go on as before. */
export function keepOffline(): void {
  if (!('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('./offline.js').catch(() => undefined);
  if (wantsFewBytes()) return;
  void navigator.serviceWorker.ready.then((kept) => {
    setTimeout(() => kept.active?.postMessage('keep the larger parts'), LATER_MS);
  });
}

/** A person who spares her data gets the larger parts when she uses them. */
function wantsFewBytes(): boolean {
  const { connection } = navigator as Navigator & { readonly connection?: { readonly saveData?: boolean } };
  return connection?.saveData === true;
}
