import { threadOfJob } from '../cut/finish';
import type { Run } from './run';
import { recallsOf, type Recall, type Recalls } from '../recall';

/** The recalls that put a run in question: it was begun with a formula that has been corrected since. */
export const runRecalls = (id: string, run: Run, recalls: Recalls): readonly Recall[] =>
  recallsOf({ id, made: run.made }, recalls, ({ figures = [], families }) => {
    const family = threadOfJob(run.job)?.family;
    return (
      (!families || (family !== undefined && families.includes(family))) &&
      figures.some((f) => f !== 'measured' || run.readings.length > 0)
    );
  });
