import address from '../../worker/carry?worker&url';
import {
  MOST,
  type CarriedRow,
  type Content,
  type ReadResult,
  type VersionRow,
  type writeDocument,
} from '../../core/carry';
import { scriptUrl } from '../../device/script-url';
import type { CarryAnswer, CarryAsk } from '../../worker/carry-messages';

/** One question to a worker of its own, which ends with the answer: nothing of a large file stays in memory. */
const ask = <T>(
  question: CarryAsk,
  take: (answer: CarryAnswer, done: (value: T) => void) => void,
): Promise<T> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(scriptUrl(address), { type: 'module' });
    const end = (): void => worker.terminate();
    worker.addEventListener('error', () => {
      end();
      reject(new Error('no worker'));
    });
    worker.addEventListener('message', ({ data }: MessageEvent<CarryAnswer>) =>
      take(data, (value) => {
        end();
        resolve(value);
      }),
    );
    worker.postMessage(question);
  });

/** The text of a file off the main thread, and how many rows have no place in it. @throws Error where no worker can be had */
export const writeFile = (content: Content): Promise<ReturnType<typeof writeDocument>> =>
  ask<ReturnType<typeof writeDocument>>({ kind: 'write', content }, (answer, done) => {
    if (answer.kind === 'written') done(answer);
  });

/** Reads a file off the main thread; what can't be read is refused by its code. Never rejects. */
export const readFile = async (file: Blob): Promise<ReadResult> => {
  // Before anything of it is in memory; no sign takes more than four bytes.
  if (file.size > MOST.size * 4) return { ok: false, code: 'large', params: { most: MOST.size } };
  const records: Record<string, CarriedRow[]> = {};
  const earlier: VersionRow[] = [];
  try {
    return await ask<ReadResult>({ kind: 'read', file }, (answer, done) => {
      if (answer.kind === 'rows') {
        if (answer.store === '') earlier.push(...(answer.rows as VersionRow[]));
        else (records[answer.store] ??= []).push(...answer.rows);
      } else if (answer.kind === 'read') {
        const { result } = answer;
        done(result.ok ? { ok: true, document: { ...result.document, records, earlier } } : result);
      }
    });
  } catch {
    return { ok: false, code: 'unread', params: {} };
  }
};
