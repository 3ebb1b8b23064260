import type { serve } from '../../../.ci/serve.js';
import type { Browser, Tab } from '../support/engine';
import type { Ability } from '../support/gaps';
import type { Visitor } from '../support/visitor';

/** What a journey is given. */
export interface Stage {
  readonly host: Awaited<ReturnType<typeof serve>>;
  readonly browser: Browser;
  /** At the browser's first page. */
  readonly visitor: Visitor;
  /** Folder of a newer build. */
  readonly newer: string;
  visits(tab: Tab): Visitor;
  /** A second browser of the same engine, with nothing stored. */
  another(): Promise<Browser>;
}

export interface Journey {
  readonly name: string;
  /** Left out in an engine whose automation can't do this. */
  readonly needs?: Ability;
  run(stage: Stage): Promise<void>;
}
