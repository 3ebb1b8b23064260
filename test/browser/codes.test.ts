import { deflateRawSync, inflateRawSync } from 'node:zlib';
import decodeQR from 'qr/decode.js';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { readDocument, writeDocument } from '../../src/core/carry';
import { NOTHING_COLLECTED, split, take } from '../../src/core/carry/codes';
import { TEST_IDS } from '../../src/core/context';
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
  await (example ? takeExample(person) : person.link('Open a file'));
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

/** A machine's file with so much in its records that it takes a dozen codes of the largest size. */
const sent = Buffer.from(
  writeDocument({
    kind: 'machine',
    made: '2026-11-27T14:32:00.000Z',
    app: '0',
    records: {
      machines: [
        {
          id: 'm1',
          schema: 1,
          rev: 'r1',
          parents: [],
          device: 'a',
          counter: 1,
          changedAt: 5,
          deleted: false,
          body: { profile: storeProfile(EXAMPLES.heron()), example: null },
        },
      ],
      evidence: TEST_IDS.slice(0, 5).map((test, i) => ({
        id: `e${i}`,
        schema: 1,
        kind: 'test',
        machine: 'm1',
        at: 5,
        device: 'a',
        body: {
          test,
          rule: 1,
          result: 'passed',
          readings: {},
          choices: {},
          inputs: {},
          note: noise(4000)
            .subarray(i * 750, i * 750 + 750)
            .toString('base64'),
        },
      })),
    },
    earlier: [],
  }).text,
);

/** What was read is looked at, and brought in. */
const brought = async (person: Person): Promise<void> => {
  const { page } = person.phone;
  await page.getByRole('heading', { name: 'A machine from elsewhere' }).waitFor();
  await person.reads('Heron');
  await person.reads('Test records 5');
  await person.key('Bring it in');
  await page.getByRole('heading', { name: 'Brought in' }).waitFor();
};

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

describe('codes read by the camera', () => {
  it('are a machine, blurred, turned and with 30 % of them lost', async () => {
    const made = split(new Uint8Array(deflateRawSync(sent)));
    if (!made.ok) throw new Error(made.code);
    expect(made.count).toBeGreaterThanOrEqual(9);
    const shots = filmed(made.texts);
    expect(shots.length / made.texts.length).toBeLessThan(0.72);
    const film = filmOf(shots, 5);
    try {
      const { person, page, phone } = await open(
        '#/machine/carry/read',
        { flags: cameraFlags(film.path) },
        false,
      );
      await person.reads('no picture is kept or sent');
      expect(await pageFaults(page, 'codes, before reading')).toEqual([]);
      await person.key('Switch the camera on');
      await person.reads('Hold the whole code in the square');
      await brought(person);
      await person.place('Machine');
      await person.reads('Heron');
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
      const { person, page, phone } = await open(
        '#/machine/carry/read',
        { flags: cameraFlags(film.path) },
        false,
      );
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
      const { person, page } = await open('#/machine/carry/read', { flags: cameraFlags(film.path) }, false);
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
      await brought(person);
    } finally {
      film.remove();
    }
  });

  it('no camera allowed is said in words', async () => {
    const flags = ['--use-fake-device-for-media-stream', '--deny-permission-prompts'];
    const { person, page } = await open('#/machine/carry/read', { flags });
    await person.key('Switch the camera on');
    await person.reads('The camera was not allowed.');
    expect(await pageFaults(page, 'codes, camera denied')).toEqual([]);
  });

  it('no camera there is said in words', async () => {
    const flags = ['--use-fake-device-for-media-stream=device-count=0', '--use-fake-ui-for-media-stream'];
    const { person } = await open('#/machine/carry/read', { flags });
    await person.key('Switch the camera on');
    await person.reads('This device has no camera');
  });
});

describe('codes shown', () => {
  /** Brightness of what stands on the screen where the code is. */
  const photograph = async (
    on: Phone,
    scale: 'css' | 'device',
  ): Promise<{ width: number; height: number; data: Uint8Array }> => {
    const picture = await on.page.locator('ls-code-loop svg').screenshot({ scale });
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
  /** Once more, and nearer, where the first picture can't be read: so does whoever holds the other phone. */
  const readCode = async (on: Phone): Promise<string> => {
    try {
      return decodeQR(await photograph(on, 'css'));
    } catch {
      return decodeQR(await photograph(on, 'device'));
    }
  };

  it('run, stand still, go on by a key, and what stands on the screen is the machine', async () => {
    const { person, page, phone } = await open('#/machine/carry/show');
    await person.reads('Heron as codes');
    await expect.poll(() => person.words()).toMatch(/Code [2-9] of \d+/);
    await person.key('Pause');
    expect(await pageFaults(page, 'codes, shown')).toEqual([]);
    let collected = NOTHING_COLLECTED;
    let bytes: Uint8Array | null = null;
    for (let i = 0; i < 48 && !bytes; i += 1) {
      const one = take(collected, await readCode(phone));
      ({ collected } = one);
      if (one.taken.kind === 'whole') ({ bytes } = one.taken);
      else expect(one.taken).toMatchObject({ kind: 'more', fresh: true });
      await person.key('Next code');
    }
    const read = readDocument(inflateRawSync(bytes ?? Buffer.of()).toString());
    if (!read.ok) throw new Error(read.code);
    const { kind, records } = read.document;
    expect(kind).toBe('machine');
    expect(records.machines).toMatchObject([{ body: { profile: storeProfile(EXAMPLES.heron()) } }]);
    expect(records.evidence).toEqual([]);
    expect(phone.watch.problems).toEqual([]);
  });

  it('stand still from the first where less motion is wanted', async () => {
    const { person, page, phone } = await open('#/machine');
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await go(phone, '#/machine/carry/show');
    await person.reads('Code 1 of');
    await page.waitForTimeout(700);
    await person.reads('Code 1 of');
    await person.key('Next code');
    await person.reads('Code 2 of');
    await person.key('Let it run');
    await expect.poll(() => person.words()).toMatch(/Code [34] of \d+/);
  });
});
