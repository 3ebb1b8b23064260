import type { CheckRecord, TestRecord } from '../../core/context';
import { recallNotes } from '../../elements/recall';
import type { App } from '../../state';
import { recallSaid } from '../../text/recall';

/** What was corrected since a check or a test was recorded, with the keys that say it was looked over. @param say takes what went wrong */
export const forReview = (
  app: App,
  record: CheckRecord | TestRecord | null,
  say: (trouble: string) => void,
) => record && recallNotes(recallSaid(app.recalls(record), record), (id) => app.review(id, record.id), say);
