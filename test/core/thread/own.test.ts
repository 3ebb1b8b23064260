import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { readOwn, storeOwn } from '../../../src/core/job';
import { stated, ratio, read, toNumber, type Stated, type Unit } from '../../../src/core/quantity';
import {
  basicSizes,
  blankOwn,
  limits,
  ownTrouble,
  threadOfOwn,
  type OwnThread,
} from '../../../src/core/thread';
import { formOf } from '../../../src/core/thread/forms';
import { threadById } from '../../../src/core/thread';

const s = (text: string, unit: Unit): Stated => {
  const r = read(text);
  if (!r.ok) throw new Error(text);
  return stated(r.value, unit);
};
const own = (part: Partial<OwnThread>): OwnThread => ({ ...blankOwn(), ...part });
const made = (part: Partial<OwnThread>) => {
  const thread = threadOfOwn('a', own(part));
  if (!thread) throw new Error(String(ownTrouble(own(part))));
  return thread;
};

describe('a thread of one’s own', () => {
  it('has a catalogued thread’s sizes and limits where it is one', () => {
    const mine = made({ major: s('10', 'mm'), pitch: s('1.5', 'mm') });
    const m10 = threadById('iso-coarse:M10');
    if (!m10) throw new Error();
    expect(basicSizes(mine)).toEqual(basicSizes(m10));
    // ISO 965-2, M10 6g: pitch diameter 8.862 to 8.994.
    const l = limits(mine, '6g');
    expect(l.ok && [l.pitch.min && toNumber(l.pitch.min), l.pitch.max && toNumber(l.pitch.max)]).toEqual([
      8.862, 8.994,
    ]);
  });

  it('of a profile without limits is refused them, never guessed', () => {
    expect(limits(made({ major: s('20', 'mm'), pitch: s('4', 'mm'), profile: 'square' }), '6g')).toEqual({
      ok: false,
      refusal: 'no-limits-known',
    });
    // ISO 965-1 has no tolerance for a pitch of 1.3 mm.
    expect(limits(made({ major: s('13', 'mm'), pitch: s('1.3', 'mm') }), '6g').ok).toBe(false);
  });

  it('by its own angle, crest and height comes to the basic profile of ISO 68-1 for 60°, P/8 and 5/8 H', () => {
    // M16 × 2: P/8 = 0.25; 5/8 H = 0.541266 × 2 = 1.082532 mm; d2 = 14.701, d1 = 13.835 (ISO 724).
    const mine = made({
      major: s('16', 'mm'),
      pitch: s('2', 'mm'),
      profile: 'other',
      angle: s('60', 'deg'),
      crest: s('0.25', 'mm'),
      depth: s('1.082532', 'mm'),
    });
    const sizes = basicSizes(mine);
    expect(sizes && toNumber(sizes.pitch)).toBeCloseTo(14.701, 3);
    expect(sizes && toNumber(sizes.minor)).toBeCloseTo(13.835, 3);
    expect(toNumber(formOf(mine).sharpHeight ?? ratio(0))).toBeCloseTo(Math.sqrt(3) / 2, 12);
  });

  it('comes to the Whitworth pitch diameter by 55° and a sharp crest H/6 higher', () => {
    // The sharp 55° thread of pitch 1 stands 0.160082 above the Whitworth crest on each side (BS 84: H/6).
    const mine = made({
      major: s('10.320164', 'mm'),
      pitch: s('1', 'mm'),
      profile: 'other',
      angle: s('55', 'deg'),
      crest: s('0', 'mm'),
      depth: s('0.9', 'mm'),
    });
    // 10 − 0.640327 (BS 84 depth of thread).
    expect(toNumber(basicSizes(mine)?.pitch ?? ratio(0))).toBeCloseTo(10 - 0.640327, 5);
  });

  it('says what is missing or can’t be, one at a time', () => {
    const other = own({ pitch: s('2', 'mm'), major: s('16', 'mm'), profile: 'other' });
    expect(ownTrouble(own({}))).toBe('no-pitch');
    expect(ownTrouble(other)).toBe('no-angle');
    expect(ownTrouble({ ...other, angle: s('60', 'deg') })).toBe('no-crest');
    const two = { ...other, angle: s('60', 'deg'), crest: s('0', 'mm') };
    expect(ownTrouble(two)).toBe('no-depth');
    // Two flanks of 30° that stand 2 mm apart meet 1.732 mm down (H = 0.866 P).
    expect(ownTrouble({ ...two, depth: s('1.73', 'mm') })).toBeNull();
    expect(ownTrouble({ ...two, depth: s('1.74', 'mm') })).toBe('too-deep');
    // The pitch line of a sharp thread lies H/2 = 0.866 mm down: less height has no groove there.
    expect(ownTrouble({ ...two, depth: s('0.8', 'mm') })).toBe('no-depth');
    expect(ownTrouble({ ...two, depth: s('1.7', 'mm'), crest: s('1', 'mm') })).toBe('crest-too-wide');
    expect(ownTrouble({ ...two, depth: s('1.7', 'mm'), pitch: s('2', 'module') })).toBe('pitch-by-module');
    expect(ownTrouble({ ...two, depth: s('1.7', 'mm'), major: s('3', 'mm') })).toBe('no-core');
    expect(threadOfOwn('a', other)).toBeNull();
  });

  it('is called as the standards write it', () => {
    const name = (part: Partial<OwnThread>): string => made(part).designation;
    expect(name({ major: s('14', 'mm'), pitch: s('1.25', 'mm') })).toBe('14×1.25');
    expect(name({ major: s('9/16', 'in'), pitch: s('20', 'tpi') })).toBe('9/16-20');
    expect(name({ major: s('14', 'mm'), pitch: s('1.5', 'mm'), starts: 2, hand: 'left' })).toBe(
      '14×Ph3P1.5-LH',
    );
    expect(name({ pitch: s('11 1/2', 'tpi') })).toBe('11 1/2');
    expect(name({ pitch: s('2', 'module'), profile: 'worm40' })).toBe('2 module');
    expect(name({ major: s('14', 'mm'), pitch: s('1.25', 'mm'), name: 'Tailstock ram' })).toBe(
      'Tailstock ram',
    );
  });

  it('comes back from the disk as it went, and an unknown profile is no thread', () => {
    const length = fc.integer({ min: 400, max: 90_000 }).map((n) => stated(ratio(n, 1000), 'mm'));
    fc.assert(
      fc.property(
        length,
        length,
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom('right' as const, 'left' as const),
        (major, pitch, starts, hand) => {
          const before = own({ major, pitch, starts, hand, name: 'x' });
          expect(readOwn(JSON.parse(JSON.stringify(storeOwn(before))))).toEqual(before);
        },
      ),
    );
    expect(readOwn({ ...storeOwn(own({})), profile: 'of the future' })).toBeNull();
    expect(
      readOwn({ ...storeOwn(own({ pitch: s('1', 'mm') })), pitch: { n: '1', d: '0', unit: 'mm' } })?.pitch,
    ).toBeNull();
  });
});
