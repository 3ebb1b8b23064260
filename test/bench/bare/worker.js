const FILES = ['./', 'bare.js'];

addEventListener('install', (event) =>
  event.waitUntil(caches.open('bare').then((cache) => cache.addAll(FILES))),
);
addEventListener('activate', (event) => event.waitUntil(clients.claim()));
addEventListener('fetch', (event) =>
  event.respondWith(caches.match(event.request).then((found) => found ?? fetch(event.request))),
);
