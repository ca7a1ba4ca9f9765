// Opens the page /table without a connection. What it keeps has a version, the digest of all of it: a changed page is kept
// anew beside the old one, which goes when the new one is complete. Nothing else of this server is kept or answered here.
const KEPT = 'table-' + 'VERSION';
const FILES = ['/table', '/table/definitions.json', 'ASSETS'];

addEventListener('install', event => {
  event.waitUntil(caches.open(KEPT)
    .then(cache => cache.addAll(FILES.map(file => new Request(file, { cache: 'reload' }))))
    .then(() => skipWaiting()));
});

addEventListener('activate', event => {
  event.waitUntil(caches.keys()
    .then(names => Promise.all(names.filter(name => name.startsWith('table-') && name !== KEPT).map(name => caches.delete(name))))
    .then(() => clients.claim()));
});

addEventListener('fetch', event => {
  const address = new URL(event.request.url);
  if (event.request.method === 'GET' && address.origin === location.origin && FILES.includes(address.pathname)) {
    event.respondWith(caches.open(KEPT)
      .then(cache => cache.match(address.pathname))
      .then(kept => kept ?? fetch(event.request)));
  }
});
