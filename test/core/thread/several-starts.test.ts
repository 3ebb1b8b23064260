import { describe, expect, it } from 'vitest';
import { limits, threadById, type Thread } from '../../../src/core/thread';
import { sub, toNumber } from '../../../src/core/quantity';
import { taperFigures } from '../../../src/core/thread/taper';

const get = (id: string, starts = 1): Thread => {
  const t = threadById(id);
  if (!t) throw new Error(id);
  return { ...t, starts };
};

/** Tolerance of the pitch diameter, µm. */
const tolerance = (id: string, cls: string, starts: number): number | string => {
  const l = limits(get(id, starts), cls);
  if (!l.ok) return l.refusal;
  const { min, max } = l.pitch;
  return min && max ? Math.round(1000 * toNumber(sub(max, min))) : 'open';
};

describe('limits of several starts', () => {
  // ISO 2903: factors 1.12, 1.25, 1.4 and 1.6 for 2, 3, 4 and more starts, in the steps of R40.
  it.each([
    [2, 1.12],
    [3, 1.25],
    [4, 1.4],
    [5, 1.6],
    [8, 1.6],
  ])('Tr40×7, %i starts: the tolerance times %f, within a step of rounding', (starts, factor) => {
    for (const cls of ['7e', '8e', '7H']) {
      const one = tolerance('tr:Tr40x7', cls, 1) as number;
      expect(Math.abs((tolerance('tr:Tr40x7', cls, starts) as number) / one / factor - 1)).toBeLessThan(0.03);
    }
  });
  it('are refused where no standard known here gives them', () => {
    for (const [id, cls] of [
      ['acme:1/2-10', 'screw-2G'],
      ['stub-acme:1/2-10', 'screw-2G'],
      ['buttress:2-8', 'screw-2'],
      ['bsw:1/2-12', 'bolt-medium'],
      ['ba:0', 'nut'],
      ['g:1/2', 'A'],
    ] as const)
      expect(tolerance(id, cls, 2), id).toBe('multi-start-not-covered');
  });
});

describe('families without limits refuse them', () => {
  it.each([
    'square:1-4',
    'round:Rd20x1/8',
    'cycle:5/16-26',
    'model-engineer:1/4-40',
    'brass:1/4-26',
    'microscope:rms',
    'worm-module:2',
  ])('%s', (id) => expect(limits(get(id), '')).toEqual({ ok: false, refusal: 'no-limits-known' }));
});

describe('the gauge plane of taper threads', () => {
  // ISO 7-1 Table 1: ½ has ±1.8 mm outside, ±2.3 inside, 1 and 1¼ turns; 2½ has ±3.5 both, 1½ turns.
  it.each([
    ['r:1/8', 0.9, 1, 1.1, 1.25],
    ['r:1/2', 1.8, 1, 2.3, 1.25],
    ['r:1', 2.3, 1, 2.9, 1.25],
    ['r:2-1/2', 3.5, 1.5, 3.5, 1.5],
  ])('%s', (id, outside, turns, inside, insideTurns) => {
    const f = taperFigures(get(id));
    expect(f && [f.gaugeTolerance, f.gaugeTurns, f.internalTolerance, f.internalTurns].map(toNumber)).toEqual(
      [outside, turns, inside, insideTurns],
    );
  });
  // ASME B1.20.1: one turn either way from the gauge's face; 14 tpi.
  it('½ NPT', () => {
    const f = taperFigures(get('npt:1/2-14'));
    expect(f && toNumber(f.gaugeTurns)).toBe(1);
    expect(f && toNumber(f.internalTolerance)).toBeCloseTo(1 / 14, 12);
  });
  it('turns times pitch are the table’s millimetres, to its tenth, for every size', () => {
    for (const size of [
      '1/16',
      '1/8',
      '1/4',
      '3/8',
      '1/2',
      '3/4',
      '1',
      '1-1/4',
      '1-1/2',
      '2',
      '2-1/2',
      '3',
      '4',
      '5',
      '6',
    ]) {
      const t = get(`r:${size}`);
      const f = taperFigures(t);
      if (!f) throw new Error(size);
      const pitch = 25.4 / toNumber(t.pitch.value);
      expect(Math.abs(toNumber(f.gaugeTurns) * pitch - toNumber(f.gaugeTolerance)), size).toBeLessThan(0.051);
    }
  });
});
