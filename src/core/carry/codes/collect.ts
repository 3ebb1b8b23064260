import { crcOfBytes } from '../crc';
import { restore } from './erasure';
import { readFrame, type Frame, type FrameRefusal } from './frame';

/** Transfers followed at once: codes of another phone nearby don't throw away what was read. */
const MOST_TRANSFERS = 4;

/** Blocks read so far, by transfer and row; the transfer read last stands last. */
export type Collected = ReadonlyMap<string, ReadonlyMap<number, Uint8Array>>;

export const NOTHING_COLLECTED: Collected = new Map();

/** What one code that was read brought. */
export type Taken =
  | { readonly kind: 'refused'; readonly code: FrameRefusal }
  /** `have` different codes of `need`; `fresh` where this one wasn't among them before. */
  | { readonly kind: 'more'; readonly have: number; readonly need: number; readonly fresh: boolean }
  | { readonly kind: 'whole'; readonly need: number; readonly bytes: Uint8Array }
  /** Enough were read, and together they are not what was sent: all of this transfer is forgotten. */
  | { readonly kind: 'refused'; readonly code: 'contradiction' };

/** Length and number stand in the name: what doesn't agree in them is never put together. */
const nameOf = ({ transfer, length, count }: Frame): string => `${transfer} ${length} ${count}`;

const joined = (data: readonly Uint8Array[], length: number): Uint8Array => {
  const size = data[0]?.length ?? 0;
  const bytes = new Uint8Array(size * data.length);
  data.forEach((block, i) => bytes.set(block, i * size));
  return bytes.slice(0, length);
};

/** Takes one code as a scanner read it, in any order and as often as it comes. Never throws. */
export const take = (collected: Collected, text: string): { collected: Collected; taken: Taken } => {
  const frame = readFrame(text);
  if (typeof frame === 'string') return { collected, taken: { kind: 'refused', code: frame } };
  const name = nameOf(frame);
  const before = collected.get(name) ?? new Map<number, Uint8Array>();
  const blocks = new Map(before).set(frame.row, frame.block);
  const others = [...collected].filter(([other]) => other !== name);
  const next: Collected = new Map([...others.slice(1 - MOST_TRANSFERS), [name, blocks]]);
  const { count: need, length } = frame;
  const data = restore(blocks, need);
  if (!data)
    return {
      collected: next,
      taken: { kind: 'more', have: blocks.size, need, fresh: blocks.size > before.size },
    };
  const bytes = joined(data, length);
  return crcOfBytes(bytes) === frame.transfer
    ? { collected: next, taken: { kind: 'whole', need, bytes } }
    : { collected: new Map(others), taken: { kind: 'refused', code: 'contradiction' } };
};
