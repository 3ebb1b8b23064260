/** Which app, and which state of its formulas, made a record. */
export interface Made {
  readonly app: string;
  /** As `Recall.formulas` counts. */
  readonly formulas: number;
}

/** What a row says of who made it; nothing where that can't be read: it then counts as made before that was kept. */
export const readMade = (x: unknown): { readonly made?: Made } => {
  const { app, formulas } = (x ?? {}) as Partial<Record<keyof Made, unknown>>;
  return typeof app === 'string' && typeof formulas === 'number' ? { made: { app, formulas } } : {};
};

/** A formula that was corrected: what was made with it before is for review, and is never reckoned anew unasked. */
export interface Recall {
  /** By it its words are found, and what was reviewed is kept. */
  readonly id: string;
  /** Version of the app that has it right, for people. */
  readonly corrected: string;
  /** Number of the correction, one more than that before it: what was made under a lower one is for review. */
  readonly formulas: number;
  /** Checks and tests whose records it puts in question, by id. */
  readonly checks?: readonly string[];
  readonly tests?: readonly string[];
  /** Figures that a run was set by, by id; `measured`: what was worked out of its readings. */
  readonly figures?: readonly string[];
  /** Only runs of these families of threads; all where it isn't given. */
  readonly families?: readonly string[];
}

/** What of a record a recall asks. */
export interface Recallable {
  readonly id: string;
  /** Not there: from before that was kept. */
  readonly made?: Made | undefined;
}

/** What a release knows to be corrected, and what a person has looked over since. */
export interface Recalls {
  readonly table: readonly Recall[];
  /** By `reviewId`. */
  readonly reviewed: readonly string[];
}

/** The state of the formulas in a release with this table. */
export const formulasOf = (table: readonly Recall[]): number =>
  table.reduce((most, r) => Math.max(most, r.formulas), 1);

export const reviewId = (recall: string, record: string): string => `${recall}/${record}`;

/** The recalls that put a record in question and that nobody has looked over. */
export const recallsOf = (
  record: Recallable,
  { table, reviewed }: Recalls,
  concerns: (r: Recall) => boolean | undefined,
): readonly Recall[] =>
  table.filter(
    (r) =>
      r.formulas > (record.made?.formulas ?? 0) &&
      !reviewed.includes(reviewId(r.id, record.id)) &&
      concerns(r),
  );

/** A check's record, or a test's. */
export const recordRecalls = (
  record: Recallable & { readonly item?: string; readonly test?: string },
  recalls: Recalls | undefined,
): readonly Recall[] =>
  recalls
    ? recallsOf(record, recalls, ({ checks, tests }) =>
        record.item === undefined ? tests?.includes(record.test ?? '') : checks?.includes(record.item),
      )
    : [];
