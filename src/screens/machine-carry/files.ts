import address from '../../worker/carry?worker&url';
import { MOST, type Content, type ReadResult } from '../../core/carry';
import { scriptUrl } from '../../device/script-url';
import { Pieces, piecesOf, type CarryAnswer, type CarryAsk } from '../../worker/carry-messages';

/** A touch meanwhile is answered between two pieces. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/**
 * One question, said in one piece or several, to a worker of its own, which ends with the answer: nothing of a large file
 * stays in memory.
 */
const ask = <T>(
  question: Iterable<CarryAsk>,
  take: (answer: CarryAnswer, done: (value: T) => void) => void,
): Promise<T> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(scriptUrl(address), { type: 'module' });
    let ended = false;
    const end = (): void => {
      ended = true;
      worker.terminate();
    };
    const fail = (): void => {
      end();
      reject(new Error('no worker'));
    };
    worker.addEventListener('error', fail);
    worker.addEventListener('message', ({ data }: MessageEvent<CarryAnswer>) =>
      take(data, (value) => {
        end();
        resolve(value);
      }),
    );
    const say = async (): Promise<void> => {
      for (const piece of question) {
        if (ended) return;
        worker.postMessage(piece);
        await breath();
      }
    };
    say().catch(fail);
  });

function* writing({ records, earlier, ...head }: Content): Generator<CarryAsk> {
  yield* piecesOf({ records, earlier });
  yield { kind: 'write', head };
}

/** A file made off the main thread, and how many rows have no place in it. @throws Error where no worker can be had */
export const writeFile = (content: Content): Promise<{ readonly file: Blob; readonly left: number }> =>
  ask(writing(content), (answer, done) => {
    if (answer.kind === 'written') done(answer);
  });

/** Reads a file off the main thread; what can't be read is refused by its code. Never rejects. */
export const readFile = async (file: Blob): Promise<ReadResult> => {
  // Before anything of it is in memory; no sign takes more than four bytes.
  if (file.size > MOST.size * 4) return { ok: false, code: 'large', params: { most: MOST.size } };
  const pieces = new Pieces();
  try {
    return await ask<ReadResult>([{ kind: 'read', file }], (answer, done) => {
      if (answer.kind === 'rows') pieces.add(answer);
      else if (answer.kind === 'read') {
        const { result } = answer;
        const { records, earlier } = pieces;
        done(result.ok ? { ok: true, document: { ...result.document, records, earlier } } : result);
      }
    });
  } catch {
    return { ok: false, code: 'unread', params: {} };
  }
};
