import { crcOfBytes } from '../crc';
import { fromDigits, MOST_BYTES, toDigits } from './digits';
import { ROWS } from './erasure';

/**
 * What one code holds, of our own making; whole numbers have their highest byte first:
 *
 * | bytes | what                                                        |
 * |-------|-------------------------------------------------------------|
 * | 0–1   | 4C 43 hexadecimal: what kind of code this is                |
 * | 2     | version of this form, 1                                     |
 * | 3–6   | the transfer: CRC-32 over all its bytes                     |
 * | 7–8   | length of all its bytes, 1 to 65535                         |
 * | 9     | k, its number of data blocks, 1 to 32                       |
 * | 10    | row of this block, 0 to 255 (see `erasure`)                 |
 * | 11–   | the block                                                   |
 * | last 4| CRC-32 over everything before                               |
 */
export interface Frame {
  readonly transfer: number;
  readonly length: number;
  readonly count: number;
  readonly row: number;
  readonly block: Uint8Array;
}

/** Data blocks at most; what needs more goes as a file. */
export const MOST_BLOCKS = 32;
const KIND = [0x4c, 0x43];
const VERSION = 1;
const HEAD = 11;
const SUM = 4;
/** Bytes of data in one code at most. */
export const BLOCK = MOST_BYTES - HEAD - SUM;

/**
 * Why a code is not taken: `foreign`, not one of ours; `newer`, of a form that came later; `damaged`, its checksum
 * doesn't hold or its figures contradict each other.
 */
export type FrameRefusal = 'foreign' | 'newer' | 'damaged';

/** The digits of a code. */
export const writeFrame = ({ transfer, length, count, row, block }: Frame): string => {
  const bytes = new Uint8Array(HEAD + block.length + SUM);
  const view = new DataView(bytes.buffer);
  bytes.set([...KIND, VERSION]);
  view.setUint32(3, transfer);
  view.setUint16(7, length);
  bytes.set([count, row], 9);
  bytes.set(block, HEAD);
  view.setUint32(HEAD + block.length, crcOfBytes(bytes.subarray(0, -SUM)));
  return toDigits(bytes);
};

/** What a scanner read, or why it is none of our codes. Never throws. */
export const readFrame = (text: string): Frame | FrameRefusal => {
  const bytes = fromDigits(text);
  if (!bytes || bytes.length <= HEAD + SUM || KIND.some((byte, i) => bytes[i] !== byte)) return 'foreign';
  const view = new DataView(bytes.buffer);
  const end = bytes.length - SUM;
  if (view.getUint32(end) !== crcOfBytes(bytes.subarray(0, end))) return 'damaged';
  if (bytes[2] !== VERSION) return 'newer';
  const block = bytes.slice(HEAD, end);
  const length = view.getUint16(7);
  const [count = 0, row = 0] = bytes.subarray(9);
  const fits = count >= 1 && count <= MOST_BLOCKS && row < ROWS && block.length === Math.ceil(length / count);
  return fits ? { transfer: view.getUint32(3), length, count, row, block } : 'damaged';
};
