/**
 * How every record that can change is kept. Which of two versions is newer is told by ancestry (`parents`),
 * never by a phone's clock; `changedAt` is for people to read.
 */
export interface Envelope {
  readonly id: string;
  readonly schema: number;
  readonly rev: string;
  readonly parents: readonly string[];
  readonly device: string;
  readonly counter: number;
  readonly changedAt: number;
  readonly deleted: boolean;
  readonly body: unknown;
}

/** A record that can be read: its envelope and what is in it. */
export interface Kept<T> {
  readonly id: string;
  readonly rev: string;
  readonly changedAt: number;
  readonly deleted: boolean;
  readonly value: T;
}

/** A record that can't be read by this version: shown as such, kept as it is, exportable raw. */
export interface Unreadable {
  readonly id: string;
  readonly raw: unknown;
}

/** How the values of one store are written and read. `decode` gives null for what it can't read; never throws. */
export interface Codec<T> {
  readonly schema: number;
  readonly encode: (value: T) => unknown;
  readonly decode: (body: unknown) => T | null;
}

const isText = (x: unknown): x is string => typeof x === 'string' && x.length > 0 && x.length <= 100;

export const isEnvelope = (x: unknown): x is Envelope => {
  if (typeof x !== 'object' || x === null) return false;
  const e = x as Record<string, unknown>;
  return (
    isText(e.id) && isText(e.rev) && Array.isArray(e.parents) && typeof e.schema === 'number' && 'body' in e
  );
};
