import { describe, expect, it } from 'vitest';
import { figuresFor, type Sheet } from '../../../src/core/figures';
import { blankJob, type Job } from '../../../src/core/job';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { ratio, stated, toNumber } from '../../../src/core/quantity';
import { QUIET } from './support';

const sheet = (id: string, part: Partial<Job> = {}): Sheet =>
  figuresFor({
    machine: EXAMPLES.heron(),
    job: { ...blankJob(), thread: { kind: 'catalogue', id }, ...part },
    context: QUIET,
  });
const mm = (n: number, d = 1) => stated(ratio(n, d), 'mm');
const blank = (s: Sheet) => {
  const b = s.get('blank').value;
  return b && [b.min && toNumber(b.min), toNumber(b.max), b.unit];
};

describe('a full-form insert', () => {
  const full = { noseKind: 'full-form' } as const;
  it('M10: 17/24 H and half of what was left over; the blank 0.03 to 0.07 above 9.968 (ISO 965-2, 6g)', () => {
    const s = sheet('iso-coarse:M10', full);
    // (10.05 − 9.025721) / 2 + 0.433013 = 0.945152.
    expect(s.get('depth').value).toBeCloseTo(0.945152, 5);
    expect([s.get('depth').standing, s.get('depth').missing]).toEqual([null, []]);
    expect(blank(s)).toEqual([9.998, 10.038, 'mm']);
  });
  it('inside the bore is left as much smaller than 8.376 (ISO 965-2, 6H)', () => {
    expect(blank(sheet('iso-coarse:M10', { ...full, side: 'internal' }))).toEqual([8.306, 8.346, 'mm']);
  });
  it('inch threads have it in thousandths: ½-13 UNC 2A 0.4985 (ASME B1.1)', () => {
    expect(blank(sheet('unc:1/2-13', full))).toEqual([0.4995, 0.5015, 'in']);
  });
});

describe('a nose too large for the root', () => {
  it('is over, with how much is missing and what would do, though the depth is still given', () => {
    // R 0.4 at P 1.5: tip 0.649519 − 0.4 = 0.249519 below the pitch line; H/4 = 0.324760 asked for.
    const f = sheet('iso-coarse:M10', { noseKind: 'radius', noseSize: mm(4, 10) }).get('depth');
    expect(f.standing).toBe('over');
    expect(f.value).toBeCloseTo(0.487139 + 0.249519, 5);
    expect(f.why.notes).toContain('depth-root-short');
    const amount = (term: string) => {
      const a = f.why.terms[term]?.amount;
      return a?.kind === 'approx' ? a.value : null;
    };
    expect(amount('short')).toBeCloseTo(0.075241, 5);
    expect(amount('largest')).toBeCloseTo(0.32476, 5);
  });
  it('a flat of P/4 is the basic root and fits; inside P/8 does, P/4 does not (ISO 68-1)', () => {
    const at = (side: 'external' | 'internal', size: number) =>
      sheet('iso-coarse:M10', { side, noseKind: 'flat', noseSize: mm(size, 10_000) }).get('depth').standing;
    expect([at('external', 3750), at('external', 3800)]).toEqual([null, 'over']);
    expect([at('internal', 1875), at('internal', 3750)]).toEqual([null, 'over']);
  });
});

describe('threads without limits, flanks or diameter', () => {
  it('square 1 in, 4 tpi: depth half the pitch, 3.175 mm, with a tool of 3.175 or narrower; no wider', () => {
    const at = (part: Partial<Job>) => sheet('square:1-4', part).get('depth');
    expect(at({ noseKind: 'flat', noseSize: mm(3175, 1000) }).value).toBeCloseTo(3.175, 9);
    expect(at({ noseKind: 'flat', noseSize: mm(3) }).why.notes).toEqual(['depth-square-narrow']);
    expect(at({ noseKind: 'flat', noseSize: mm(4) }).standing).toBe('over');
    const round = at({ noseKind: 'radius', noseSize: mm(1) });
    expect([round.value, round.standing, round.why.notes]).toEqual([null, 'over', ['depth-parallel-flanks']]);
  });
  it('square and Rd: the basic size alone, judged by nothing', () => {
    expect(blank(sheet('square:1-4'))).toEqual([null, 1, 'in']);
    // DIN 405-1: the nut of Rd 20 is bored to d − 0.9 P.
    expect(blank(sheet('round:Rd20x1/8', { side: 'internal' }))?.[1]).toBeCloseTo(20 - 0.9 * 3.175, 9);
    expect(sheet('square:1-4').get('blank').why.notes).toEqual(['no-limits-known', 'blank-basic']);
  });
  it('a taper thread has no one blank', () => {
    expect(sheet('npt:1/2-14').get('blank').why.notes).toEqual(['taper-gauged-by-length']);
  });
  it('worm of module 2: 2.2 modules deep from its crest with an insert, 5.314 mm with a sharp point', () => {
    const at = (kind: 'sharp' | 'full-form') => sheet('worm-module:2', { noseKind: kind }).get('depth').value;
    expect(at('full-form')).toBeCloseTo(4.4, 9);
    // 2 + (π × 2 / 4) × cot 20°.
    expect(at('sharp')).toBeCloseTo(2 + (Math.PI / 2) * 2.7474774, 6);
  });
});

describe('several starts', () => {
  it('Tr40×7 widens its pitch diameter tolerance by 1.12, so its blank stays', () => {
    const one = blank(sheet('tr:Tr40x7'));
    expect(blank(sheet('tr:Tr40x7', { starts: 2 }))).toEqual(one);
  });
  it('Acme has no limits for two: the basic size, and the reason', () => {
    const s = sheet('acme:1/2-10', { starts: 2 });
    expect(blank(s)).toEqual([null, 0.5, 'in']);
    expect(s.get('blank').why.notes[0]).toBe('multi-start-not-covered');
  });
});
