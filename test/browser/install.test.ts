import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { PLACES, routeOf } from '../../src/screens/shell/routes';
import { Person } from './support/app';
import { sideways } from './support/axe';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { chooseM10, takeExample } from './support/screens';

interface Picture {
  readonly src: string;
  readonly sizes: string;
  readonly purpose?: string;
  readonly form_factor?: string;
  readonly label?: string;
}
interface Manifest {
  readonly name: string;
  readonly short_name: string;
  readonly display: string;
  readonly display_override: readonly string[];
  readonly orientation?: string;
  readonly icons: readonly Picture[];
  readonly screenshots: readonly Picture[];
  readonly shortcuts: readonly { name: string; url: string; icons: readonly Picture[] }[];
}

const manifest = JSON.parse(readFileSync(join(DIST, 'manifest.webmanifest'), 'utf8')) as Manifest;

/** Width and height as the PNG itself says them. */
const sizeOf = (src: string): string => {
  const bytes = readFileSync(join(DIST, src));
  expect(bytes.toString('latin1', 1, 4)).toBe('PNG');
  return `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`;
};

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

describe('the manifest', () => {
  it('has a name that fits below an icon, and lets the phone be turned', () => {
    expect(manifest.name).toBe('Latheside');
    expect(manifest.short_name.length).toBeLessThanOrEqual(12);
    expect(manifest.display_override[0]).toBe(manifest.display);
    expect(manifest.orientation).toBeUndefined();
  });

  it('has pictures of the sizes it says, icons to be cut to any shape among them', () => {
    const { icons, screenshots, shortcuts } = manifest;
    const all = [...icons, ...screenshots, ...shortcuts.flatMap((s) => s.icons)];
    for (const { src, sizes } of all) expect([src, sizeOf(src)]).toEqual([src, sizes]);
    expect(icons.map((i) => i.purpose)).toContain('maskable');
    for (const size of ['192x192', '512x512']) expect(icons.map((i) => i.sizes)).toContain(size);
    for (const form of ['narrow', 'wide'])
      expect(screenshots.filter((s) => s.form_factor === form).length).toBeGreaterThan(1);
    for (const { label } of screenshots) expect(label?.length).toBeGreaterThan(10);
  });

  it('leads to the five places, each under an icon of its own', () => {
    expect(manifest.shortcuts.map(({ url }) => routeOf(url.replace('./', ''), '').place)).toEqual([
      ...PLACES,
    ]);
    const icons = manifest.shortcuts.map(({ icons: [icon] }) => icon?.src);
    expect(new Set(icons).size).toBe(PLACES.length);
  });

  it('keeps what is shown only before installing out of what the phone keeps', () => {
    const worker = readFileSync(join(DIST, 'worker.js'), 'utf8');
    expect(worker).toContain('icons/icon-192.png');
    for (const { src } of [...manifest.screenshots, ...manifest.shortcuts.flatMap((s) => s.icons)])
      expect([src, worker.includes(src)]).toEqual([src, false]);
  });

  it('is one that the browser installs', async () => {
    await phone.controlled();
    const session = await phone.debug();
    const { errors } = await session.send('Page.getAppManifest');
    expect(errors).toEqual([]);
    const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
    // A browser without a window of its own keeps nothing installed.
    expect(installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito')).toEqual([]);
  });
});

/** Whether the page had the link to its manifest when it was read, at this start. */
const linkedAtOnce = async (): Promise<boolean> => {
  await phone.page.reload();
  return phone.page.evaluate(() => (globalThis as unknown as { linked: boolean }).linked);
};

describe('the link to the manifest', () => {
  it('comes after a start that the worker answers, where the browser then still offers to install', async () => {
    await phone.page.addInitScript(() =>
      document.addEventListener('DOMContentLoaded', () =>
        Object.assign(globalThis, { linked: document.querySelector('link[rel="manifest"]') !== null }),
      ),
    );
    await phone.controlled();
    expect(await linkedAtOnce()).toBe(false);
    await expect.poll(() => phone.page.locator('link[rel="manifest"]').count()).toBe(1);
    const session = await phone.debug();
    expect((await session.send('Page.getAppManifest')).url).toBe(`${host.url}manifest.webmanifest`);
    const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
    expect(installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito')).toEqual([]);
  });

  it('is there at once without a worker, and in a browser that looks for it but once', async () => {
    await phone.page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.unregister());
    expect(await linkedAtOnce()).toBe(true);
    await phone.controlled();
    await phone.page.addInitScript(() => {
      delete (globalThis as { onbeforeinstallprompt?: unknown }).onbeforeinstallprompt;
    });
    expect(await linkedAtOnce()).toBe(true);
    expect(await phone.page.locator('link[rel="manifest"]').count()).toBe(1);
  });
});

/** Where header and places stand, and the left edge of what is written. Runs in the page. */
const edges = () => {
  const root = document.querySelector('ls-app')?.shadowRoot;
  const box = (name: string) => root?.querySelector(name)?.getBoundingClientRect();
  const bar = root?.querySelector('ls-bar')?.shadowRoot?.querySelector('span')?.getBoundingClientRect();
  return {
    top: box('header')?.top ?? 0,
    // On its side the places stand beside the screen.
    left: Math.min(box('main')?.left ?? 0, box('ls-bar')?.left ?? 0),
    bottom: innerHeight - (bar?.bottom ?? 0),
  };
};

describe('on the phone', () => {
  it('lets the page be enlarged by two fingers, and has no field that the phone enlarges by itself', async () => {
    const [view = ''] =
      /<meta name="viewport"[^>]*>/.exec(readFileSync(join(DIST, 'index.html'), 'utf8')) ?? [];
    expect(view).toContain('width=device-width');
    expect(view).not.toMatch(/user-scalable|maximum-scale/);
    await person.link('Enter my lathe');
    await person.heads('New machine');
    const sizes = await phone.page
      .locator('input, textarea, select')
      .evaluateAll((all) => all.map((e) => parseFloat(getComputedStyle(e).fontSize)));
    expect(sizes.length).toBeGreaterThan(1);
    for (const size of sizes) expect(size).toBeGreaterThanOrEqual(16);
  });

  it('keeps clear of notch and home bar, upright and on its side', async () => {
    await person.place('Threads');
    await takeExample(person);
    await chooseM10(person);
    const session = await phone.debug();
    await session.send('Emulation.setSafeAreaInsetsOverride', { insets: { top: 59, bottom: 34 } });
    const upright = await phone.page.evaluate(edges);
    expect(upright.top).toBe(59);
    expect(upright.bottom).toBeGreaterThanOrEqual(34);
    await phone.page.setViewportSize({ width: 844, height: 390 });
    await session.send('Emulation.setSafeAreaInsetsOverride', {
      insets: { left: 59, right: 59, bottom: 21 },
    });
    const lying = await phone.page.evaluate(edges);
    expect(lying.left).toBe(59);
    expect(lying.bottom).toBeGreaterThanOrEqual(21);
    expect(await sideways(phone.page)).toBe(0);
    await session.send('Emulation.setSafeAreaInsetsOverride', { insets: {} });
    await phone.page.setViewportSize({ width: 390, height: 844 });
  });

  it('opens where it was, from the address that the icon opens', async () => {
    await person.place('Machine');
    await person.link(/^Leadscrew pitch/);
    await person.heads('What is the pitch of the leadscrew?');
    await phone.page.waitForTimeout(200);
    await phone.kill();
    await phone.start();
    person = new Person(phone);
    await person.heads('What is the pitch of the leadscrew?');
    // A shortcut counts more than where it was.
    await phone.page.goto('about:blank');
    await phone.page.goto(`${host.url}#/cut`);
    await person.heads(/^M10/);
    expect(phone.watch.problems).toEqual([]);
  });
});
