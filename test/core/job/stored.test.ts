import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankJob, readJob, readThread, storeJob, type Job } from '../../../src/core/job';
import { ratio, stated } from '../../../src/core/quantity';

const job: Job = {
  ...blankJob(),
  thread: { kind: 'catalogue', id: 'iso-coarse:M10' },
  starts: 2,
  hand: 'left',
  side: 'internal',
  classId: '6H',
  noseKind: 'radius',
  noseSize: stated(ratio(3, 20), 'mm'),
  rpm: ratio(160),
  room: stated(ratio(3, 16), 'in'),
};

describe('a job on the disk', () => {
  it('comes back as it was', () => {
    expect(readJob(JSON.parse(JSON.stringify(storeJob(job))))).toEqual(job);
    expect(readJob(storeJob(blankJob()))).toEqual(blankJob());
  });
  it('never throws on rubbish, and takes nothing from it', () => {
    fc.assert(fc.property(fc.anything(), (x) => void readJob(x)));
    expect(readJob({ starts: 0, rpm: { n: '0', d: '1' }, room: { n: '-1', d: '1', unit: 'mm' } })).toEqual(
      blankJob(),
    );
    expect(
      readJob({ starts: 61, rpm: { n: '20001', d: '1' }, noseSize: { n: '1', d: '1', unit: 'rpm' } }),
    ).toEqual(blankJob());
  });
  it.each([
    [{ kind: 'pitch', pitch: { n: '0', d: '1', unit: 'mm' } }],
    [{ kind: 'pitch', pitch: { n: '1', d: '1', unit: 'rpm' } }],
    [{ kind: 'feed', perRev: { n: '1', d: '1', unit: 'tpi' } }],
    [{ kind: 'catalogue', id: 7 }],
    [{ kind: 'catalogue', id: 'x'.repeat(81) }],
    [{ kind: 'else' }],
  ])('%j is no thread', (x) => {
    expect(readThread(x)).toBeNull();
  });
});
