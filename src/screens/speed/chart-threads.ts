import type { ChartThread } from '../../core/figures/chart';
import { threadById, type Thread } from '../../core/thread';
import { statedText } from '../../text/numbers';
import type { App } from '../../state';

/** Rows of the page to hang up. */
export const HUNG = 16;
/** Sizes met most often: they fill the page where fewer threads are in use. Own choice. */
const USUAL = [
  ...[
    'iso-coarse:M6',
    'iso-coarse:M8',
    'iso-coarse:M10',
    'iso-coarse:M12',
    'iso-coarse:M16',
    'iso-coarse:M20',
  ],
  ...[
    'iso-coarse:M5',
    'iso-coarse:M4',
    'iso-coarse:M24',
    'iso-coarse:M3',
    'iso-coarse:M14',
    'iso-coarse:M18',
  ],
  ...['unc:1/4-20', 'unc:3/8-16', 'unc:1/2-13', 'g:1/2', 'iso-coarse:M30', 'tr:Tr20x4'],
];

export interface NamedThread extends ChartThread {
  readonly name: string;
  /** Cut on this phone's machines, not only usual. */
  readonly inUse: boolean;
}

/** The job's thread, favourites and those last used, then usual sizes: each once. */
export const chartThreads = (app: App): readonly NamedThread[] => {
  const { settings, job, sheet, own } = app;
  const chosen = sheet.get('chosen').value;
  const list: NamedThread[] = [];
  const known = new Set<string>();
  const add = (t: NamedThread): void => {
    if (!known.has(t.key)) list.push(t);
    known.add(t.key);
  };
  const found = (t: Thread, inUse: boolean): void =>
    add({ key: t.id, name: t.designation, thread: own.choiceOf(t), starts: t.starts, inUse });
  if (chosen && job.thread)
    add({
      key: chosen.thread?.id ?? 'now',
      name: chosen.thread?.designation ?? statedText(chosen.pitch),
      thread: job.thread,
      starts: job.starts,
      inUse: true,
    });
  for (const id of [...settings.favourites, ...settings.recent]) {
    const thread = own.threadById(id);
    if (thread) found(thread, true);
  }
  for (const id of USUAL) {
    const thread = list.length < HUNG ? threadById(id) : undefined;
    if (thread) found(thread, false);
  }
  return list;
};
