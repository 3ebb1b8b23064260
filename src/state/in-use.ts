import type { ThreadChoice } from '../core/job';
import type { Stated } from '../core/quantity';
import type { Thread } from '../core/thread';
import type { App } from './app';

/** A thread that is cut on this phone's machines, as a job names it. */
export interface ThreadInUse {
  /** The thread's own; of a bare pitch or a feed "now". */
  readonly id: string;
  /** null for a bare pitch or a feed. */
  readonly thread: Thread | null;
  readonly pitch: Stated;
  readonly choice: ThreadChoice;
  readonly starts: number;
  /** The job's own, with the job's starts. */
  readonly now: boolean;
}

/** Favourites, then the job's thread and those last used: each once. */
export const threadsInUse = ({ settings, job, sheet, own }: App): readonly ThreadInUse[] => {
  const chosen = sheet.get('chosen').value;
  const now: ThreadInUse | null =
    chosen && job.thread
      ? {
          id: chosen.thread?.id ?? 'now',
          thread: chosen.thread,
          pitch: chosen.pitch,
          choice: job.thread,
          starts: job.starts,
          now: true,
        }
      : null;
  const byId = (id: string): ThreadInUse | null => {
    if (id === now?.id) return now;
    const thread = own.threadById(id);
    return (
      thread && {
        id,
        thread,
        pitch: thread.pitch,
        choice: own.choiceOf(thread),
        starts: thread.starts,
        now: false,
      }
    );
  };
  const all = [...settings.favourites.map(byId), now, ...settings.recent.map(byId)];
  return [...new Map(all.flatMap((t) => (t ? [[t.id, t] as const] : []))).values()];
};
