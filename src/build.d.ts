/** Constants the build puts in; see vite.config.ts. */

/** Version of the app, from package.json. */
declare const __VERSION__: string;
/** Date of the newest commit in the source, YYYY-MM-DD; empty where there was no history. */
declare const __SOURCE_DATE__: string;
/** True only in the way-out build, which removes the worker and our caches. */
declare const __UNREGISTER__: boolean;

/** What a build adds to the table of corrected formulas, and the words for it: tests put something there. */
declare const __RECALL__: {
  /** As `Recall` in core/recall. */
  readonly table: readonly {
    readonly id: string;
    readonly corrected: string;
    readonly formulas: number;
    readonly checks?: readonly string[];
    readonly tests?: readonly string[];
    readonly figures?: readonly string[];
    readonly families?: readonly string[];
  }[];
  readonly words: Readonly<Record<string, { readonly what: string; readonly todo: string }>>;
};

declare module '*.css';

/** The address of a built worker module. */
declare module '*?worker&url' {
  const address: string;
  export default address;
}
