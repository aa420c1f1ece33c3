// Keeps the app on the device, so that it opens without a network. What a person made is kept elsewhere (src/store).
const NAME = 'NAME';
const FILES = ['FILES'];
const LATER = ['LATER'];
// Bytes of each, by its name.
const SIZES = 'SIZES';

addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(NAME)
      .then((cache) => cache.addAll(FILES))
      .then(() => self.skipWaiting()),
  );
});

addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name !== NAME).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

// The page asks for it when nothing else goes on: what a photo is traced with is larger than all the rest. On a port that
// comes with the message it hears what is kept, now or when all is.
addEventListener('message', (event) => {
  const [port] = event.ports;
  event.waitUntil(
    (event.data === 'what is kept' ? Promise.resolve() : keepLater())
      .then(whatIsKept)
      .then((kept) => port?.postMessage(kept))
      .catch(() => port?.postMessage(undefined)),
  );
});

async function keepLater() {
  const cache = await caches.open(NAME);
  await Promise.all(LATER.map((file) => keep(cache, file)));
}

async function whatIsKept() {
  const cache = await caches.open(NAME);
  const files = [...FILES, ...LATER];
  const kept = await Promise.all(files.map((file) => cache.match(file)));
  const bytes = (some) => some.reduce((sum, file) => sum + (SIZES[file] ?? 0), 0);
  return { keptBytes: bytes(files.filter((_, i) => kept[i] !== undefined)), allBytes: bytes(files) };
}

async function keep(cache, file) {
  if ((await cache.match(file)) === undefined) await cache.add(file);
}

addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  const { origin, pathname } = new URL(url);
  if (method !== 'GET' || origin !== location.origin || pathname.includes('/api/')) return;
  event.respondWith(answer(event.request));
});

/** Kept files first; a page asks the network first, so that a new version is seen at once. */
async function answer(request) {
  const cache = await caches.open(NAME);
  const kept = await cache.match(request, { ignoreSearch: true });
  if (kept !== undefined && request.mode !== 'navigate') return kept;
  try {
    const fresh = await fetch(request);
    if (fresh.ok && request.mode !== 'navigate') await cache.put(request, fresh.clone());
    return fresh;
  } catch (error) {
    const page = kept ?? (request.mode === 'navigate' ? await cache.match('./') : undefined);
    if (page !== undefined) return page;
    throw error;
  }
}
