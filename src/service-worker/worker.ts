import { keepOffline } from './keep-offline';
import { retire } from './retire';

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: (string | PrecacheItem)[] };
interface PrecacheItem {
  url: string;
  revision: string | null;
  integrity: string;
}

if (__UNREGISTER__) {
  retire(self);
} else {
  // The build replaces this expression by the list of files; it must stand in the source exactly once.
  keepOffline(self, self.__WB_MANIFEST);
}
