import { crcOfBytes } from '../crc';
import { blockOf } from './erasure';
import { BLOCK, MOST_BLOCKS, writeFrame } from './frame';

/** Bytes that go by codes at most. */
export const MOST = BLOCK * MOST_BLOCKS;

/**
 * Codes shown for so many data blocks: half as many again, so that a third of one round may be missed. One block is
 * shown in two different codes: a scanner that stumbles over one may read the other.
 */
export const shownFor = (count: number): number => count + Math.ceil(count / 2);

export type Split =
  | { readonly ok: true; readonly count: number; readonly texts: readonly string[] }
  | { readonly ok: false; readonly code: 'nothing' | 'too-large' };

/**
 * The digits of every code to show for some bytes, those of the data first. Any `count` different ones of them, in any
 * order, restore the bytes.
 * @returns `too-large` for more than `MOST` bytes: they go as a file
 */
export const split = (bytes: Uint8Array): Split => {
  if (bytes.length === 0) return { ok: false, code: 'nothing' };
  if (bytes.length > MOST) return { ok: false, code: 'too-large' };
  const count = Math.ceil(bytes.length / BLOCK);
  const size = Math.ceil(bytes.length / count);
  // The last block is filled up with zeros.
  const data = Array.from({ length: count }, (_, i) => {
    const block = new Uint8Array(size);
    block.set(bytes.subarray(i * size, (i + 1) * size));
    return block;
  });
  const transfer = crcOfBytes(bytes);
  const texts = Array.from({ length: shownFor(count) }, (_, row) =>
    writeFrame({ transfer, length: bytes.length, count, row, block: blockOf(data, row) }),
  );
  return { ok: true, count, texts };
};
