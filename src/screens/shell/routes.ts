/** The element that shows an address, the place in the bar it belongs to, and whether it takes the whole screen. */
export interface Route {
  readonly tag: string;
  readonly place: string;
  readonly path: readonly string[];
  readonly full: boolean;
}

export const PLACES = ['threads', 'speed', 'checks', 'cut', 'machine'] as const;
export type Place = (typeof PLACES)[number];

const FIND = ['find', 'family', 'size'];
/** Pages under Threads with an element of their own. */
const THREAD_PAGES: Readonly<Record<string, string>> = {
  limits: 'ls-limits',
  trains: 'ls-trains',
  measure: 'ls-measure',
  what: 'ls-identify',
  held: 'ls-held',
  own: 'ls-own',
};
/** Pages under what is shared and brought in. */
const CARRY_PAGES: Readonly<Record<string, string>> = {
  show: 'ls-codes-show',
  read: 'ls-codes-read',
  shelf: 'ls-shelf',
};
/** Pages under Cut. */
const CUT_PAGES = ['work', 'stop', 'nut', 'plan', 'pass', 'measure', 'records', 'ways', 'mistakes'];

/** Reads "#/threads/family/iso-coarse". Anything unknown is Threads: an old bookmark must not strand anyone. */
export const routeOf = (hash: string, before: string): Route => {
  const [place = '', ...path] = hash.replace(/^#\/?/, '').split('/');
  const [sub = ''] = path;
  if (place === 'enter') return { tag: 'ls-enter', place: before, path, full: true };
  if (place === 'threads' && sub === 'type') return { tag: 'ls-type', place, path, full: true };
  if (place === 'threads' && sub === 'own' && path[1])
    return { tag: 'ls-own-thread', place, path, full: false };
  const page = place === 'threads' ? THREAD_PAGES[sub] : undefined;
  if (page) return { tag: page, place, path, full: false };
  if (place === 'threads' && FIND.includes(sub)) return { tag: 'ls-find', place, path, full: false };
  if (place === 'machine' && sub === 'list') return { tag: 'ls-machines', place, path, full: false };
  if (place === 'machine' && sub === 'first') return { tag: 'ls-first-run', place, path, full: false };
  if (place === 'machine' && sub === 'new') return { tag: 'ls-new-machine', place, path, full: false };
  if (place === 'machine' && (sub === 'field' || sub === 'guide'))
    return { tag: 'ls-field', place, path, full: false };
  if (place === 'machine' && sub === 'faults') return { tag: 'ls-faults', place, path, full: false };
  if (place === 'machine' && sub === 'noise') return { tag: 'ls-noise', place, path, full: false };
  if (place === 'machine' && sub === 'stops') return { tag: 'ls-stops', place, path, full: false };
  if (place === 'machine' && sub === 'sheet') return { tag: 'ls-sheet-page', place, path, full: false };
  if (place === 'machine' && sub === 'carry')
    return { tag: CARRY_PAGES[path[1] ?? ''] ?? 'ls-carry', place, path, full: false };
  if (place === 'machine' && sub === 'wiring') return { tag: 'ls-wiring', place, path, full: false };
  if (place === 'machine' && sub === 'prove') return { tag: 'ls-prove', place, path, full: false };
  if (place === 'machine') return { tag: 'ls-machine', place, path, full: false };
  if (place === 'settings') return { tag: 'ls-settings', place: 'machine', path, full: false };
  if (place === 'speed' && sub === 'feed') return { tag: 'ls-feed', place, path, full: false };
  if (place === 'speed' && sub === 'chart') return { tag: 'ls-chart', place, path, full: false };
  if (place === 'speed' && sub === 'raise') return { tag: 'ls-raise', place, path, full: false };
  if (place === 'speed' && sub === 'trace') return { tag: 'ls-trace', place, path, full: false };
  if (place === 'speed') return { tag: 'ls-speed', place, path, full: false };
  if (place === 'cut' && CUT_PAGES.includes(sub)) return { tag: `ls-cut-${sub}`, place, path, full: false };
  if (place === 'cut') return { tag: 'ls-cut', place, path, full: false };
  if (place === 'checks') return { tag: 'ls-checks', place, path, full: false };
  return { tag: 'ls-threads', place: 'threads', path, full: false };
};
