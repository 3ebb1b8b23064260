import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { chooseM10, enter, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeEach(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await phone.controlled();
});
afterEach(async () => {
  await phone.close();
  await host.close();
});

/** What a head of a screen says and where: its name and the key below. */
interface Head {
  readonly words: readonly string[];
  readonly places: readonly (readonly number[])[];
}

/** From the next start on each picture is looked at: what the first head was, and one touch on it where one is wanted. */
const watchHeads = async (touch: string | null): Promise<void> => {
  await phone.context.addInitScript((wanted) => {
    const look = (screen: string): Head | null => {
      const shell = document.querySelector('ls-app')?.shadowRoot;
      const root = shell?.querySelector(screen)?.shadowRoot;
      const [name, key] = [root?.querySelector('h1'), root?.querySelector('a.key')];
      const standing = key?.querySelector('ls-standing');
      if (!name || !key || !standing) return null;
      const place = (e: Element): number[] => {
        const { x, y, width, height } = e.getBoundingClientRect();
        return [x, y, width, height].map(Math.round);
      };
      const words = [name.textContent, standing.word, standing.textContent].map((x) => x?.trim() ?? '');
      return { words, places: [place(name), place(key)] };
    };
    const heads: { first: Head | null; now: () => Head | null } = {
      first: null,
      now: () => look('ls-threads'),
    };
    Object.assign(globalThis, { heads });
    const next = (): void => {
      heads.first ??= look('ls-glance');
      if (heads.first && wanted !== null) {
        const bar = document.querySelector('ls-app')?.shadowRoot?.querySelector('ls-bar')?.shadowRoot;
        bar?.querySelector<HTMLElement>(wanted)?.click();
      } else requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  }, touch);
};

const heads = (): Promise<{ first: Head | null; now: Head | null }> =>
  phone.page.evaluate(() => {
    const { first, now } = (
      globalThis as unknown as { heads: { first: Head | null; now: () => Head | null } }
    ).heads;
    return { first, now: now() };
  });

const ready = async (): Promise<void> => {
  await takeExample(person);
  await chooseM10(person);
};

describe('the head of Threads', () => {
  it('stands before the code of the screens is there, as the screen then has it', async () => {
    await ready();
    await person.link('Use it');
    await enter(person, 'Enter stopping room', '4', 'mm');
    await person.key(/^160/);
    await person.reads('OK at 160 rpm');
    await person.place('Threads');
    await person.reads('16.93 tpi');
    await watchHeads(null);
    await phone.page.reload();
    await person.reads('16.93 tpi');
    const { first, now } = await heads();
    expect(first?.words).toEqual(['M10×1.5', 'OK', 'at 160 rpm']);
    expect(first).toEqual(now);
    expect(phone.watch.problems).toEqual([]);
  });

  it('says that it is not known, and leads on when a place is touched meanwhile', async () => {
    await ready();
    await watchHeads('a[href="#/speed"]');
    await phone.page.reload();
    await person.reads('The drive keeps up to');
    expect((await heads()).first?.words).toEqual(['M10×1.5', 'Not known', '· no speed set']);
    expect(phone.watch.problems).toEqual([]);
  });

  it('is shown for no other place, nor where there is nothing to say', async () => {
    await watchHeads(null);
    await phone.page.reload();
    await person.sees('Ready offline');
    expect((await heads()).first).toBeNull();
    await ready();
    await person.place('Speed');
    await person.reads('The drive keeps up to');
    await phone.page.reload();
    await person.reads('The drive keeps up to');
    expect((await heads()).first).toBeNull();
    expect(phone.watch.problems).toEqual([]);
  });
});
