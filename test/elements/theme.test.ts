import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { COLOURS } from '../../src/embed/element';

const css = readFileSync('src/elements/theme.css', 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');

/** Custom properties of the first block with this selector. */
const block = (selector: string): Map<string, string> => {
  const start = css.indexOf(`${selector} {`);
  if (start < 0) throw new Error(`no ${selector}`);
  const body = css.slice(start, css.indexOf('}', start));
  return new Map([...body.matchAll(/(--[\w-]+):\s*([^;]+);/g)].map((m) => [m[1] ?? '', m[2] ?? '']));
};

/** Relative luminance, WCAG 2.2, from #rrggbb. */
const luminance = (colour: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((i) => parseInt(colour.slice(i, i + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: string, b: string): number => {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
};

const TEXT = ['--ink', '--ink-2', '--ok', '--near', '--over', '--unknown'];
const MACHINES = ['teal', 'amber', 'plum', 'moss', 'brick', 'slate'].map((m) => `--machine-${m}`);
const bright = block(':root');
const dark = block(":root[data-theme='dark']");

describe('contrast', () => {
  it('is worked out as WCAG does', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2); // WCAG's well-known grey on white
  });

  for (const [name, theme] of [
    ['bright', bright],
    ['dark', dark],
  ] as const) {
    const paper = theme.get('--paper') ?? '';
    it.each(TEXT)(`${name}: %s reads at 7:1 on paper`, (key) => {
      expect(contrast(theme.get(key) ?? '', paper)).toBeGreaterThanOrEqual(7); // WCAG 2.2, 1.4.6
    });
    it.each(MACHINES)(`${name}: %s shows at 4.5:1 on paper`, (key) => {
      expect(contrast(theme.get(key) ?? '', paper)).toBeGreaterThanOrEqual(4.5);
    });
  }
});

describe('the bands of machines', () => {
  const band = (of: string): string =>
    (bright.get(of.replace('machine', 'band')) ?? '').replace(/\s+/g, ' ').replaceAll(`var(${of})`, 'ink');

  it('are drawn in their own colour, each in a pattern of its own: told apart by whoever sees no colours', () => {
    for (const of of MACHINES) expect(band(of)).toContain('ink');
    expect(new Set(MACHINES.map(band)).size).toBe(MACHINES.length);
  });

  it('are printed in the bright theme’s colours', () => {
    const paper = css.slice(css.indexOf('@media print'));
    for (const of of MACHINES) expect(paper).toContain(`${of}: ${bright.get(of)};`);
  });
});

it('the phone’s dark theme and the one set by hand are the same', () => {
  expect(block(':root:not([data-theme])')).toEqual(dark);
});

describe('the elements for other pages', () => {
  const system = block(
    '@media (forced-colors: active) {\n  :root,\n  :root:not([data-theme]),\n  :root[data-theme]',
  );
  // Without a machine its colour is that of the second text.
  const own = (theme: Map<string, string>, name: string) =>
    theme.get(`--${name}`)?.replace('var(--ink-2)', bright.get('--ink-2') ?? '');

  it.each(Object.entries(COLOURS))('have --%s as the app has it', (name, [light, darker, word]) => {
    expect(own(bright, name)).toBe(light);
    expect(dark.get(`--${name}`) ?? dark.get('--ink-2')).toBe(darker);
    expect(system.get(`--${name}`)).toBe(word);
  });
});
