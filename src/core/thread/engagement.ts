import { toNumber } from '../quantity';
import { majorLength, pitchLength } from './forms';
import { diameterRange, pitchKey } from './limits/iso965-tables';
import { figure } from './number';
import type { Thread } from './thread';

/**
 * Lengths of engagement, mm, by diameter range and pitch: short up to the first figure, long above the second.
 * ISO 965-1 Table 2 (from memory of that table). One row a range, by its lower end.
 */
const TABLE = `0.99 0.2:0.5,1.4 0.25:0.6,1.7 0.3:0.7,2; 1.4 0.2:0.5,1.5 0.25:0.6,1.9 0.35:0.8,2.6 0.4:1,3 0.45:1.3,3.8
2.8 0.35:1,3 0.5:1.5,4.5 0.6:1.7,5 0.7:2,6 0.75:2.2,6.7 0.8:2.5,7.5; 5.6 0.75:2.4,7.1 1:3,9 1.25:4,12 1.5:5,15
11.2 1:3.8,11 1.25:4.5,13 1.5:5.6,16 1.75:6,18 2:8,24 2.5:10,30
22.4 1:4,12 1.5:6.3,19 2:8.5,25 3:12,36 3.5:15,45 4:18,53 4.5:21,63
45 1.5:7.5,22 2:9.5,28 3:15,45 4:19,56 5:24,71 5.5:28,85 6:32,95; 90 2:12,36 3:18,53 4:24,71 6:36,106 8:45,132
180 3:20,60 4:26,80 6:40,118 8:50,150`;

export type EngagementGroup = 'S' | 'N' | 'L';

export interface Engagement {
  /** Longest engagement that counts as short, mm. */
  readonly shortTo: number;
  /** Longest that counts as normal, mm. */
  readonly normalTo: number;
}

let table: Map<string, Engagement> | null = null;
const readTable = (): Map<string, Engagement> =>
  new Map(
    TABLE.split(/;|\n/).flatMap((line) => {
      const [over = '', ...cells] = line.trim().split(' ');
      return cells.map((cell): [string, Engagement] => {
        const [p = '', lengths = ''] = cell.split(':');
        const [shortTo = 0, normalTo = 0] = lengths.split(',').map(Number);
        return [`${Number(over)} ${pitchKey(figure(p))}`, { shortTo, normalTo }];
      });
    }),
  );

/** Bounds of the groups of engagement of a metric thread (ISO 965-1); null where its table has no such pair. */
export const engagement = (thread: Thread): Engagement | null => {
  const P = pitchLength(thread);
  const d = majorLength(thread);
  if (!P || !d || thread.pitch.unit !== 'mm' || (thread.form !== 'iso60' && thread.form !== 'mj60'))
    return null;
  const range = diameterRange(toNumber(d));
  return range ? ((table ??= readTable()).get(`${range.over} ${pitchKey(P)}`) ?? null) : null;
};

/** Group of a length of engagement, mm; null for a length that isn't positive. */
export const groupOf = (e: Engagement, length: number): EngagementGroup | null => {
  if (!(length > 0)) return null;
  return length <= e.shortTo ? 'S' : length <= e.normalTo ? 'N' : 'L';
};

export type Quality = 'fine' | 'medium' | 'coarse';

/** Recommended classes, external and internal, by quality and group: ISO 965-1 Tables 8 and 9, first choices. */
const RECOMMENDED: Readonly<
  Record<Quality, Readonly<Record<EngagementGroup, readonly [string | null, string | null]>>>
> = {
  fine: { S: ['3h4h', '4H'], N: ['4h', '5H'], L: ['5h4h', '6H'] },
  medium: { S: ['5g6g', '5H'], N: ['6g', '6H'], L: ['7g6g', '7H'] },
  coarse: { S: [null, null], N: ['8g', '7H'], L: ['9g8g', '8H'] },
};

/** Recommended classes for a quality of thread and its group of engagement; null where the standard has none. */
export const recommended = (
  quality: Quality,
  group: EngagementGroup,
): { readonly external: string | null; readonly internal: string | null } => {
  const [external, internal] = RECOMMENDED[quality][group];
  return { external, internal };
};
