import { scriptUrl } from '../../device/script-url';
import { searchTrains, type Found, type Gearing, type SearchOptions } from '../../core/drive/trains';
import type { Lead } from '../../core/quantity';
import type { TrainAnswer, TrainQuestion } from '../../worker/trains';
import address from '../../worker/trains?worker&url';

let worker: Worker | null | undefined;
let last = 0;
const waiting = new Map<number, (found: Found) => void>();

const start = (): Worker | null => {
  try {
    const made = new Worker(scriptUrl(address), { type: 'module' });
    made.onmessage = ({ data }: MessageEvent<TrainAnswer>) => {
      waiting.get(data.id)?.(data.found);
      waiting.delete(data.id);
    };
    // A worker that can't be started answers nothing: whoever waits is answered here.
    made.onerror = () => {
      worker = null;
      for (const [, answer] of waiting) answer({ trains: [], dontFit: -1 });
      waiting.clear();
    };
    return made;
  } catch {
    return null;
  }
};

/** Trains for a lead, looked for in a worker; on this thread only where no worker can be had. */
export const findTrains = async (gearing: Gearing, lead: Lead, options: SearchOptions): Promise<Found> => {
  if (worker === undefined) worker = start();
  if (worker) {
    const id = (last += 1);
    const question: TrainQuestion = { id, gearing, lead, options };
    const found = await new Promise<Found>((answer) => {
      waiting.set(id, answer);
      worker?.postMessage(question);
    });
    if (found.dontFit >= 0) return found;
  }
  return searchTrains(gearing, lead, options);
};
