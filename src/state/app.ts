import { sheetOf, type Registry, type Sheet } from '../core/figures/define';
import { FIRST } from '../core/figures/first';
import { fingerprint, type CheckRecord, type EventKind, type Inputs, type TestRecord } from '../core/context';
import type { Stated } from '../core/quantity';
import { recordRecalls, type Recall } from '../core/recall';
import type { Outcome } from '../core/run';
import {
  blankProfile,
  readStored,
  storeProfile,
  storeStated,
  workshopKey,
  type FieldName,
  type MachineProfile,
} from '../core/machine';
import { NO_WORK, readJob, readOwn, storeJob, storeOwn, type Job, type ThreadChoice } from '../core/job';
import { blankOwn, ownDesignation, ownId, type OwnThread, type Thread } from '../core/thread';
import {
  blankSettings,
  MOST_USED,
  MOST_WIRES,
  type MachineBody,
  type Restored,
  type Settings,
  type Storage,
} from '../storage';
import { Clock, dayOf } from './clock';
import { Emitter } from './emitter';
import { JobState, type CutElsewhere } from './jobs';
import { Live, type SaveState } from './live';
import { Machines } from './machines';
import { OwnThreads } from './own-threads';
import { mergeFields, type Merged } from './merge';
import { Records } from './records';
import { Readings } from './readings';
import { Runs } from './runs';
import { UndoList } from './undo';
import type { Wiring } from './wiring';

const PERSON = 'person';
const RECENT = 12;
const PLACE = 'place';
const RESTORED = 'storage.restored';
/**
 * Before the key of a thread of one's own, or of a machine, that another tab wrote: only that one is read again. Without a
 * key: many threads.
 */
const OWN_SAVED = 'own:';
const MACHINE_SAVED = 'machine:';
const ALL_SAVED = 'all';
/** Among so many machines used last it is looked whether a cut runs. */
const CUTS_LOOKED_FOR = 12;

/** Two tabs may well differ in what they used last: nobody has to be told. */
const mergeSettings = (base: Settings, ours: Settings, theirs: Settings): Merged<Settings> => {
  const { value, both } = mergeFields(base, ours, theirs);
  return { value, both: both.filter((key) => !['machine', 'used', 'recent'].includes(key)) };
};

/** Joins the stores: which machine is in use, its job, its records, and the figures that follow from them. */
export class App extends Emitter {
  /** Put here by what brings files in (carry.ts): it comes after the first paint, with the key that takes back. */
  static takeBackImport: (app: App, id: string) => Promise<void> = () => Promise.resolve();
  readonly clock = new Clock();
  readonly undo: UndoList;
  readonly readings: Readings;
  readonly machines: Machines;
  readonly jobs: JobState;
  readonly own: OwnThreads;
  readonly records: Records;
  readonly runs: Runs;
  /** Comes after the first paint. */
  wiring: Wiring | null = null;
  /** Cuts that run on other machines: none is left without a word. */
  cutsElsewhere: readonly CutElsewhere[] = [];
  private person: Live<Settings>;
  /** The machine of this tab: what another tab puts in use leaves it alone. */
  private at: string | null = null;
  private channel: BroadcastChannel | null = null;
  private sheetNow: Sheet | null = null;
  private figures: Partial<Registry> = FIRST;

  constructor(readonly storage: Storage) {
    super();
    const saved = (): void => this.channel?.postMessage('saved');
    this.undo = new UndoList(storage.meta);
    this.readings = new Readings(storage.meta);
    this.machines = new Machines(storage, (id) => this.channel?.postMessage(`${MACHINE_SAVED}${id}`));
    this.jobs = new JobState(storage, saved);
    this.records = new Records(storage.evidence, saved);
    this.own = new OwnThreads(storage, (key) => this.channel?.postMessage(`${OWN_SAVED}${key}`));
    this.runs = new Runs(
      storage,
      {
        machine: () => this.machine?.id ?? null,
        inputs: () => this.inputs,
        cutting: () => this.jobs.cuttingSince !== null,
        startCut: () => this.startCut(),
        endCut: () => this.endCut(),
      },
      saved,
    );
    this.person = new Live(storage.settings, PERSON, blankSettings(), null, mergeSettings, false, saved);
    const { machines, jobs, records, clock, undo, readings, own, runs } = this;
    for (const part of [machines, jobs, records, clock, undo, readings, own, runs])
      part.subscribe(() => this.changed());
  }

  private changed(): void {
    this.sheetNow = null;
    this.tell();
  }

  /** Loads everything the first screen needs. */
  async load(): Promise<void> {
    const settings = await this.storage.settings.get(PERSON);
    if (settings) {
      this.person = new Live(
        this.storage.settings,
        PERSON,
        settings.value,
        settings.rev,
        mergeSettings,
        false,
        () => this.channel?.postMessage('saved'),
      );
    }
    this.person.subscribe(() => this.changed());
    const id = (this.at = this.settings.machine);
    await Promise.all([id && this.machines.read(id), this.runs.open(), this.openRest(id)]);
    if (!this.machine) await this.machines.load();
    await this.follow();
    this.clock.start();
  }

  /** Remembers where in the app a person is, for when the phone kills it. */
  keepPlace(hash: string): void {
    this.storage.meta.set(PLACE, hash).catch(() => undefined);
  }

  /** Where the app was when it was last used; null at a first visit. */
  async lastPlace(): Promise<string | null> {
    const kept = await this.storage.meta.get(PLACE);
    return typeof kept === 'string' && kept.startsWith('#/') ? kept : null;
  }

  /** What came back from the copy, until a person has read it: "at torn". */
  get restored(): { at: number; torn: number } | null {
    const [at = NaN, torn = 0] = (this.settings.choices[RESTORED] ?? '').split(' ').map(Number);
    return at > 0 ? { at, torn } : null;
  }

  sayRestored({ at, torn }: Restored): Promise<void> {
    return this.choose(RESTORED, `${at} ${torn}`);
  }

  restoredSeen(): Promise<void> {
    return this.choose(RESTORED, '');
  }

  /** Loads what the first paint can do without. */
  async loadRest(): Promise<void> {
    this.listen();
    const { restored, durable } = this.storage;
    if (restored && durable) await this.sayRestored(restored);
    const [{ Wiring }] = await Promise.all([
      import('./wiring'),
      this.undo.load(),
      this.readings.load(),
      // What the start showed was read before other tabs were listened to.
      this.refresh(false),
    ]);
    this.wiring = new Wiring(this.storage, () => this.channel?.postMessage('saved'));
    this.wiring.subscribe(() => this.changed());
    await this.wiring.open(this.machine?.id ?? null);
    this.changed();
  }

  private listen(): void {
    if (typeof BroadcastChannel === 'undefined') return;
    this.channel = new BroadcastChannel('latheside');
    this.channel.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
      const said = `${data as string}`;
      const id = said.slice(said.indexOf(':') + 1);
      if (said === OWN_SAVED) void this.own.reloadAll();
      else if (said.startsWith(OWN_SAVED)) void this.own.reload(id);
      else if (said.startsWith(MACHINE_SAVED)) void this.machines.read(id).then(() => this.follow());
      else void this.refresh(said === ALL_SAVED);
    });
  }

  /** Another tab wrote, or the copy or a file brought something: taken over, where nothing unwritten is here. */
  async refresh(machines = true): Promise<void> {
    await Promise.all([this.person.reload(), machines && this.machines.load(), this.runs.open()]);
    await this.follow();
    await Promise.all([
      this.jobs.current?.reload(),
      this.records.reload(),
      this.wiring?.reload(),
      this.lookForCuts(),
    ]);
  }

  /** Says to the other tabs that machines may have come from elsewhere. @param threads own threads too */
  tellAll(threads: boolean): void {
    this.channel?.postMessage(ALL_SAVED);
    if (threads) this.channel?.postMessage(OWN_SAVED);
  }

  /** The machine in use was put away elsewhere, or the first one came: its job and records are opened. */
  private async follow(): Promise<void> {
    if ((this.machine?.id ?? null) !== this.at) await this.openMachine();
  }

  private openRest(id: string | null): Promise<unknown> {
    return Promise.all([this.jobs.open(id), this.records.open(id), this.wiring?.open(id)]);
  }

  private async openMachine(): Promise<void> {
    this.at = this.machine?.id ?? null;
    await this.openRest(this.at);
  }

  /** Looks on which of the machines used lately a cut was begun and not ended; one put away keeps nothing waiting. */
  private async lookForCuts(): Promise<void> {
    const lately = this.settings.used.slice(0, CUTS_LOOKED_FOR);
    const ids = new Set([...lately, ...this.runs.others.map((r) => r.run.machine)]);
    for (const m of this.machines.away) ids.delete(m.id);
    const cuts = await this.jobs.cutsOn([...ids]);
    this.cutsElsewhere = cuts.filter((c) => c.machine !== this.machine?.id);
    this.changed();
  }

  get settings(): Settings {
    return this.person.value;
  }
  /** The machine in use in this tab; when that was put away the one used before it. */
  get machine(): Live<MachineBody> | null {
    const { machines, settings } = this;
    const last = settings.used.find((id) => machines.find(id)) ?? null;
    return machines.find(this.at ?? settings.machine) ?? machines.find(last) ?? machines.list[0] ?? null;
  }
  /** Whether a cut runs that was begun on this phone, on whichever machine. */
  get cutting(): boolean {
    return this.jobs.cuttingSince !== null || this.cutsElsewhere.length > 0;
  }
  get profile(): MachineProfile | null {
    return this.machine?.value.profile ?? null;
  }
  get job(): Job {
    return this.jobs.job;
  }

  /** What went wrong with saving, if anything: the newest failure of what is open. */
  get saveState(): SaveState {
    const states = [
      ...this.machines.states,
      this.jobs.current?.state,
      this.person.state,
      ...this.own.states,
      ...this.runs.states,
      this.wiring?.state,
    ];
    return states.find((s) => s?.kind === 'failed' || s?.kind === 'conflict') ?? { kind: 'saved' };
  }

  /** A person has read which fields two tabs changed at once. */
  conflictSeen(): void {
    for (const live of [this.machines, this.jobs.current, this.person, this.own, this.runs, this.wiring])
      live?.conflictSeen();
  }

  /** Tries again to write what could not be written. */
  async saveAgain(): Promise<void> {
    await Promise.all([
      this.machines.flush(),
      this.jobs.current?.flush(),
      this.person.flush(),
      this.own.flush(),
      this.runs.flush(),
      this.wiring?.flush(),
    ]);
  }

  get inputs(): Inputs {
    return {
      machine: this.profile ?? blankProfile('', ''),
      job: this.job,
      context: {
        now: this.clock.now,
        day: this.clock.day,
        hours: this.records.newestHours,
        records: this.records.checks,
        tests: this.records.tests,
        recalls: this.records.recalls,
        events: this.records.events,
        cuttingSince: this.jobs.cuttingSince,
        cuttingDay: this.jobs.cuttingSince === null ? null : dayOf(this.jobs.cuttingSince),
      },
    };
  }

  /** The figures for the machine, job and records as they are now. */
  get sheet(): Sheet {
    return (this.sheetNow ??= sheetOf(this.figures, this.inputs));
  }

  /** Adds figures that were loaded after the first ones. */
  addFigures(more: Partial<Registry>): void {
    this.figures = { ...this.figures, ...more };
    this.sheetNow = null;
  }

  setSettings(part: Partial<Settings>): Promise<void> {
    return this.person.set({ ...this.settings, ...part });
  }

  /** Puts another machine in use, in this tab; undo goes back to the one before. */
  async useMachine(id: string): Promise<void> {
    const before = this.machine;
    await this.putInUse(id);
    if (before && before.id !== id)
      this.undo.push({ code: 'machine', machine: before.id, name: before.value.profile.name });
  }

  private async putInUse(id: string): Promise<void> {
    const used = [id, ...this.settings.used.filter((u) => u !== id)].slice(0, MOST_USED);
    const [here, since] = [this.machine?.id, this.jobs.cuttingSince];
    // At once: no update may slip in between.
    if (here && since !== null) this.cutsElsewhere = [...this.cutsElsewhere, { machine: here, since }];
    this.at = id;
    await Promise.all([this.setSettings({ machine: id, used }), this.openMachine()]);
    await this.lookForCuts();
  }

  /** Gives all machines of a workshop, those put away too, another one's name: one change, one undo. */
  async nameWorkshop(old: string, name: string): Promise<void> {
    const { machines } = this;
    const key = workshopKey(old);
    const own = [...machines.list, ...machines.away].filter(
      (m) => workshopKey(m.value.profile.workshop) === key,
    );
    const before = Object.fromEntries(own.map((m) => [m.id, m.value.profile.workshop]));
    await machines.setEach('workshop', new Map(own.map((m) => [m.id, name])));
    this.undo.push({ code: 'workshop', name: old, before });
  }

  async setField<K extends FieldName>(field: K, value: MachineProfile[K]): Promise<void> {
    const live = this.machine;
    if (!live) return;
    const { id } = live;
    const before = storeProfile(live.value.profile)[field];
    // The way back is offered when the change itself is on the disk: that is its acknowledgement.
    await this.machines.setField(id, field, value);
    this.undo.push({ code: 'field', machine: id, field, before });
  }

  /** Changes fields as one, and forgets the readings that were taken with the old ones; one undo brings all back. */
  async setFields(fields: Partial<MachineProfile>, readingsPrefix: string): Promise<void> {
    const live = this.machine;
    if (!live) return;
    const stored = storeProfile(live.value.profile);
    const before = Object.fromEntries(Object.keys(fields).map((f) => [f, stored[f as FieldName]]));
    await this.machines.setFields(live.id, fields);
    const readings = await this.readings.clear(readingsPrefix);
    this.undo.push({ code: 'fields', machine: live.id, before, readings });
  }

  async putAway(id: string): Promise<void> {
    const wasInUse = this.machine?.id === id;
    const name = this.machines.find(id)?.value.profile.name ?? '';
    await this.machines.setDeleted(id, true);
    this.undo.push({ code: 'machine-put-away', machine: id, name, inUse: wasInUse });
    if (wasInUse) await this.openMachine();
  }

  /** Brings back a machine that was put away, with its job and records, and uses it. */
  async bringBack(id: string): Promise<void> {
    await this.machines.setDeleted(id, false);
    await this.useMachine(id);
  }

  /** Chooses what to cut; starts and class go back to the thread's own, and what was entered of the work before is gone. */
  async chooseThread(thread: ThreadChoice, starts: number): Promise<void> {
    const machine = this.machine?.id;
    const before = this.job.thread ? storeJob(this.job) : null;
    const hand = thread.kind === 'own' ? { hand: thread.own.hand } : {};
    // What one thread is for says nothing of the next: it is judged strictly until that is said.
    const same = this.job.starts === starts && fingerprint(this.job.thread) === fingerprint(thread);
    await this.jobs.change({ ...(same ? {} : NO_WORK), thread, starts, classId: null, use: null, ...hand });
    if (machine && before) this.undo.push({ code: 'thread', machine, before });
    if (thread.kind === 'catalogue' || thread.kind === 'own') {
      const used = thread.kind === 'own' ? ownId(thread.id) : thread.id;
      const recent = [used, ...this.settings.recent.filter((id) => id !== used)].slice(0, RECENT);
      await this.setSettings({ recent });
    }
  }

  /** Chooses a thread of the look-up: catalogued or a person's own. */
  chooseFound(thread: Thread): Promise<void> {
    return this.chooseThread(this.own.choiceOf(thread), thread.starts);
  }

  /** A new thread of one's own, or the one that was begun and has nothing in it yet. */
  async beginOwn(): Promise<string> {
    const begun = this.own.list.find(({ own, deleted }) => !deleted && !own.name && !own.major && !own.pitch);
    return begun?.key ?? this.own.add(blankOwn());
  }

  /** Changes a thread of one's own; the job that is to cut it goes along. */
  async changeOwn(key: string, part: Partial<OwnThread>): Promise<void> {
    const entry = this.own.find(key);
    if (entry) await this.putOwn(key, Object.freeze({ ...entry.own, ...part }), entry.deleted);
  }

  async putOwnAway(key: string, deleted: boolean): Promise<void> {
    const entry = this.own.find(key);
    if (entry) await this.putOwn(key, entry.own, deleted);
  }

  private async putOwn(key: string, own: OwnThread, deleted: boolean): Promise<void> {
    const entry = this.own.find(key);
    if (!entry) return;
    await this.writeOwn(key, own, deleted);
    this.undo.push({
      code: 'own-thread',
      id: key,
      name: entry.own.name || ownDesignation(entry.own),
      before: storeOwn(entry.own),
      deleted: entry.deleted,
      away: deleted && !entry.deleted,
    });
  }

  private async writeOwn(key: string, own: OwnThread, deleted: boolean): Promise<void> {
    await this.own.set(key, own, deleted);
    const { thread } = this.job;
    if (thread?.kind === 'own' && thread.id === key)
      await this.jobs.change({ thread: { ...thread, own }, starts: own.starts, hand: own.hand });
  }

  /** Keeps what was chosen by key on a page, so that it is found again. */
  choose(name: string, value: string): Promise<void> {
    return this.setSettings({ choices: { ...this.settings.choices, [name]: value } });
  }

  async clearReadings(prefix: string): Promise<void> {
    this.undo.push({ code: 'readings', before: await this.readings.clear(prefix) });
  }

  /** Ends the open run; true when it is on the disk. */
  async endRun(outcome: Outcome, notes: string): Promise<boolean> {
    const open = this.runs.current;
    if (!open || !(await this.runs.end(outcome, notes))) return false;
    this.undo.push({ code: 'run', run: open.id, name: open.run.threadName, away: false });
    return true;
  }

  async putRunAway(id: string): Promise<boolean> {
    const name = this.runs.ended.find((e) => e.id === id)?.run.threadName;
    if (name === undefined || !(await this.runs.putAway(id))) return false;
    this.undo.push({ code: 'run', run: id, name, away: true });
    return true;
  }

  /** Adds a wire or shank to those owned; false when there are too many already. */
  async addWire(wire: Stated): Promise<boolean> {
    const { wires } = this.settings;
    if (wires.length >= MOST_WIRES) return false;
    await this.setSettings({ wires: [...wires, storeStated(wire)] });
    return true;
  }

  async takeOutWire(at: number): Promise<void> {
    const wire = this.settings.wires[at];
    if (!wire) return;
    await this.setSettings({ wires: this.settings.wires.filter((_, i) => i !== at) });
    this.undo.push({ code: 'wire', wire });
  }

  toggleFavourite(id: string): Promise<void> {
    const now = this.settings.favourites;
    const favourites = now.includes(id) ? now.filter((f) => f !== id) : [...now, id];
    return this.setSettings({ favourites });
  }

  /** Takes back the newest change. What has changed since in other fields stays as it is. */
  async takeBack(): Promise<void> {
    const entry = this.undo.pop();
    if (!entry) return;
    if ('evidence' in entry) return this.records.takeBack(entry.evidence);
    if (entry.code === 'wire') {
      const wire = readStored(entry.wire);
      if (wire) await this.addWire(wire);
      return;
    }
    if (entry.code === 'readings') return this.readings.restore(entry.before);
    if (entry.code === 'import') return App.takeBackImport(this, entry.id);
    if (entry.code === 'run') {
      await (entry.away ? this.runs.bringBack(entry.run) : this.runs.reopen(entry.run));
      return;
    }
    if (entry.code === 'own-thread') {
      const own = readOwn(entry.before);
      return own ? this.writeOwn(entry.id, own, entry.deleted) : undefined;
    }
    if (entry.code === 'machine-put-away') {
      await this.machines.setDeleted(entry.machine, false);
      return entry.inUse ? this.putInUse(entry.machine) : undefined;
    }
    if (entry.code === 'workshop')
      return this.machines.setEach('workshop', new Map(Object.entries(entry.before)));
    if (entry.code === 'field')
      return this.machines.restoreFields(entry.machine, { [entry.field]: entry.before });
    if (entry.code === 'fields') {
      await this.machines.restoreFields(entry.machine, entry.before);
      return this.readings.restore(entry.readings);
    }
    if (this.machine?.id !== entry.machine) await this.putInUse(entry.machine);
    if (entry.code === 'machine') return;
    if (entry.code === 'wiring') return this.wiring?.restore(entry.before);
    // The whole job: its room and blank were of that thread, and so was the speed that suited them.
    return this.jobs.change(readJob(entry.before));
  }

  /** Logs that something happened to the machine; what depends on it has to be checked again. */
  async logEvent(kind: EventKind): Promise<void> {
    this.clock.tick();
    const id = await this.records.addEvent(kind, this.clock.now);
    this.undo.push({ code: 'event', detail: kind, evidence: id });
  }

  /** What was corrected since a check or test was recorded, and not looked over. */
  recalls(record: CheckRecord | TestRecord): readonly Recall[] {
    return recordRecalls(record, this.records.recalls);
  }

  /** A person has looked over a record, or a run, after a correction. */
  async review(recall: string, of: string, isRun = false): Promise<void> {
    this.clock.tick();
    const id = await this.records.addReview(recall, of, this.clock.now, isRun);
    this.undo.push({ code: 'review', detail: recall, evidence: id });
  }

  async logHours(hours: number): Promise<void> {
    this.clock.tick();
    const id = await this.records.addHours(hours, this.clock.now);
    this.undo.push({ code: 'hours', detail: `${hours}`, evidence: id });
  }

  startCut(): Promise<void> {
    this.clock.tick();
    return this.jobs.setCutting(this.clock.now);
  }

  /** Ends the cut; the checks of its start were for that start alone. */
  async endCut(): Promise<void> {
    this.clock.tick();
    await this.records.addEvent('cut-ended', this.clock.now);
    await this.jobs.setCutting(null);
  }
}
