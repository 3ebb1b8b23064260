import { deflateRawSync, inflateRawSync } from 'node:zlib';
import decodeQR from 'qr/decode.js';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { NOTHING_COLLECTED, split, take } from '../../src/core/carry/codes';
import { EXAMPLES } from '../../src/core/machine/examples';
import { storeProfile } from '../../src/core/machine';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { cameraFlags, filmOf, type Shot } from './support/film';
import { Phone, type PhoneOptions } from './support/phone';
import { takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone | undefined;

beforeAll(async () => {
  host = await serve(DIST);
});
afterEach(async () => {
  await phone?.close();
  phone = undefined;
});
afterAll(() => host?.close());

const open = async (hash: string, options: PhoneOptions = {}, example = true) => {
  phone = await Phone.open(host.url, options);
  const person = new Person(phone);
  if (example) await takeExample(person);
  await go(phone, hash);
  return { phone, page: phone.page, person };
};
const go = (on: Phone, hash: string): Promise<void> =>
  on.page.evaluate((to) => {
    location.hash = to;
  }, hash);

/** Bytes that can't be made smaller, the same each time. */
const noise = (length: number): Buffer => {
  let s = 7;
  return Buffer.from(
    Uint8Array.from({ length }, () => {
      s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
      return s >>> 24;
    }),
  );
};

/** A machine with so much in its records that it takes a dozen codes of the largest size. */
const sent = Buffer.from(
  JSON.stringify({
    profile: storeProfile(EXAMPLES.heron()),
    tests: [0, 1, 2].map((i) => ({
      note: noise(4000)
        .subarray(i * 1000, i * 1000 + 1000)
        .toString('base64'),
    })),
  }),
);

/** The codes as a camera held by hand films them: turned, tilted, blurred, and three in ten not caught. */
const filmed = (texts: readonly string[]): Shot[] =>
  texts
    .filter((_, i) => i % 10 !== 1 && i % 10 !== 4 && i % 10 !== 8)
    .map((text, i) => ({
      text,
      turned: [3, -2, 5, 0, -4][i % 5] ?? 0,
      blur: [0.8, 1, 1.2][i % 3] ?? 0,
      tilted: [0.02, 0.05][i % 2] ?? 0,
    }));

/** What the page of reading holds once all is read. */
interface Reading {
  readonly received: { readonly bytes: Uint8Array } | null;
}

describe('codes read by the camera', () => {
  it('give the same bytes, blurred, turned and with 30 % of them lost', async () => {
    const made = split(new Uint8Array(deflateRawSync(sent)));
    if (!made.ok) throw new Error(made.code);
    expect(made.count).toBeGreaterThanOrEqual(9);
    const shots = filmed(made.texts);
    expect(shots.length / made.texts.length).toBeLessThan(0.72);
    const film = filmOf(shots, 5);
    try {
      const { person, page, phone } = await open('#/machine/codes/read', { flags: cameraFlags(film.path) });
      await person.reads('no picture is kept or sent');
      expect(await pageFaults(page, 'codes, before reading')).toEqual([]);
      await person.key('Switch the camera on');
      await person.reads('Hold the whole code in the square');
      await person.reads('All codes read');
      await person.reads('Machine Heron');
      await person.reads('Test records 3');
      await person.reads('Nothing on this phone was changed.');
      const got = await page.locator('ls-codes-read').evaluate((e) => {
        const { received } = e as unknown as Reading;
        return received ? [...received.bytes] : null;
      });
      expect(got && Buffer.from(got).equals(sent)).toBe(true);
      expect(await page.locator('video').evaluate((v) => (v as HTMLVideoElement).srcObject)).toBeNull();
      expect(await pageFaults(page, 'codes, all read')).toEqual([]);
      expect(phone.watch.problems).toEqual([]);
    } finally {
      film.remove();
    }
  });

  it('are waited for, counted, and the camera goes off with the page', async () => {
    const made = split(noise(1500));
    if (!made.ok) throw new Error(made.code);
    // Two of the four that are needed, and then a code of something else.
    const texts = [made.texts[0] ?? '', made.texts[5] ?? '', 'https://example.org/'];
    const shots = texts.flatMap((text) => Array<Shot>(5).fill({ text, turned: 0, blur: 0.6, tilted: 0 }));
    const film = filmOf(shots, 10);
    try {
      const { person, page, phone } = await open('#/machine/codes/read', { flags: cameraFlags(film.path) });
      await person.key('Switch the camera on');
      await person.reads('Codes read 2 of 4');
      await person.reads('That code is none of this app’s.');
      expect(await pageFaults(page, 'codes, being read')).toEqual([]);
      const track = await page.locator('video').evaluateHandle((v) => {
        const stream = (v as HTMLVideoElement).srcObject as MediaStream;
        return stream.getVideoTracks()[0];
      });
      expect(await track.evaluate((t) => t?.readyState)).toBe('live');
      await person.place('Machine');
      await expect.poll(() => track.evaluate((t) => t?.readyState)).toBe('ended');
      expect(phone.watch.problems).toEqual([]);
    } finally {
      film.remove();
    }
  });

  it.each([
    ['by what the system has for it', false],
    ['by the library where the system’s own breaks', true],
  ])('are read %s', async (_, breaks) => {
    const made = split(new Uint8Array(deflateRawSync(sent)));
    if (!made.ok) throw new Error(made.code);
    const shown = breaks ? made.texts.slice(0, made.count) : made.texts.slice(0, 1);
    const film = filmOf(
      shown.map((text) => ({ text, turned: 2, blur: 0.7, tilted: 0.02 })),
      5,
    );
    try {
      const { person, page } = await open('#/machine/codes/read', { flags: cameraFlags(film.path) });
      await page.evaluate(
        ({ texts, throws }) => {
          let n = 0;
          const detect = (): Promise<{ rawValue: string }[]> =>
            throws
              ? Promise.reject(new DOMException('no service', 'NotSupportedError'))
              : Promise.resolve([{ rawValue: texts[(n += 1) % texts.length] ?? '' }]);
          class Detector {
            static getSupportedFormats = () => Promise.resolve(['qr_code']);
            detect = detect;
          }
          (globalThis as { BarcodeDetector?: unknown }).BarcodeDetector = Detector;
        },
        { texts: made.texts, throws: breaks },
      );
      await person.key('Switch the camera on');
      await person.reads('All codes read');
      await person.reads('Machine Heron');
    } finally {
      film.remove();
    }
  });

  it('no camera allowed is said in words', async () => {
    const flags = ['--use-fake-device-for-media-stream', '--deny-permission-prompts'];
    const { person, page } = await open('#/machine/codes/read', { flags });
    await person.key('Switch the camera on');
    await person.reads('The camera was not allowed.');
    expect(await pageFaults(page, 'codes, camera denied')).toEqual([]);
  });

  it('no camera there is said in words', async () => {
    const flags = ['--use-fake-device-for-media-stream=device-count=0', '--use-fake-ui-for-media-stream'];
    const { person } = await open('#/machine/codes/read', { flags });
    await person.key('Switch the camera on');
    await person.reads('This device has no camera');
  });
});

describe('codes shown', () => {
  /** Brightness of what stands on the screen where the code is. */
  const photograph = async (on: Phone): Promise<{ width: number; height: number; data: Uint8Array }> => {
    const picture = await on.page.locator('ls-code-loop svg').screenshot({ scale: 'css' });
    const pixels = await on.page.evaluate(async (base64) => {
      const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([bytes]));
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
      const context = canvas.getContext('2d');
      context?.drawImage(bitmap, 0, 0);
      const data = context?.getImageData(0, 0, bitmap.width, bitmap.height).data ?? [];
      // Black and white: one colour says it all.
      return { width: bitmap.width, height: bitmap.height, red: [...data].filter((_, i) => i % 4 === 0) };
    }, picture.toString('base64'));
    const { width, height, red } = pixels;
    return { width, height, data: Uint8Array.from(red.flatMap((v) => [v, v, v])) };
  };

  it('run, stand still, go on by a key, and what stands on the screen is the machine', async () => {
    const { person, page, phone } = await open('#/machine/codes/show');
    await person.reads('Heron as codes');
    await expect.poll(() => person.words()).toMatch(/Code 2 of \d+/);
    await person.key('Pause');
    expect(await pageFaults(page, 'codes, shown')).toEqual([]);
    let collected = NOTHING_COLLECTED;
    let bytes: Uint8Array | null = null;
    for (let i = 0; i < 48 && !bytes; i += 1) {
      const one = take(collected, decodeQR(await photograph(phone)));
      ({ collected } = one);
      if (one.taken.kind === 'whole') ({ bytes } = one.taken);
      else expect(one.taken).toMatchObject({ kind: 'more', fresh: true });
      await person.key('Next code');
    }
    const { profile, tests } = JSON.parse(inflateRawSync(bytes ?? Buffer.of()).toString()) as {
      profile: unknown;
      tests: unknown;
    };
    expect(profile).toEqual(storeProfile(EXAMPLES.heron()));
    expect(tests).toEqual([]);
    expect(phone.watch.problems).toEqual([]);
  });

  it('stand still from the first where less motion is wanted', async () => {
    const { person, page, phone } = await open('#/machine');
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await go(phone, '#/machine/codes/show');
    await person.reads('Code 1 of');
    await page.waitForTimeout(700);
    await person.reads('Code 1 of');
    await person.key('Next code');
    await person.reads('Code 2 of');
    await person.key('Let it run');
    await expect.poll(() => person.words()).toMatch(/Code [34] of \d+/);
  });
});
