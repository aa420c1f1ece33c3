/** The larger parts are fetched when the first work is under way. */
const LATER_MS = 20_000;

/** What of the app the browser keeps, bytes. */
export interface KeptOffline {
  readonly keptBytes: number;
  readonly allBytes: number;
}

/** Has the browser keep the app itself, so that it opens without a network. Browsers that can't do it go on as before. */
export function keepOffline(): void {
  if (!('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('./offline.js').catch(() => undefined);
  if (wantsFewBytes()) return;
  void navigator.serviceWorker.ready.then((kept) => {
    setTimeout(() => kept.active?.postMessage('keep the larger parts'), LATER_MS);
  });
}

/** Undefined where the browser keeps nothing. */
export function whatIsKept(): Promise<KeptOffline | undefined> {
  return ask('what is kept');
}

/** Fetches what is not kept yet; undefined where that failed. */
export function keepTheRest(): Promise<KeptOffline | undefined> {
  return ask('keep the larger parts');
}

async function ask(what: string): Promise<KeptOffline | undefined> {
  if (!('serviceWorker' in navigator)) return undefined;
  const worker = (await navigator.serviceWorker.getRegistration())?.active;
  if (worker === undefined || worker === null) return undefined;
  const { port1: own, port2: its } = new MessageChannel();
  return new Promise((resolve) => {
    own.onmessage = ({ data }: MessageEvent<KeptOffline | undefined>) => {
      own.close();
      resolve(data);
    };
    worker.postMessage(what, [its]);
  });
}

/** A person who spares her data gets the larger parts when she uses them. */
function wantsFewBytes(): boolean {
  const { connection } = navigator as Navigator & { readonly connection?: { readonly saveData?: boolean } };
  return connection?.saveData === true;
}
