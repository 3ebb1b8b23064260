import traceWorker from '../../worker/trace?worker&url';
import { scriptUrl } from '../../device/script-url';
import type { TraceResult, TraceSpec } from '../../core/drive/trace';
import type { TraceAnswer, TraceAsk } from '../../worker/trace-messages';

export type TraceOutcome =
  | { readonly kind: 'done'; readonly results: readonly TraceResult[] }
  | { readonly kind: 'refused'; readonly field: string }
  | { readonly kind: 'failed' }
  | { readonly kind: 'cancelled' };

export interface TraceRun {
  readonly outcome: Promise<TraceOutcome>;
  readonly cancel: () => void;
}

/**
 * Runs the model in a worker of its own, which ends with the run: nothing of it stays in memory between runs.
 * @param onProgress part done, 0 to 1
 */
export const startTrace = (specs: readonly TraceSpec[], onProgress: (part: number) => void): TraceRun => {
  let worker: Worker;
  try {
    worker = new Worker(scriptUrl(traceWorker), { type: 'module' });
  } catch {
    return { outcome: Promise.resolve({ kind: 'failed' }), cancel: () => undefined };
  }
  let cancel: () => void = () => undefined;
  const outcome = new Promise<TraceOutcome>((resolve) => {
    const end = (how: TraceOutcome): void => {
      worker.terminate();
      resolve(how);
    };
    cancel = () => end({ kind: 'cancelled' });
    worker.addEventListener('error', () => end({ kind: 'failed' }));
    worker.addEventListener('message', ({ data }: MessageEvent<TraceAnswer>) => {
      if (data.kind === 'progress') onProgress(data.done / data.of);
      else if (data.kind === 'done') end({ kind: 'done', results: data.results });
      else end({ kind: 'refused', field: data.field });
    });
    const ask: TraceAsk = { kind: 'run', id: 1, specs };
    worker.postMessage(ask);
  });
  return { outcome, cancel: () => cancel() };
};
