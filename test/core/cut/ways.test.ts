import { describe, expect, it } from 'vitest';
import { fromChuck, rootWidth, topWidth, WAY_IDS, type WayId } from '../../../src/core/cut/ways';
import { waysNow } from '../../../src/core/figures/ways-now';
import { blankJob, type Job } from '../../../src/core/job';
import { blankProfile, type MachineProfile } from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { threadById } from '../../../src/core/thread';
import { toolForm } from '../../../src/core/thread/tool';
import { figureText, minutesText, wayName, wayNote, waySays } from '../../../src/text/cut-ways';
import { is, rpm, sheet } from '../figures/support';

const of = (id: string, more: Partial<Job> = {}): Job => ({
  ...blankJob(),
  thread: { kind: 'catalogue', id },
  noseKind: 'sharp',
  ...more,
});
const ways = (job: Job, machine: Partial<MachineProfile> = {}) =>
  waysNow(sheet({ ...EXAMPLES.heron(), ...machine }, job));
const way = (id: WayId, job: Job, machine: Partial<MachineProfile> = {}) => {
  const found = ways(job, machine).find((w) => w.id === id);
  if (!found) throw new Error(id);
  return { ...found, of: Object.fromEntries(found.figures.map((f) => [f.code, f.value])) };
};
const applying = (job: Job, machine: Partial<MachineProfile> = {}) =>
  ways(job, machine).flatMap((w) => (w.applies ? w.id : []));
const form = (id: string) => {
  const thread = threadById(id);
  if (!thread) throw new Error(id);
  return toolForm(thread, 'external');
};

describe('which work a job is', () => {
  it('none, for an outside right-hand thread of one start', () => {
    expect(applying(of('iso-coarse:M10'))).toEqual([]);
    expect(ways(of('iso-coarse:M10')).map((w) => w.id)).toEqual([...WAY_IDS]);
  });
  it('as many as it is at once, those first', () => {
    const job = of('tr:Tr40x7', { hand: 'left', side: 'internal', starts: 2, ending: 'groove' });
    const all = ways(job);
    expect(applying(job)).toEqual([
      'left-hand',
      'internal',
      'multi-start',
      'worm',
      'coarse',
      'relief-plunge',
      'from-the-chuck',
    ]);
    expect(all.map((w) => w.applies)).toEqual([true, true, true, true, true, true, true, false]);
  });
  it('taper and worm by the thread itself', () => {
    expect(applying(of('npt:1/2-14'))).toEqual(['taper']);
    expect(applying(of('worm-module:2'))).toContain('worm');
  });
  it('coarse from the leadscrew’s own lead on, or 5 mm where that isn’t known', () => {
    // Heron's screw has 3 mm.
    expect(applying(of('iso-coarse:M24'))).toEqual([]);
    expect(applying(of('iso-coarse:M30'))).toEqual(['coarse']);
    expect(applying(of('iso-coarse:M30'), { screwPitch: null })).toEqual([]);
    expect(applying(of('iso-coarse:M48'), { screwPitch: null })).toEqual(['coarse']);
  });
});

describe('widths of the groove', () => {
  it('at the surface leave the crest that ISO 68-1 has, P/8', () => {
    expect(topWidth(form('iso-coarse:M16'))).toBeCloseTo(2 * (7 / 8), 9);
  });
  it('at the bottom are those that Acme and trapezoidal tools are ground to', () => {
    // Acme 5 tpi, flat at the screw's root 0.3707 P − 0.0052 = 0.0689 in (Machinery's Handbook, from memory).
    expect(Math.abs((rootWidth(form('acme:1-5')) ?? 0) / 25.4 - 0.0689)).toBeLessThan(0.0001);
    // Trapezoidal P 7: 0.366 P − 0.536 a_c, a_c 0.5 (DIN 103, from memory).
    expect(rootWidth(form('tr:Tr40x7'))).toBeCloseTo(0.366 * 7 - 0.536 * 0.5, 2);
    expect(rootWidth(form('iso-coarse:M10'))).toBeNull();
  });
});

describe('a left-hand thread', () => {
  it('asks for the relief on the other side, by the helix', () => {
    const { of: f } = way('left-hand', of('iso-coarse:M10', { hand: 'left' }));
    // tan λ = 1.5 ÷ (π · 8.376), M10's basic minor diameter by ISO 724; 2° clear on both sides.
    const helix = (Math.atan(1.5 / (Math.PI * 8.376)) * 180) / Math.PI;
    expect(f.helix).toBeCloseTo(helix, 3);
    expect(f.leading).toBeCloseTo(2 + helix, 3);
    expect(f.trailing).toBeCloseTo(2 - helix, 3);
    expect(f['start-groove']).toBeCloseTo(1.5 * 0.875 + 0.5, 9);
  });
});

describe('a taper thread', () => {
  it('is set to 1°47′24″, or the tailstock over by 1/32 of the length', () => {
    const { of: f } = way('taper', of('npt:1/2-14'));
    // Half angle of 1:16 as the pipe thread standards print it.
    expect(minutesText(f['side-angle'] ?? 0)).toBe('1°47′24″');
    // 100 ÷ 32; the trade's rule, taper on diameter × length ÷ 2.
    expect(f['set-over']).toBeCloseTo(3.125, 12);
    // cos(atan(1/32)) − 1, to the ppm that the reference case has.
    expect(f['axial-pitch']).toBeCloseTo(-488, 0);
  });
  it('sets over as the handbook’s example: 1 in per foot on 3 feet is 1½ in', () => {
    const { of: f } = way('taper', of('npt:1/2-14'));
    const perUnit = (f['set-over'] ?? 0) / 100 / (1 / 16);
    expect(perUnit * (1 / 12) * 36).toBeCloseTo(1.5, 12);
  });
});

describe('a coarse lead', () => {
  const job = of('iso-coarse:M30', { rpm: rpm(200), room: is('5', 'mm') });
  it('says how long the room lasts: 5 mm at 3.5 mm a turn and 200 rpm', () => {
    // v = 3.5 · 200 ÷ 60 = 11.667 mm/s; 5 ÷ 11.667 = 0.4286 s.
    const w = way('coarse', job);
    expect(w.of.carriage).toBeCloseTo(11.667, 3);
    expect(w.of.seconds).toBeCloseTo(0.4286, 4);
    expect(w.of['screw-turns']).toBeCloseTo(3.5 / 3, 9);
  });
  it('warns where that is less than the whole time with its factor, and not before', () => {
    const whole = is('0.2', 's');
    expect(way('coarse', job, { wholeStopTime: whole, safetyFactor: is('2', 'times') }).cautions).toEqual([]);
    expect(way('coarse', job, { wholeStopTime: whole, safetyFactor: is('2.2', 'times') }).cautions).toEqual([
      'co-too-short',
    ]);
    expect(way('coarse', job, { wholeStopTime: null }).notes).toContain('co-time-unknown');
    expect(way('coarse', { ...job, room: null }).notes).toContain('co-time-unknown');
    expect(way('coarse', { ...job, rpm: null }).notes).toContain('co-time-unknown');
  });
});

describe('a worm', () => {
  it('of module 2 with two starts has a lead of 4π, and its nut stays closed', () => {
    const w = way('worm', of('worm-module:2', { starts: 2, blank: is('30', 'mm') }));
    expect(w.of.lead).toBeCloseTo(12.566370614359172, 9);
    expect(w.cautions).toEqual(['wm-pi']);
    // Depth 2.2 modules (DIN 3975): of a blank of 30 a root of 30 − 8.8 = 21.2.
    expect(w.of.helix).toBeCloseTo((Math.atan((4 * Math.PI) / (Math.PI * 21.2)) * 180) / Math.PI, 4);
  });
  it('without a diameter has no helix to grind by', () => {
    expect(way('worm', of('worm-module:2')).of).toMatchObject({ helix: null, leading: null });
  });
});

describe('cutting away from the chuck', () => {
  it('is never offered with a screw-on chuck, and is not known while the chuck isn’t', () => {
    expect(fromChuck('screw-on')).toBe('never');
    const job = of('iso-coarse:M10', { outwards: true });
    expect(way('from-the-chuck', job, { chuckMount: 'screw-on' })).toMatchObject({
      applies: true,
      figures: [],
      cautions: ['fc-never'],
      notes: [],
      never: true,
    });
    expect(way('from-the-chuck', job, { chuckMount: null }).cautions).toEqual(['fc-unknown']);
    expect(way('from-the-chuck', job, { chuckMount: 'locked' })).toMatchObject({ cautions: [] });
  });
});

describe('every way, for any job', () => {
  const jobs: readonly Job[] = [
    blankJob(),
    { ...blankJob(), thread: { kind: 'pitch', pitch: is('1.5', 'mm') }, side: 'internal' },
    { ...blankJob(), thread: { kind: 'feed', perRev: is('0.1', 'mm') } },
    ...[
      'iso-coarse:M3',
      'bsw:1/2-12',
      'ba:4',
      'worm-dp-29:10',
      'square:Sq20x4',
      'round:Rd20',
      'r:R1/2',
    ].flatMap((id) => (threadById(id) ? [of(id), of(id, { side: 'internal', length: is('20', 'mm') })] : [])),
  ];
  it('has words and finite figures, and nothing known of a machine of which nothing is', () => {
    for (const job of jobs)
      for (const machine of [EXAMPLES.heron(), blankProfile('a', 'b')])
        for (const w of waysNow(sheet(machine, job))) {
          expect(wayName[w.id]).toMatch(/\w/);
          for (const n of [
            ...w.notes.map((c) => wayNote[c]),
            ...w.cautions.map((c) => wayNote[c]),
            ...waySays(w.id),
          ])
            expect(n).toMatch(/\.$/);
          for (const f of w.figures) {
            expect(figureText[f.code]()[0]).toMatch(/\w/);
            expect(f.value === null || Number.isFinite(f.value)).toBe(true);
          }
        }
    expect(jobs.length).toBeGreaterThan(8);
  });
  it('reckons nothing without a thread', () => {
    for (const w of waysNow(sheet(blankProfile('a', 'b'), blankJob())))
      expect(w.figures.map((f) => f.value).filter((v) => v !== null)).toEqual([]);
  });
});
