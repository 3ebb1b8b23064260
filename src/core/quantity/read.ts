import { add, ratio, type Ratio } from './ratio';

/** Why a typed number was refused; the words for each are in text/numbers. */
export type ReadError = 'empty' | 'not-a-number' | 'two-marks' | 'zero-below' | 'unfinished' | 'too-long';
export type ReadResult = { ok: true; value: Ratio } | { ok: false; error: ReadError };

const MAX_LENGTH = 24;
const no = (error: ReadError): ReadResult => ({ ok: false, error });

const decimal = (whole: string, part: string): Ratio =>
  ratio(BigInt(whole + part || '0'), 10n ** BigInt(part.length));

/**
 * Reads what a person types: "1.25", "1,25" (comma or point is the decimal mark, never a thousands mark),
 * "3/8", "11 1/2", "11-1/2". The text goes to exact digits; no float is made on the way.
 * A leading minus is allowed. Errors: see ReadError.
 * @example read('11 1/2') // { ok: true, value: 23/2 }
 */
export const read = (typed: string): ReadResult => {
  const text = typed.trim().replace(/\s+/g, ' ').replace('−', '-');
  if (text === '') return no('empty');
  if (text.length > MAX_LENGTH) return no('too-long');
  const sign = text.startsWith('-') ? -1n : 1n;
  const body = sign < 0n ? text.slice(1).trim() : text;

  const plain = /^(\d*)(?:[.,](\d*))?$/.exec(body);
  if (plain) {
    const [, whole = '', part = ''] = plain;
    if (whole === '' && part === '') return no('unfinished');
    const value = decimal(whole, part);
    return { ok: true, value: ratio(sign * value.n, value.d) };
  }
  const mixed = /^(?:(\d+)[ -])?(\d+) ?\/ ?(\d+)$/.exec(body);
  if (mixed) {
    const [, whole = '0', top = '0', bottom = '0'] = mixed;
    if (BigInt(bottom) === 0n) return no('zero-below');
    const value = add(BigInt(whole), ratio(BigInt(top), BigInt(bottom)));
    return { ok: true, value: ratio(sign * value.n, value.d) };
  }
  if (/^(?:\d+[ -])?\d+ ?\/? ?$/.test(body) || /^\d+[ -]$/.test(body)) return no('unfinished');
  if ((body.match(/[.,]/g) ?? []).length > 1) return no('two-marks');
  return no('not-a-number');
};
