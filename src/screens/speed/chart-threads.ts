import { usualThreads, type ChartThread } from '../../core/figures/chart';
import { threadById } from '../../core/thread';
import { marked, threadName } from '../../text/numbers';
import { threadsInUse, type App } from '../../state';

/** Rows of the page to hang up. */
export const HUNG = 16;

export interface NamedThread extends ChartThread {
  readonly name: string;
  /** Cut on this phone's machines, not only usual. */
  readonly inUse: boolean;
}

/** The threads in use, then usual sizes of the person's unit: each once. A feed is no thread. */
export const chartThreads = (app: App): readonly NamedThread[] => {
  const used = threadsInUse(app).filter((t) => t.choice.kind !== 'feed');
  const known = new Set(used.map((t) => t.id));
  const usual = usualThreads(app.settings.units)
    .filter((id) => !known.has(id))
    .flatMap((id) => threadById(id) ?? []);
  return [
    ...used.map((t) => ({
      key: t.id,
      name: threadName(t),
      thread: t.choice,
      starts: t.starts,
      inUse: true,
    })),
    ...usual.map((t) => ({
      key: t.id,
      name: marked(t.designation),
      thread: { kind: 'catalogue', id: t.id } as const,
      starts: t.starts,
      inUse: false,
    })),
  ];
};
