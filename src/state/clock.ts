import { Emitter } from './emitter';

const two = (n: number): string => n.toString().padStart(2, '0');

/** The calendar day where the phone is, e.g. "2026-05-03". */
export const dayOf = (at: number): string => {
  const d = new Date(at);
  return `${d.getFullYear()}-${two(d.getMonth() + 1)}-${two(d.getDate())}`;
};

/** The time as the phone has it, brought up to date each half minute and whenever the app comes to the front. */
export class Clock extends Emitter {
  now = Date.now();
  private timer: ReturnType<typeof setInterval> | null = null;

  get day(): string {
    return dayOf(this.now);
  }

  start(): void {
    this.timer ??= setInterval(() => this.tick(), 30_000);
    document.addEventListener('visibilitychange', () => this.tick());
  }

  tick(): void {
    this.now = Date.now();
    this.tell();
  }
}
