import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { NOISE_NAMES, OUTPUTS, SUMS } from '../../src/core/wiring/noise';
import { cautionOf, ladder, SYMPTOMS } from '../../src/core/wiring/remedies';
import * as noise from '../../src/text/noise';
import { amountOf, amountText } from '../../src/text/noise-amount';
import { setMark } from '../../src/text/numbers';
import { setWords } from '../../src/text/words';

afterEach(() => {
  setWords('uk');
  setMark('.');
});

/** What core returns, as it stands in its source: words are asked for each. */
const source = readdirSync('src/core/wiring/noise')
  .map((file) => readFileSync(`src/core/wiring/noise/${file}`, 'utf8'))
  .join('\n');
const codes = (pattern: RegExp): string[] => [...source.matchAll(pattern)].map((m) => m[1] ?? '');

const said = (): string[] => [
  ...SYMPTOMS.map(noise.symptomName),
  ...SYMPTOMS.flatMap(ladder).flatMap((id) => [noise.remedyText(id).what, noise.remedyText(id).why]),
  ...SUMS.map(noise.sumText).flatMap(({ title, intro, sources }) => [title, intro, ...sources]),
  ...noise.noiseCautions(),
  ...noise.askList(),
  ...SYMPTOMS.flatMap(ladder).flatMap((id) => {
    const caution = cautionOf(id);
    return caution ? [noise.cautionText(caution)] : [];
  }),
  ...NOISE_NAMES.map(noise.noiseLabel),
  ...OUTPUTS.map((o) => noise.outputText[o]),
  ...Object.values(noise.noiseText).flatMap((x) => (typeof x === 'string' ? [x] : [])),
];

describe('words on noise', () => {
  it('name every figure with its formula', () => {
    const lines = [
      ...codes(/\bline\(\s*'([\w-]+)'/g),
      ...['reach-differential', 'reach-single', 'reach-collector', 'loss-even', 'loss-low', 'loss-high'],
      ...['delay-most', 'delay-most-best', 'third', 'third-best'],
    ];
    expect(new Set(lines).size).toBeGreaterThan(30);
    for (const code of lines) {
      const [label, formula] = noise.lineText(code);
      expect([code, label === code || formula === '']).toEqual([code, false]);
      expect(label.length).toBeLessThanOrEqual(30);
    }
  });
  it('say every note', () => {
    const notes = codes(/note\('([\w-]+)'\)/g);
    expect(notes.length).toBeGreaterThan(5);
    for (const code of notes) expect(noise.noteText(code)).toMatch(/\.$/);
  });
  it('name every input, each by itself', () => {
    const labels = NOISE_NAMES.map(noise.noiseLabel);
    expect(new Set(labels).size).toBe(NOISE_NAMES.length);
    NOISE_NAMES.forEach((name, i) => expect([name, labels[i] === name]).toEqual([name, false]));
  });
  it('say what to do and why for every remedy, and what to mind', () => {
    for (const id of SYMPTOMS.flatMap(ladder)) {
      const { what, why } = noise.remedyText(id);
      expect([id, what, why]).toEqual([id, expect.stringMatching(/\.$/), expect.stringMatching(/\.$/)]);
      const caution = cautionOf(id);
      if (caution) expect(noise.cautionText(caution)).toMatch(/\.$/);
    }
    for (const id of SUMS) expect(noise.sumText(id).sources.length).toBeGreaterThan(0);
  });
  it.each(['uk', 'us'] as const)('leave no sign of a template and claim nothing (%s)', (trade) => {
    setWords(trade);
    for (const text of said()) {
      expect(text).not.toMatch(/[{}|]|undefined|!| {2}|\.\./);
      expect(text).not.toMatch(/\bsafe\w*|\bready\b/i);
    }
    expect(said().join()).toMatch(trade === 'us' ? /\bVFD\b.*\bground\b/s : /\binverter\b.*\bearth\b/s);
    if (trade === 'us') expect(said().join()).not.toMatch(/\b(inverter|earth|mains)\b/i);
  });
  it('put isolating first, size nothing, and keep everything away from the output', () => {
    const all = noise.noiseCautions();
    expect(all[0]).toMatch(/^Isolate/);
    expect(all.join()).toMatch(/No protective device is sized here/);
    expect(all.join()).toMatch(/output of inverters never a mains filter, a capacitor/);
  });
});

describe('amounts', () => {
  it.each([
    [5032.92, 'Hz', undefined, '5.03 kHz'],
    [2.5709e-6, 's', undefined, '2.57 µs'],
    [999.6, 'Hz', undefined, '1 kHz'],
    [0.262, 'V', 'up', '262 mV'],
    [4.7384, 'V', 'down', '4.73 V'],
    [6.0386, 'm', 'down', '6.03 m'],
    [1219.2, 'm', 'down', '1219 m'],
    [0.1339, 'ohm/m', 'up', '134 Ω/km'],
    [3e-6, 'F', 'up', '3 µF'],
    [1575.9, 'ohm', 'down', '1.57 kΩ'],
    [250, 'ohm', 'up', '250 Ω'],
    [-3.6746, 'dB', undefined, '−3.7 dB'],
    [-0.01, 'dB', undefined, '0 dB'],
    [0, 'V', 'down', '0 V'],
  ] as const)('%d %s, rounded %s: %s', (x, unit, rule, text) => {
    expect(amountText(x, unit, rule).replace('\u00a0', ' ')).toBe(text);
  });
  it('take the mark of the place', () => {
    setMark(',');
    expect(amountOf(5032.92, 'Hz').value).toBe('5,03');
  });
  it('are rounded to the side asked, by no more than a hundredth', () => {
    const PREFIX: Readonly<Record<string, number>> = { p: 1e-12, n: 1e-9, µ: 1e-6, m: 1e-3, k: 1e3, M: 1e6 };
    const any = fc.double({ min: -11, max: 8, noNaN: true }).map((x) => 10 ** x);
    fc.assert(
      fc.property(any, fc.constantFrom('down', 'up'), (x, rule) => {
        const { value, unit } = amountOf(x, 's', rule);
        const read = Number(value) * (PREFIX[unit.replace(/s$/, '')] ?? 1);
        expect(Math.abs(read / x - 1)).toBeLessThan(0.0101);
        if (rule === 'down') expect(read).toBeLessThanOrEqual(x * (1 + 1e-8));
        else expect(read).toBeGreaterThanOrEqual(x * (1 - 1e-8));
      }),
    );
  });
});
