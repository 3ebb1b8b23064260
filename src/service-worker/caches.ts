const PREFIX = 'latheside-';

/**
 * Name of the one cache this worker fills. It ends in the scope, so two copies of the app under different paths
 * of one origin never touch each other's files.
 */
export function precacheName(scope: string): string {
  return `${PREFIX}precache-${scope}`;
}

/** Name of the cache with what a start of one version needs first (at-once.ts). */
export function startName(scope: string, version: string): string {
  return `${PREFIX}start-${version}-${scope}`;
}

/** Name of the cache that holds the shelf of machines beside the app; the page fills it (storage/shelf.ts). */
export function shelfName(scope: string): string {
  return `${PREFIX}shelf-${scope}`;
}

/** Deletes the caches of this copy of the app except those in `keep`; whatever else the origin holds stays. */
export async function deleteOwnCaches(
  caches: CacheStorage,
  scope: string,
  keep: readonly string[] = [],
): Promise<void> {
  const names = await caches.keys();
  const own = names.filter((name) => name.startsWith(PREFIX) && name.endsWith(`-${scope}`));
  await Promise.all(own.filter((name) => !keep.includes(name)).map((name) => caches.delete(name)));
}
