import { afterEach, describe, expect, it, vi } from 'vitest';
import { RunLock } from '../../src/device/run-lock';

afterEach(() => vi.unstubAllGlobals());

/** What was told of the lock of run `one`, where asking for it ends so. */
const told = async (names: readonly string[]): Promise<{ told: string[]; asked: number }> => {
  const all: string[] = [];
  let asked = 0;
  const request = (): Promise<never> => {
    const name = names[asked];
    asked += 1;
    return name ? Promise.reject(new DOMException('', name)) : new Promise(() => undefined);
  };
  vi.stubGlobal('navigator', { locks: { request } });
  new RunLock((_, hold) => all.push(hold)).follow('one');
  await new Promise((done) => setTimeout(done));
  return { told: all, asked };
};

describe('the lock of a run', () => {
  it('taken by another tab is waited for', async () => {
    expect(await told(['AbortError'])).toEqual({ told: ['elsewhere'], asked: 2 });
  });

  // WebKit refuses a page that is just left; asked for again and again, it never got away.
  it.each(['InvalidStateError', 'SecurityError'])('refused (%s) is not asked for again', async (name) => {
    expect(await told(Array.from({ length: 50 }, () => name))).toEqual({ told: ['missing'], asked: 1 });
  });

  it('lost to a page that is left ends, too', async () => {
    expect(await told(['AbortError', 'InvalidStateError'])).toEqual({
      told: ['elsewhere', 'missing'],
      asked: 2,
    });
  });
});
