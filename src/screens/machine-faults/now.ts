import {
  expectedOf,
  findFaults,
  findSteps,
  isRun,
  leadKey,
  settingsKey,
  settingsOf,
  slotKey,
  SLOTS,
  testOf,
  usualHalf,
  weigh,
  type Expected,
  type Found,
  recordedFor,
  type Reading,
  type Recorded,
  type Slot,
  type Steps,
  type ThreadSet,
  type Weighed,
} from '../../core/prove/faults';
import { compare, equal, inBase, leadLow, stated, type Ratio, type Stated } from '../../core/quantity';
import type { MachineProfile } from '../../core/machine';
import type { App } from '../../state';

/** What stands in one slot: as typed, and as a reading once both figures are there. */
export interface Held {
  readonly slot: Slot;
  readonly over: Stated | null;
  readonly got: Stated | null;
  readonly half: Stated | null;
  /** The ± that counts: as typed, or the usual one. */
  readonly within: Ratio;
  readonly reading: Reading | null;
  readonly weighed: Weighed | null;
}

export interface Now {
  readonly machine: string;
  /** Lead that was set for the runs; the job's where none was taken yet. mm; null: none. */
  readonly lead: Ratio | null;
  /** What the runs were read with is no longer what the profile gives: they say nothing now. */
  readonly stale: boolean;
  readonly expected: Expected;
  readonly held: readonly Held[];
  /** What test records hold of what wasn't read here yet, at one lead. */
  readonly recorded: readonly Recorded[];
  /** What the ranking rests on, beside the profile. */
  readonly key: string;
  /** Causes ranked; null while that has still to be done. */
  readonly known: Found | null;
  readonly steps: () => Steps<Found>;
  readonly keep: (found: Found) => void;
}

const jobLead = (app: App): Ratio | null => {
  const lead = app.sheet.get('lead').value;
  return lead && leadLow(lead);
};

const begun = (app: App, id: string): boolean =>
  SLOTS.some((slot) => isRun(slot) && app.readings.get(slotKey(id, slot, 'got')));

/** What is set goes with the first run read: lead and profile may be others by the next look. */
export const keepSettings = async (app: App): Promise<void> => {
  const [id, m, lead] = [app.machine?.id, app.profile, jobLead(app)];
  if (id === undefined || !m || begun(app, id)) return;
  await app.readings.set(settingsKey(id), stated(settingsOf(m), 'times'));
  await app.readings.set(leadKey(id), lead && stated(lead, 'mm'));
};

/** Of the test records, what isn't read here yet: runs only at the lead of those read, or at one lead among them. */
const recordedNow = (app: App, expected: Expected, held: readonly Held[], runLead: Ratio | null) => {
  const empty = (slot: Slot): boolean => held.some((h) => h.slot === slot && !h.over && !h.got);
  const all = recordedFor(app.inputs, expected).filter(({ slot }) => empty(slot));
  const lead = runLead ?? all.find(({ slot }) => isRun(slot))?.lead ?? null;
  return all.filter((r) => !isRun(r.slot) || (lead && r.lead && equal(lead, r.lead)));
};

/** Takes them over; a run brings along the lead that it was made at. */
export const takeRecorded = async (app: App, now: Now): Promise<void> => {
  const m = app.profile;
  for (const { slot, reading, lead } of m ? now.recorded : []) {
    const unit = { counts: 'count', screw: 'turns', carriage: 'mm', travel: 'mm', back: 'mm' } as const;
    const over = reading.test === 'travel' ? 'mm' : 'turns';
    if (isRun(slot) && !begun(app, now.machine) && m) {
      await app.readings.set(settingsKey(now.machine), stated(settingsOf(m), 'times'));
      await app.readings.set(leadKey(now.machine), lead && stated(lead, 'mm'));
    }
    await app.readings.set(slotKey(now.machine, slot, 'over'), stated(reading.over, over));
    await app.readings.set(slotKey(now.machine, slot, 'half'), stated(reading.half, unit[reading.test]));
    await app.readings.set(slotKey(now.machine, slot, 'got'), stated(reading.got, unit[reading.test]));
  }
};

/** The ranking is some work: it is kept until profile, thread or readings are others. */
let last: { readonly profile: MachineProfile; readonly key: string; readonly found: Found } | null = null;

/** Everything the pages show, from machine, job and readings as they are. */
export const faultsNow = (app: App): Now | null => {
  const [id, m] = [app.machine?.id, app.profile];
  if (id === undefined || !m) return null;
  const job = jobLead(app);
  const runs = begun(app, id);
  const lead = runs ? (app.readings.get(leadKey(id))?.value ?? null) : job;
  const expected = expectedOf(m, lead);
  const set = app.readings.get(settingsKey(id))?.value;
  const stale = runs && set !== undefined && !equal(set, settingsOf(m));
  const held = SLOTS.map((slot): Held => {
    const [over, got, half] = (['over', 'got', 'half'] as const).map((part) =>
      app.readings.get(slotKey(id, slot, part)),
    ) as [Stated | null, Stated | null, Stated | null];
    const test = testOf(slot);
    const within = half ? inBase(half) : usualHalf(test, expected);
    const reading =
      !over || !got || (stale && isRun(slot))
        ? null
        : { test, got: inBase(got), over: inBase(over), half: within };
    return { slot, over, got, half, within, reading, weighed: reading && weigh(reading, expected) };
  });
  // Of a thread that is no longer chosen it isn't known how it was typed.
  const pitch = app.sheet.get('chosen').value?.pitch ?? null;
  const thread: ThreadSet | null =
    pitch && lead && job && compare(lead, job) === 0 ? { pitch, starts: app.job.starts } : null;
  const readings = held.flatMap((h) => h.reading ?? []);
  const key = JSON.stringify([thread, lead, readings], (_k, x: unknown) =>
    typeof x === 'bigint' ? `${x}` : x,
  );
  return {
    machine: id,
    lead,
    stale,
    expected,
    held,
    recorded: recordedNow(app, expected, held, runs ? lead : null),
    key,
    known:
      readings.length === 0
        ? findFaults(m, thread, expected, [])
        : last?.profile === m && last.key === key
          ? last.found
          : null,
    steps: () => findSteps(m, thread, expected, readings),
    keep: (found) => (last = { profile: m, key, found }),
  };
};
