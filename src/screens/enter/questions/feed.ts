import { FEED_FIELD } from '../../../core/job';
import { feedLabels } from '../../../text/feed';
import type { ReadingField } from './question';

/** The turning feed being looked at; not the job's until it is taken for it. */
export const feedFields = (): Readonly<Record<string, ReadingField>> => ({
  'feed.perRev': { label: feedLabels['feed.perRev'], field: FEED_FIELD },
});
