import { deleteOwnCaches } from './caches';

/**
 * The way out of a bad deployed worker: takes over at once, deletes this copy's caches and unregisters itself.
 * Open pages are left alone (all their code is in memory and a cut may be running); the next load comes from the
 * network. What a person saved is in IndexedDB and isn't touched.
 */
export function retire(scope: ServiceWorkerGlobalScope): void {
  scope.addEventListener('install', () => {
    void scope.skipWaiting();
  });
  scope.addEventListener('activate', (event) => {
    event.waitUntil(
      deleteOwnCaches(scope.caches, scope.registration.scope).then(() => scope.registration.unregister()),
    );
  });
}
