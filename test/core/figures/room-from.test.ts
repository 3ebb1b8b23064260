import { describe, expect, it } from 'vitest';
import { figuresFor, roomFrom, roomOf, type RoomRead } from '../../../src/core/figures';
import { ROOM_READS } from '../../../src/core/figures/room-from';
import { chart } from '../../../src/core/figures/chart';
import { inputAt, type Inputs } from '../../../src/core/context';
import { blankJob, readJob, storeJob, type Job } from '../../../src/core/job';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { is, QUIET, rpm } from './support';

const JOB: Job = {
  ...blankJob(),
  thread: { kind: 'catalogue', id: 'iso-coarse:M10' },
  rpm: rpm(60),
  noseKind: 'sharp',
  ending: 'groove',
  groove: is('6', 'mm'),
  shoulder: is('0', 'mm'),
  infeed: 'modified-flank',
  topSlide: is('29.5', 'deg'),
  room: is('4.2', 'mm'),
};
const inputs = (part: Partial<Job> = {}): Inputs => ({
  machine: EXAMPLES.heron(),
  job: { ...JOB, ...part },
  context: QUIET,
});
const from = (i: Inputs): string => roomFrom((path: RoomRead) => inputAt(i, path));
const WORKED_OUT = { roomFrom: from(inputs()) };
const stop = (i: Inputs) =>
  figuresFor(i)
    .get('limits')
    .value?.find((l) => l.id === 'stopping-room');

/** Another value of each thing that the room is worked out from. */
const OTHERS: Readonly<Record<Exclude<RoomRead, 'machine.topScale'>, Partial<Job>>> = {
  'job.thread': { thread: { kind: 'catalogue', id: 'iso-coarse:M12' } },
  'job.side': { side: 'internal' },
  'job.noseKind': { noseKind: 'flat' },
  'job.noseSize': { noseSize: is('0.1', 'mm') },
  'job.blank': { blank: is('9.9', 'mm') },
  'job.ending': { ending: 'through' },
  'job.groove': { groove: is('5', 'mm') },
  'job.shoulder': { shoulder: is('2', 'mm') },
  'job.gap': { gap: is('20', 'mm') },
  'job.infeed': { infeed: 'radial' },
  'job.topSlide': { topSlide: is('29', 'deg') },
  'job.outwards': { outwards: true },
};

describe('a stopping room that was worked out', () => {
  it('counts while everything it was worked out from stays as it was', () => {
    const i = inputs(WORKED_OUT);
    // 60 × 4.2 ÷ (1.5 × 0.5 × 1.5) = 224
    expect(stop(i)?.within).toBe(224n);
    expect(roomOf(i)).toEqual(JOB.room);
    expect(stop(inputs({ ...WORKED_OUT, rpm: rpm(200), material: 'brass' }))?.within).toBe(224n);
  });

  it.each(Object.entries(OTHERS))('counts as not known when %s is another', (_path, part) => {
    const i = inputs({ ...WORKED_OUT, ...part });
    expect(roomOf(i)).toBeNull();
    expect([stop(i)?.within, stop(i)?.missing]).toEqual([null, ['job.room']]);
    expect(figuresFor(i).get('speed').value?.job.highest).toBeNull();
  });

  it('is lost with the scale of the top slide too, and every input has its case', () => {
    const i = inputs(WORKED_OUT);
    expect(roomOf({ ...i, machine: { ...i.machine, topScale: 'from-axis' } })).toBeNull();
    expect([...Object.keys(OTHERS), 'machine.topScale'].sort()).toEqual([...ROOM_READS].sort());
  });

  it('typed by a person, holds whatever is changed', () => {
    for (const part of Object.values(OTHERS))
      expect(roomOf(inputs({ roomFrom: null, ...part }))).toEqual(JOB.room);
  });

  it('comes back from the disk as it was', () => {
    const job = readJob(JSON.parse(JSON.stringify(storeJob({ ...JOB, ...WORKED_OUT }))));
    expect(roomOf({ ...inputs(), job })).toEqual(JOB.room);
  });

  it('is taken by the wall chart for every thread while it holds, and for none after', () => {
    const threads = [{ key: 'M12', thread: { kind: 'catalogue', id: 'iso-coarse:M12' }, starts: 1 } as const];
    const entered = (part: Partial<Job>) => chart(inputs(part), threads).rows[0]?.entered?.kind ?? null;
    expect(entered(WORKED_OUT)).toBe('highest');
    expect(entered({ ...WORKED_OUT, groove: is('5', 'mm') })).toBeNull();
  });
});

describe('the room worked out', () => {
  it('is what the sharp tool at 29.5° leaves in the groove', () => {
    const got = figuresFor(inputs()).get('stopRoom').value?.room;
    // 0.757772 × 1.5 = 1.136658 deep; 6 − 1.136658 × (tan 30° + tan 29.5°) − 0.5 = 4.2006.
    expect(got?.usable).toEqual(is('4.2', 'mm').value);
    expect(figuresFor(inputs()).get('stopSpeed').value).toBe(224n);
  });
  it('counts the blank as it was measured', () => {
    const got = figuresFor(inputs({ blank: is('10.2', 'mm') })).get('stopRoom').value;
    // 0.1 mm deeper.
    expect(got?.place.depth).toBeCloseTo(1.236658, 5);
  });
  it('has no creep by turns along both flanks', () => {
    expect(figuresFor(inputs({ infeed: 'alternate-flank' })).get('stopRoom').value?.room.creep).toBe(0);
  });
  it('reads a scale that counts from the bed’s axis', () => {
    const machine = { ...EXAMPLES.heron(), topScale: 'from-axis' } as const;
    const job = { ...JOB, topSlide: is('60.5', 'deg') };
    const at = figuresFor({ ...inputs(), machine, job }).get('stopRoom').value;
    expect(at?.place.infeed).toBeCloseTo(29.5, 9);
  });
  it('refuses a slide set past the flank: 60.5° on a scale that counts from the cross-slide', () => {
    const got = figuresFor(inputs({ topSlide: is('60.5', 'deg') })).get('stopRoom');
    expect([got.value, got.missing, got.why.notes]).toEqual([null, [], ['stop-angle']]);
  });
  it('is not known without the infeed, the ending or the slide’s angle', () => {
    const missing = (part: Partial<Job>) => figuresFor(inputs(part)).get('stopRoom').missing;
    expect(missing({ infeed: null })).toEqual(['job.infeed']);
    expect(missing({ ending: null })).toEqual(['job.ending']);
    expect(missing({ topSlide: null })).toEqual(['job.topSlide']);
    expect(missing({ groove: null, shoulder: null })).toEqual(['job.groove', 'job.shoulder']);
    expect(missing({ thread: null })).toContain('job.thread');
  });
});

describe('coasting', () => {
  it('is turns × lead', () => {
    // Heron coasts 8 turns.
    expect(figuresFor(inputs()).get('coasting').value).toEqual(is('12', 'mm').value);
  });
});
