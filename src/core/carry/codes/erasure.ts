/**
 * A systematic Cauchy Reed–Solomon code over the field of 256 elements. Block `row` of `k` data blocks is the data block
 * itself for row < k, and for row ≥ k the sum of every data block j divided by (row + j), where + is exclusive or. Rows
 * and columns have different numbers, so no divisor is 0, and every square part of such a matrix has an inverse
 * (Cauchy's determinant): **any** k blocks of different rows, data or not, restore all data blocks, as long as
 * rows lie below 256. Fewer never do.
 */
import { addMultiple, inverse, times } from './field';

/** Rows there are: numbers in one byte. */
export const ROWS = 256;

const factor = (row: number, column: number): number => inverse(row ^ column);

/** Block `row` of the code, 0 to 255. Data blocks are of one length, 1 to 255 of them. */
export const blockOf = (data: readonly Uint8Array[], row: number): Uint8Array => {
  const own = data[row];
  if (own) return own.slice();
  const block = new Uint8Array(data[0]?.length ?? 0);
  data.forEach((one, column) => addMultiple(block, one, factor(row, column)));
  return block;
};

/**
 * The data blocks from blocks by their rows; null with fewer than `count` of them. More than that are left aside.
 * @param blocks all of one length
 */
export const restore = (blocks: ReadonlyMap<number, Uint8Array>, count: number): Uint8Array[] | null => {
  if (blocks.size < count) return null;
  const missing = Array.from({ length: count }, (_, i) => i).filter((i) => !blocks.has(i));
  // One sum for each block that is missing; what is known of it is taken away.
  const sums = [...blocks].filter(([row]) => row >= count).slice(0, missing.length);
  const lines = sums.map(([row, block]) => {
    const rest = block.slice();
    for (const [column, known] of blocks) if (column < count) addMultiple(rest, known, factor(row, column));
    return { factors: Uint8Array.from(missing, (column) => factor(row, column)), rest };
  });
  // Gauss–Jordan. No line has to be changed for another: every leading part has an inverse, so no pivot is 0.
  lines.forEach((line, at) => {
    const by = inverse(line.factors[at] ?? 0);
    for (const row of [line.factors, line.rest]) row.forEach((v, i) => (row[i] = times(v, by)));
    for (const other of lines) {
      if (other === line) continue;
      const f = other.factors[at] ?? 0;
      addMultiple(other.rest, line.rest, f);
      addMultiple(other.factors, line.factors, f);
    }
  });
  const data: Uint8Array[] = [];
  for (let i = 0; i < count; i += 1) {
    const block = blocks.get(i) ?? lines[missing.indexOf(i)]?.rest;
    if (!block) return null;
    data.push(block);
  }
  return data;
};
