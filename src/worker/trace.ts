import { checkTrace, Trace, type TraceResult, type TraceSpec } from '../core/drive/trace';
import type { TraceAnswer, TraceAsk } from './trace-messages';

/** Counts between two looks at the letter box: some ten milliseconds on a slow phone. */
const PIECE = 100_000;

const say = (answer: TraceAnswer): void => postMessage(answer);

/** Lets messages in. A timer would be held back to 4 ms each time. */
const channel = new MessageChannel();
const breathe = (): Promise<void> =>
  new Promise((resolve) => {
    channel.port1.onmessage = () => resolve();
    channel.port2.postMessage(null);
  });

/** The run under way; another number ends it. */
let current = 0;

const run = async (id: number, specs: readonly TraceSpec[]): Promise<void> => {
  for (const spec of specs) {
    const refusal = checkTrace(spec);
    if (refusal) return say({ kind: 'refused', id, field: refusal.field });
  }
  const counts = (s: TraceSpec): number => ((s.job.runIn + s.job.length) / s.job.lead) * s.job.counts;
  const of = specs.reduce((sum, s) => sum + counts(s), 0);
  let before = 0;
  const results: TraceResult[] = [];
  for (const spec of specs) {
    const trace = new Trace(spec);
    while (!trace.advance(PIECE)) {
      say({ kind: 'progress', id, done: before + trace.done, of });
      await breathe();
      if (current !== id) return;
    }
    before += trace.done;
    results.push(trace.result());
  }
  say({ kind: 'done', id, results });
};

addEventListener('message', ({ data }: MessageEvent<TraceAsk>) => {
  current = data.kind === 'run' ? data.id : 0;
  if (data.kind === 'run') void run(data.id, data.specs);
});
