import type { ChartThread } from '../../core/figures/chart';
import { threadById, type Thread } from '../../core/thread';
import { statedText } from '../../text/numbers';
import type { App } from '../../state';

/** Rows of the page to hang up. */
export const HUNG = 16;

const of = (family: string, keys: string): string[] => keys.split(' ').map((key) => `${family}:${key}`);
/** Sizes met most often, the commonest first: they fill the page where fewer threads are in use. Own choice. */
const METRIC = [
  ...of('iso-coarse', 'M6 M8 M10 M12 M16 M20 M5 M4 M24 M3 M14 M18 M30 M36'),
  ...of('iso-fine', 'M8x1 M10x1.25 M12x1.5 M16x1.5 M20x1.5'),
  ...of('tr', 'Tr16x4 Tr20x4 Tr30x6'),
];
const INCH = [
  ...of('unc', '1/4-20 3/8-16 1/2-13 5/16-18 5/8-11 3/4-10 7/16-14 7/8-9 1-8'),
  ...of('unf', '1/4-28 3/8-24 1/2-20 5/16-24 5/8-18 3/4-16'),
  ...of('g', '1/8 1/4 1/2 1'),
];

export interface NamedThread extends ChartThread {
  readonly name: string;
  /** Cut on this phone's machines, not only usual. */
  readonly inUse: boolean;
}

/** Favourites, then the job's thread and those last used, then usual sizes of the person's unit: each once. */
export const chartThreads = (app: App): readonly NamedThread[] => {
  const { settings, job, sheet, own } = app;
  const chosen = sheet.get('chosen').value;
  const list: NamedThread[] = [];
  const known = new Set<string>();
  const add = (t: NamedThread): void => {
    if (!known.has(t.key)) list.push(t);
    known.add(t.key);
  };
  const jobsOwn = chosen?.thread?.id ?? 'now';
  const addJob = (): void => {
    if (!chosen || !job.thread || chosen.kind === 'feed') return;
    const name = chosen.thread?.designation ?? statedText(chosen.pitch);
    add({ key: jobsOwn, name, thread: job.thread, starts: job.starts, inUse: true });
  };
  const addById = (id: string, inUse: boolean): void => {
    const t: Thread | null = own.threadById(id) ?? threadById(id) ?? null;
    if (!t) return;
    // The job's own thread as the job has it: with its starts.
    if (inUse && t.id === jobsOwn) addJob();
    else add({ key: t.id, name: t.designation, thread: own.choiceOf(t), starts: t.starts, inUse });
  };
  for (const id of settings.favourites) addById(id, true);
  addJob();
  for (const id of settings.recent) addById(id, true);
  for (const id of settings.units === 'in' ? [...INCH, ...METRIC] : [...METRIC, ...INCH]) addById(id, false);
  return list;
};
