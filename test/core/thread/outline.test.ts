import { describe, expect, it } from 'vitest';
import { limits, threadById } from '../../../src/core/thread';
import { drawnBand } from '../../../src/core/thread/outline';
import { outlinePoints, wireCentre, type LimitsShape } from '../../../src/elements/limits-drawing';
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
