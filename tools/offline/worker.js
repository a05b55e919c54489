// Keeps the app usable without a network. Filled in at build time by tools/offline/plugin.ts.
const CACHE = 'slot-and-riser-__VERSION__';
const FILES = __FILES__;

self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(FILES)));
});

// A new version takes over only when no window of the old one is left, so no attempt changes engine in the middle.
self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name !== CACHE).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET' || new URL(event.request.url).origin !== self.location.origin) return;
  event.respondWith(answer(event.request));
});

async function answer(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request.mode === 'navigate' ? './' : request, {
    ignoreVary: true,
    ignoreSearch: true,
  });
  return kept ?? fetch(request);
}
