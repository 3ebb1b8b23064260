/** One thing that went wrong, as kept on this phone alone until a person exports it. */
export interface LogEntry {
  readonly at: string;
  readonly where: string;
  readonly what: string;
}

const KEY = 'latheside.log';
const MOST = 200;
const LONGEST = 2000;
let entries: LogEntry[] | null = null;

const load = (): LogEntry[] => {
  if (entries) return entries;
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    entries = Array.isArray(kept) ? (kept as LogEntry[]) : [];
  } catch {
    entries = [];
  }
  return entries;
};

const describe = (e: unknown): string =>
  (e instanceof Error ? `${e.name}: ${e.message}\n${e.stack ?? ''}` : String(e)).slice(0, LONGEST);

/** Writes down a failure. Kept outside the database, since that may be what failed; never throws. */
export const logTrouble = (where: string, e: unknown): void => {
  entries = [...load(), { at: new Date().toISOString(), where, what: describe(e) }].slice(-MOST);
  try {
    localStorage.setItem(KEY, JSON.stringify(entries));
  } catch {
    // Full or forbidden: it stays in memory until the page goes.
  }
};

export const logEntries = (): readonly LogEntry[] => load();

/** Puts this in the log's place: nothing, or what was there before. @returns what was there */
export const replaceLog = (by: readonly LogEntry[]): readonly LogEntry[] => {
  const before = load();
  entries = [...by];
  try {
    localStorage.setItem(KEY, JSON.stringify(entries));
  } catch {
    // Nothing was kept then.
  }
  return before;
};

/** The log as text to share. */
export const logText = (version: string): string =>
  [`Latheside ${version}`, ...load().map((e) => `${e.at} ${e.where}\n${e.what}`)].join('\n\n');
