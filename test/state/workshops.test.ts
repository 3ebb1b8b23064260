import { beforeEach, describe, expect, it } from 'vitest';
import { EXAMPLES } from '../../src/core/machine/examples';
import { App } from '../../src/state';
import { colourFor, workshopsOf } from '../../src/state/workshops';
import { openStorage } from '../../src/storage';

let app: App;
const ids = new Map<string, string>();
const id = (name: string): string => ids.get(name) ?? '';
const add = async (name: string, workshop: string): Promise<void> => {
  ids.set(name, await app.machines.add({ ...EXAMPLES.heron(), name, workshop }, false));
};
const listed = (): [string, string[]][] =>
  workshopsOf(app).map(({ name, machines }) => [name, machines.map((m) => m.value.profile.name)]);

beforeEach(async () => {
  app = new App(await openStorage({ onBlocked: () => undefined, onClosed: () => undefined }));
  await add('Knot', 'Club');
  await add('Crake', 'Shed');
  await add('Avocet', 'club ');
  await add('Dunlin', 'Club');
  await add('Wigeon', '');
});

describe('workshops', () => {
  it('stand by name where nothing was used yet, after that of the first machine, which is in use', () => {
    expect(listed()).toEqual([
      ['Club', ['Avocet', 'Dunlin', 'Knot']],
      ['', ['Wigeon']],
      ['Shed', ['Crake']],
    ]);
  });

  it('and their machines stand by when they were used, the one in use first', async () => {
    for (const name of ['Knot', 'Wigeon', 'Avocet', 'Crake']) await app.useMachine(id(name));
    expect(listed()).toEqual([
      ['Shed', ['Crake']],
      ['Club', ['Avocet', 'Knot', 'Dunlin']],
      ['', ['Wigeon']],
    ]);
  });

  it('give a new machine a colour that none there has', () => {
    expect(colourFor(app, 'SHED')).not.toBe('teal');
    expect(colourFor(app, 'Nowhere yet')).toBe('teal');
  });

  it('are renamed with all their machines, those put away too, and go back by one undo', async () => {
    await app.useMachine(id('Knot'));
    await app.putAway(id('Dunlin'));
    await app.nameWorkshop('Club', 'Shed');
    expect(listed()).toEqual([
      ['Shed', ['Knot', 'Avocet', 'Crake']],
      ['', ['Wigeon']],
    ]);
    expect(app.machines.away.map((m) => m.value.profile.workshop)).toEqual(['Shed']);
    await app.takeBack();
    expect(listed()).toEqual([
      ['Club', ['Knot', 'Avocet']],
      ['', ['Wigeon']],
      ['Shed', ['Crake']],
    ]);
    // As each was written, not as most are.
    expect(app.machines.find(id('Avocet'))?.value.profile.workshop).toBe('club ');
    expect(app.machines.away.map((m) => m.value.profile.workshop)).toEqual(['Club']);
  });
});

describe('another machine', () => {
  it('is left again by undo, without a change of either', async () => {
    await app.useMachine(id('Knot'));
    await app.useMachine(id('Crake'));
    await app.useMachine(id('Crake'));
    await app.takeBack();
    expect(app.machine?.id).toBe(id('Knot'));
    await app.takeBack();
    expect(app.machine?.id).toBe(id('Avocet'));
    // To use what is in use is no change.
    expect(app.undo.newest).toBeNull();
  });

  it('takes over when the one in use is put away: the one used before it', async () => {
    for (const name of ['Wigeon', 'Avocet', 'Crake']) await app.useMachine(id(name));
    await app.putAway(id('Crake'));
    expect(app.machine?.id).toBe(id('Avocet'));
    await app.takeBack();
    expect(app.machine?.id).toBe(id('Crake'));
  });

  it('leaves a cut that runs, and says so until that is ended', async () => {
    await app.useMachine(id('Knot'));
    await app.startCut();
    const since = app.jobs.cuttingSince;
    const told: boolean[] = [];
    const stop = app.subscribe(() => told.push(app.cutting));
    await app.useMachine(id('Crake'));
    expect(app.jobs.cuttingSince).toBeNull();
    expect(app.cutsElsewhere).toEqual([{ machine: id('Knot'), since }]);
    await app.useMachine(id('Knot'));
    expect(app.cutsElsewhere).toEqual([]);
    expect(app.jobs.cuttingSince).toBe(since);
    // Nor was there a moment in which no cut seemed to run: an update could have slipped in.
    expect(told).not.toContain(false);
    stop();
    await app.endCut();
    await app.useMachine(id('Crake'));
    expect(app.cutting).toBe(false);
  });

  it('isn’t kept waiting by a cut on one that was put away', async () => {
    await app.useMachine(id('Knot'));
    await app.startCut();
    await app.putAway(id('Knot'));
    await app.useMachine(id('Crake'));
    expect(app.cutting).toBe(false);
    await app.takeBack();
    await app.takeBack();
    expect(app.machine?.id).toBe(id('Knot'));
    expect(app.cutting).toBe(true);
  });

  it('shows nothing of what was recorded of the one before, not for a moment', async () => {
    await app.useMachine(id('Knot'));
    await app.logHours(40);
    const seen: unknown[] = [];
    app.subscribe(() => {
      if (app.machine?.id === id('Crake')) seen.push(app.records.newestHours);
    });
    await app.useMachine(id('Crake'));
    expect(new Set(seen)).toEqual(new Set([null]));
    await app.useMachine(id('Knot'));
    expect(app.records.newestHours).toBe(40);
  });
});
