import { searchTrains, type Found, type Gearing, type SearchOptions } from '../core/drive/trains';
import type { Lead } from '../core/quantity';

export interface TrainQuestion {
  readonly id: number;
  readonly gearing: Gearing;
  readonly lead: Lead;
  readonly options: SearchOptions;
}
export interface TrainAnswer {
  readonly id: number;
  readonly found: Found;
}

/** Looks for trains off the main thread: one question, one answer with its number. */
const port = self as unknown as {
  onmessage: ((e: MessageEvent<TrainQuestion>) => void) | null;
  postMessage(answer: TrainAnswer): void;
};
port.onmessage = ({ data: { id, gearing, lead, options } }) => {
  port.postMessage({ id, found: searchTrains(gearing, lead, options) });
};
