import { add, mul, ratio, sub, type Ratio } from '../../quantity';
import { basicSizes } from '../forms';
import type { Thread } from '../thread';
import { mm3 } from './rounded';
import { band, refused, type LimitsResult } from './types';

/**
 * Tolerances in µm by threads per inch: pitch diameter, minor diameter of the internal thread, major diameter of the
 * external. ISO 228-1 Table 1 (from memory). At 11 tpi sizes over G 2 have a second row.
 */
const ROWS: Readonly<Record<string, readonly [pitch: number, minor: number, major: number]>> = {
  28: [107, 282, 214],
  19: [125, 445, 250],
  14: [142, 541, 284],
  11: [180, 640, 360],
  'over 2': [217, 640, 434],
};

/**
 * Limits of parallel pipe threads by ISO 228-1, mm to 0.001. External class A has the internal thread's tolerance on
 * pitch diameter, B twice it. Internal threads have one class. The standard gives no limits for the roots.
 */
export const iso228 = (thread: Thread, classId: string): LimitsResult => {
  if (thread.starts > 1) return refused('multi-start-not-covered');
  const basic = basicSizes(thread);
  if (!basic) return refused('no-major-diameter');
  const tpi = thread.pitch.value.n.toString();
  // G 2 is 59.614 mm, the next size 65.710 mm.
  const row = ROWS[basic.major.n > 60n * basic.major.d ? 'over 2' : tpi];
  if (!row) return refused('pitch-not-in-standard');
  const [pitchTol, minorTol, majorTol] = row.map((x) => ratio(x, 1000)) as [Ratio, Ratio, Ratio];
  const [major, pitch, minor] = [mm3(basic.major), mm3(basic.pitch), mm3(basic.minor)];
  const common = { ok: true, unit: 'mm', minorFlat: null, source: 'iso228-table' } as const;
  if (classId === 'internal') {
    return {
      ...common,
      kind: 'internal',
      major: band(major, null),
      pitch: band(pitch, add(pitch, pitchTol)),
      minor: band(minor, add(minor, minorTol)),
    };
  }
  if (classId !== 'A' && classId !== 'B') return refused('class-not-in-standard');
  return {
    ...common,
    kind: 'external',
    major: band(sub(major, majorTol), major),
    pitch: band(sub(pitch, mul(classId === 'A' ? 1 : 2, pitchTol)), pitch),
    minor: band(null, minor),
  };
};
