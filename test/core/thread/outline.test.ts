import { describe, expect, it } from 'vitest';
import { limits, threadById } from '../../../src/core/thread';
import { drawnBand } from '../../../src/core/thread/outline';
import { outlinePoints, wireCentre, type LimitsShape } from '../../../src/elements/limits-drawing';
import { toolOutline } from '../../../src/elements/tool-outline';
import { ratio, toNumber } from '../../../src/core/quantity';

const M10: LimitsShape = {
  kind: 'external',
  pitch: 1.5,
  flanks: [30, 30],
  most: { major: 10, pitch: 9.0257, minor: 8.3762 },
  least: { major: 9.732, pitch: 8.862, minor: 7.938 },
  wire: null,
};

describe('the drawing of a thread between its limits', () => {
  it('takes M10 6g’s own limits (ISO 965-2)', () => {
    const thread = threadById('iso-coarse:M10');
    const l = thread && limits(thread, '6g');
    if (!thread || !l?.ok) throw new Error('no limits');
    const band = drawnBand(thread, l);
    expect(band?.most.major).toEqual(ratio(9968, 1000));
    expect(band?.least.pitch).toEqual(ratio(8862, 1000));
    expect(toNumber(band?.most.pitch ?? ratio(0))).toBe(8.994);
  });
  it('has ridge and groove equally wide at the pitch line, and crests of P/8 (ISO 68-1)', () => {
    const [a, , , d] = outlinePoints(M10, M10.most, 0, 0);
    const [next] = outlinePoints(M10, M10.most, 1, 1);
    const crest = (next?.[0] ?? 0) - (d?.[0] ?? 0);
    expect(crest).toBeCloseTo(1.5 / 8, 4);
    expect((a?.[0] ?? 0) + (d?.[0] ?? 0)).toBeCloseTo(0, 9);
  });
  it('seats the best wire with its centre on the pitch line’s cylinder: it touches at the pitch line', () => {
    const best = 1.5 / (2 * Math.cos(Math.PI / 6));
    const centre = wireCentre(M10, M10.most, best);
    // Contact lies (w/2)·sin A below the centre.
    expect(centre - (best / 2) * Math.sin(Math.PI / 6)).toBeCloseTo(9.0257 / 2, 6);
  });
});

describe('the tool’s point in the groove', () => {
  const point = { left: 30, right: 30, radius: 0, flat: 0, height: 1.5 };
  it('has its flanks on the groove’s: P/4 either side of the middle at the pitch line', () => {
    // A sharp 60° point reaches H/2 = 0.433013 P below the pitch line (ISO 68-1).
    const sharp = toolOutline({ ...point, below: 0.433013 * 1.5 }, 1.5);
    expect(sharp).toHaveLength(4);
    expect(sharp[1]?.[0]).toBeCloseTo(0, 4);
    const at = (h: number): number => (h - 0) * Math.tan(Math.PI / 6);
    expect(at(0.433013 * 1.5)).toBeCloseTo(1.5 / 4, 5);
    expect(sharp[0]?.[0]).toBeCloseTo(-at(1.5), 4);
  });
  it('is as wide at the pitch line with a round nose of H/6, whose tip stands H/3 below it', () => {
    const H = (Math.sqrt(3) / 2) * 1.5;
    const round = toolOutline({ ...point, radius: H / 6, below: H / 3 }, 1.5);
    const lowest = Math.min(...round.map(([, h]) => h));
    expect(lowest).toBeCloseTo(0, 3);
    const [top] = round;
    expect(top?.[0]).toBeCloseTo(-1.5 / 4 - (1.5 - H / 3) * Math.tan(Math.PI / 6), 9);
  });
  it('leans with a buttress groove: 7° one side, 45° the other, P/2 between them at the pitch line', () => {
    const lean = toolOutline({ left: 7, right: 45, radius: 0, flat: 0.2, height: 1, below: 0.267186 }, 1);
    const last = lean[lean.length - 1];
    // 0.2 + b (tan 7° + tan 45°) = 0.5 at b = 0.267186.
    expect(last?.[0]).toBeCloseTo(0.25 + (1 - 0.267186), 4);
    expect(lean[0]?.[0]).toBeCloseTo(-0.25 - (1 - 0.267186) * Math.tan((7 * Math.PI) / 180), 4);
  });
});
