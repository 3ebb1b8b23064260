import { scriptUrl } from '../../device/script-url';
import type { CodeDrawing } from '../../core/carry/codes';
import type { CodesAnswer } from '../../worker/codes';
import address from '../../worker/codes?worker&url';

/** The worker that draws and reads codes, for as long as a page is open. */
export interface CodeWorker {
  draw(texts: readonly string[]): Promise<readonly CodeDrawing[]>;
  read(image: ImageData): Promise<readonly string[]>;
  end(): void;
}

/** Starts it. A worker that can't be started, or breaks, answers with nothing and says so once. */
export const startCodes = (onFailed: () => void): CodeWorker => {
  const waiting = new Map<number, (answer: Omit<CodesAnswer, 'id'>) => void>();
  let last = 0;
  let worker: Worker | null = null;
  const end = (): void => {
    worker?.terminate();
    worker = null;
    for (const answer of waiting.values()) answer({ drawings: [], read: [] });
    waiting.clear();
  };
  const fail = (): void => {
    end();
    onFailed();
  };
  try {
    worker = new Worker(scriptUrl(address), { type: 'module' });
    worker.addEventListener('error', fail);
    worker.addEventListener('message', ({ data }: MessageEvent<CodesAnswer>) => {
      waiting.get(data.id)?.(data);
      waiting.delete(data.id);
    });
  } catch {
    fail();
  }
  const ask = (what: object, transfer: Transferable[]): Promise<Omit<CodesAnswer, 'id'>> =>
    new Promise((resolve) => {
      if (!worker) return resolve({ drawings: [], read: [] });
      waiting.set((last += 1), resolve);
      worker.postMessage({ id: last, ...what }, transfer);
    });
  return {
    draw: async (texts) => (await ask({ texts }, [])).drawings,
    read: async (image) => (await ask({ image }, [image.data.buffer])).read,
    end,
  };
};
