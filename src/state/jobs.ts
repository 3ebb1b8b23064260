import { blankJob, type Job } from '../core/job';
import type { JobBody, Storage } from '../storage';
import { Emitter } from './emitter';
import { Live } from './live';
import { mergeFields, type Merged } from './merge';

const mergeJob = (base: JobBody, ours: JobBody, theirs: JobBody): Merged<JobBody> => {
  const job = mergeFields(base.job, ours.job, theirs.job);
  const cut = mergeFields({ c: base.cuttingSince }, { c: ours.cuttingSince }, { c: theirs.cuttingSince });
  return { value: { job: job.value, cuttingSince: cut.value.c }, both: job.both };
};

/** A cut that runs on a machine which isn't the one in use here. */
export interface CutElsewhere {
  readonly machine: string;
  readonly since: number;
}

/** The job on the machine in use: each machine keeps its own. */
export class JobState extends Emitter {
  private live: Live<JobBody> | null = null;
  private asked: string | null = null;
  private stop: () => void = () => undefined;

  constructor(
    private readonly storage: Storage,
    private readonly saved: (id: string) => void,
  ) {
    super();
  }

  async open(machine: string | null): Promise<void> {
    this.stop();
    this.live = null;
    this.asked = machine;
    if (machine) {
      const kept = await this.storage.jobs.get(machine);
      // Meanwhile another one was asked for.
      if (this.asked !== machine) return;
      const body = kept?.value ?? { job: blankJob(), cuttingSince: null };
      const live = new Live(this.storage.jobs, machine, body, kept?.rev ?? null, mergeJob, false, this.saved);
      this.live = live;
      this.stop = live.subscribe(() => this.tell());
    }
    this.tell();
  }

  get current(): Live<JobBody> | null {
    return this.live;
  }
  get job(): Job {
    return this.live?.value.job ?? blankJob();
  }
  get cuttingSince(): number | null {
    return this.live?.value.cuttingSince ?? null;
  }

  /** Since when cuts run on these machines, as the disk says; those without one are left out. */
  async cutsOn(machines: readonly string[]): Promise<readonly CutElsewhere[]> {
    const since = async (machine: string): Promise<CutElsewhere[]> => {
      const at = (await this.storage.jobs.get(machine))?.value.cuttingSince ?? null;
      return at === null ? [] : [{ machine, since: at }];
    };
    return (await Promise.all(machines.map(since))).flat();
  }

  change(part: Partial<Job>): Promise<void> {
    if (!this.live) return Promise.resolve();
    const { job, cuttingSince } = this.live.value;
    // A blank as measured is no bore.
    const turned = part.side && part.side !== job.side ? { blank: null } : {};
    // A room that comes without what it was worked out from was typed by a person.
    const typed = 'room' in part ? { roomFrom: null } : {};
    return this.live.set({ job: Object.freeze({ ...job, ...turned, ...typed, ...part }), cuttingSince });
  }

  setCutting(since: number | null): Promise<void> {
    return this.live ? this.live.set({ job: this.live.value.job, cuttingSince: since }) : Promise.resolve();
  }
}
