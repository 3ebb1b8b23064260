import { describe, expect, it } from 'vitest';
import { figuresFor, REGISTRY, type FigureId } from '../../../src/core/figures';
import { sheetOf, type Registry } from '../../../src/core/figures/define';
import { blankJob, type ThreadChoice } from '../../../src/core/job';
import { lead, ratio } from '../../../src/core/quantity';
import { is, pitchJob, PROFILE_A, QUIET, sheet } from './support';

const metric = {
  screwPitch: is('3', 'mm'),
  encoderLines: is('1200', 'lines'),
  motorPulley: is('32', 'teeth'),
  screwPulley: is('60', 'teeth'),
} as const;

describe('the exact ratio of the drive', () => {
  it('1.5 mm on 8 tpi: 375/508, held exactly', () => {
    const s = sheet();
    expect(s.get('stepsPerScrewRev').value).toEqual(ratio(6400));
    expect(s.get('countsPerRev').value).toEqual(ratio(4096));
    expect(s.get('stepsPerCount').value).toEqual(lead(ratio(375, 508)));
    expect(s.get('ratioHeld')).toMatchObject({ standing: 'within', value: { exact: true, ppm: 0 } });
  });
  it('20 tpi on a 3 mm screw: 127/240', () => {
    const job = { ...blankJob(), thread: { kind: 'pitch', pitch: is('20', 'tpi') } } as const;
    expect(sheet(metric, job).get('stepsPerCount').value).toEqual(lead(ratio(127, 240)));
  });
  it('takes the lead, not the pitch: 2 mm with 3 starts', () => {
    const s = sheet(metric, pitchJob('2', { starts: 3 }));
    expect(s.get('lead').value).toEqual(lead(ratio(6)));
    expect(s.get('stepsPerCount').value).toEqual(lead(ratio(5, 2)));
  });
  it('a feed per rev', () => {
    const job = { ...blankJob(), thread: { kind: 'feed', perRev: is('0.1', 'mm') } } as const;
    expect(sheet({}, job).get('stepsPerCount').value).toEqual(lead(ratio(25, 508)));
  });
  it('a servo’s pulses, and a two-start leadscrew', () => {
    const servo = { motorKind: 'servo', servoPulses: is('3200', 'steps') } as const;
    expect(sheet({ ...servo, screwStarts: is('2', 'count') }).get('stepsPerCount').value).toEqual(
      lead(ratio(375, 1016)),
    );
  });
  it('the size of a step: 127/40 mm ÷ 6400', () => {
    expect(sheet().get('stepOnCarriage').value).toEqual(ratio(127, 256_000));
  });
});

describe('a controller that can’t hold it', () => {
  it('holds the nearest and says how far off', () => {
    const s = sheet({ ratioTopMax: is('1000', 'count'), ratioBottomMax: is('100', 'count') });
    const held = s.get('ratioHeld');
    // 31/42 ÷ 375/508 − 1 = −127 ppm, by hand.
    expect(held.value?.held).toEqual({ top: 31n, bottom: 42n, exact: false });
    expect(held.value?.ppm).toBeCloseTo(-126.98, 1);
    expect(held.standing).toBe('over');
  });
  it('a worm is never exact, and may be close', () => {
    const worm = { ...blankJob(), thread: { kind: 'pitch', pitch: is('1', 'module') } } as const;
    const held = sheet({}, worm).get('ratioHeld');
    expect(held.value?.exact).toBe(false);
    expect(held.standing).toBe('near');
    expect(Math.abs(held.value?.ppm ?? 99)).toBeLessThan(0.1);
  });
  it('is not known while its largest numbers aren’t', () => {
    const held = sheet({ ratioTopMax: null }).get('ratioHeld');
    expect([held.value, held.standing, held.missing]).toEqual([null, null, ['machine.ratioTopMax']]);
    expect(sheet({ ratioHeld: 'other' }).get('ratioHeld').value).toBeNull();
  });
  it('takes the half-nut rule with it: not exact means keep it closed, not known means not known', () => {
    const inch = { ...blankJob(), thread: { kind: 'pitch', pitch: is('16', 'tpi') } } as const;
    expect(sheet({}, inch).get('nutRule').value?.kind).toBe('anywhere');
    const coarse = { ratioTopMax: is('3', 'count'), ratioBottomMax: is('3', 'count') };
    expect(sheet(coarse, inch).get('nutRule').value).toMatchObject({
      kind: 'keep-closed',
      reason: 'inexact-ratio',
    });
    expect(sheet({ ratioTopMax: null }, inch).get('nutRule').value).toBeNull();
  });
});

describe('figures of a catalogued thread', () => {
  const thread: ThreadChoice = { kind: 'catalogue', id: 'iso-coarse:M10' };
  const job = { ...blankJob(), thread, noseKind: 'radius', noseSize: is('0.1', 'mm') } as const;
  it('depth with a 0.1 mm radius: 1.0367 mm', () => {
    expect(sheet({}, job).get('depth').value).toBeCloseTo(1.036658, 4);
  });
  it('depth with a 0.1 mm flat: 1.0501 mm', () => {
    expect(sheet({}, { ...job, noseKind: 'flat' }).get('depth').value).toBeCloseTo(1.0500555, 4);
  });
  it('no nose, no depth', () => {
    const f = sheet({}, { ...job, noseSize: null }).get('depth');
    expect([f.value, f.missing]).toEqual([null, ['job.noseSize']]);
  });
  it('a bare pitch has neither blank nor drill', () => {
    const s = sheet();
    expect([s.get('blank').value, s.get('drill').value, s.get('depth').value]).toEqual([null, null, null]);
  });
  it('an id nobody knows is no thread', () => {
    const f = sheet({}, { ...job, thread: { kind: 'catalogue', id: 'nonsense:1' } }).get('chosen');
    expect([f.value, f.missing]).toEqual([null, ['job.thread']]);
  });
});

describe('the registry', () => {
  const inputs = { machine: PROFILE_A, job: pitchJob('1.5'), context: QUIET };
  it('reckons a figure once, when first asked, and reads only what it declared', () => {
    let asked = 0;
    const spied: Registry = {
      ...REGISTRY,
      lead: {
        ...REGISTRY.lead,
        compute: (ask) => {
          asked += 1;
          return REGISTRY.lead.compute(ask);
        },
      },
    };
    const s = sheetOf(spied, inputs);
    expect(asked).toBe(0);
    s.get('stepsPerCount');
    s.get('limits');
    expect(asked).toBe(1);
  });
  it('refuses a figure that asks for itself', () => {
    const loop = {
      ...REGISTRY,
      pitch: { ...REGISTRY.pitch, compute: (ask: never) => REGISTRY.lead.compute(ask) },
    };
    expect(() => sheetOf(loop as unknown as Registry, inputs).get('lead')).toThrow(/asks for itself/);
  });
  it('each figure declares what it reads: with its inputs unknown it is unknown', () => {
    const nothing = figuresFor({
      machine: { ...PROFILE_A, screwPitch: null, encoderLines: null },
      job: blankJob(),
      context: QUIET,
    });
    const ids: FigureId[] = [
      'chosen',
      'pitch',
      'lead',
      'screwLead',
      'countsPerRev',
      'stepsPerCount',
      'ratioHeld',
      'nutRule',
    ];
    for (const id of ids) expect([id, nothing.get(id).value]).toEqual([id, null]);
  });
});
