import { setMark } from '../text/numbers';
import { setWords } from '../text/words';

/** Chooses the decimal mark of all elements drawn from now on. */
export const useMark = (mark: '.' | ','): void => setMark(mark);

/** Chooses between UK and US trade words (effective or pitch diameter) for all elements drawn from now on. */
export const useTrade = (trade: 'uk' | 'us'): void => setWords(trade);
