import { mark, significant, statedText } from '../../text/numbers';
import type { App } from '../../state';

/** This thread on this machine: what is kept by key belongs to it, and to no other. */
const jobKey = (app: App): string => {
  const chosen = app.sheet.get('chosen').value;
  const name = chosen ? (chosen.thread?.id ?? statedText(chosen.pitch)) : '';
  return `${app.machine?.id ?? ''}|${name}|${app.job.starts}${app.job.hand}`.slice(-90);
};

/** What was kept under a name for this thread on this machine; null where that was for another, or nothing. */
export const kept = (app: App, name: string): string | null => {
  const [value = '', key] = (app.settings.choices[name] ?? '').split('@');
  return key === jobKey(app) && value ? value : null;
};
export const keep = (app: App, name: string, value: string | number): void => {
  void app.choose(name, `${value}@${jobKey(app)}`);
};

/** The line on which the nut was first closed, from 1; null: not said. */
export const FIRST_LINE = 'cut.line';
export const firstLine = (app: App): number | null => {
  const line = Number(kept(app, FIRST_LINE));
  return Number.isInteger(line) && line > 0 ? line : null;
};

const NBSP = '\u00a0';

/** A length for reading, in the person's unit. */
export const lengthText = (app: App, mm: number, digits = 3): string =>
  app.settings.units === 'in'
    ? `${significant(mm / 25.4, digits)}${NBSP}in`
    : `${significant(mm, digits)}${NBSP}mm`;

/** A small error for reading; what is below a nanometre or a millionth of an inch is said to be so. */
export const errorText = (app: App, um: number): string => {
  const inch = app.settings.units === 'in';
  const size = Math.abs(inch ? um / 25_400 : um);
  const [least, places] = inch ? [1e-6, 6] : [1e-3, size < 1 ? 3 : size < 100 ? 1 : 0];
  const sign = um < 0 ? '−' : '';
  const text = size < least ? `< ${least.toFixed(places)}` : sign + size.toFixed(places);
  return `${text.replace('.', mark())}${NBSP}${inch ? 'in' : 'µm'}`;
};
