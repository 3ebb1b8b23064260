/** What the elements for other pages say of themselves: against the published schema, the compiler, and their own sources. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { manifestOf, typesOf } from '../../.ci/manifest.js';

const manifest = manifestOf('src/embed', './latheside-embed.js');
interface Said {
  name: string;
  description?: string;
  attribute?: string;
}
interface Element {
  name: string;
  tagName: string;
  description: string;
  members: Said[];
  events: Said[];
  cssParts: Said[];
  cssProperties: Said[];
}
const elements = manifest.modules
  .flatMap(({ declarations = [] }) => declarations)
  .filter((d) => 'customElement' in d) as unknown as Element[];
const sources = readdirSync('src/embed').map((name) => readFileSync(join('src/embed', name), 'utf8'));

describe('the manifest', () => {
  it('keeps to the published schema', () => {
    const schema = JSON.parse(
      readFileSync('node_modules/custom-elements-manifest/schema.json', 'utf8'),
    ) as object;
    const validate = new Ajv({ strict: false }).compile(schema);
    expect(validate(manifest), JSON.stringify(validate.errors)).toBe(true);
    expect(validate({ ...manifest, modules: [{ path: 1 }] })).toBe(false);
  });

  it('has the four elements', () => {
    expect(elements.map((e) => e.tagName).sort()).toEqual(
      ['chart', 'checks', 'gauge', 'look-up'].map((name) => `ls-embed-${name}`),
    );
  });

  it.each(elements.map((e) => [e.tagName, e] as const))('%s says what everything is', (_, e) => {
    expect(e.description).not.toBe('');
    expect(e.members.length).toBeGreaterThan(3);
    for (const list of [e.members, e.events, e.cssParts, e.cssProperties])
      for (const { name, description } of list) expect(description, name).toMatch(/\S/);
  });

  it('names each part, each event and each custom property that the sources have, and no other', () => {
    const all = sources.join('\n');
    const found = (pattern: RegExp): string[] => [...all.matchAll(pattern)].map(([, name = '']) => name);
    const said = (of: (e: Element) => Said[]): string[] => elements.flatMap(of).map(({ name }) => name);
    expect(new Set(found(/\bpart="([\w-]+)"/g))).toEqual(new Set(said((e) => e.cssParts)));
    expect(new Set(found(/static readonly type = '([\w-]+)'/g))).toEqual(new Set(said((e) => e.events)));
    const colours = found(/^ {2}'?([\w-]+)'?: \['#/gm).map((name) => `--ls-embed-${name}`);
    const own = found(/var\((--ls-embed-(?:font|label))/g);
    expect(colours.length).toBeGreaterThan(5);
    expect(new Set([...colours, ...own])).toEqual(new Set(said((e) => e.cssProperties)));
  });
});

describe('the types', () => {
  /** What the compiler says of a page's script that uses them. */
  const compile = (script: string): string[] => {
    const folder = mkdtempSync(join(tmpdir(), 'latheside-types-'));
    writeFileSync(join(folder, 'latheside-embed.d.ts'), typesOf('src/embed', manifest));
    writeFileSync(join(folder, 'page.ts'), script);
    const program = ts.createProgram([join(folder, 'page.ts')], {
      strict: true,
      noEmit: true,
      target: ts.ScriptTarget.ES2022,
      module: ts.ModuleKind.ESNext,
      moduleResolution: ts.ModuleResolutionKind.Bundler,
      lib: ['lib.es2022.d.ts', 'lib.dom.d.ts'],
      types: [],
    });
    const said = ts
      .getPreEmitDiagnostics(program)
      .map((d) => ts.flattenDiagnosticMessageText(d.messageText, '\n'));
    rmSync(folder, { recursive: true });
    return said;
  };

  it('stand by themselves in a strict script', () => {
    expect(
      compile(`import { useMark, type EmbedMachine, type EmbedThread } from './latheside-embed';
        useMark(',');
        const gauge = document.createElement('ls-embed-gauge');
        const machine: EmbedMachine = { screwPitch: '3 mm' };
        document.createElement('ls-embed-chart').machine = machine;
        document.addEventListener('ls-embed-choose', (event) => {
          const thread: EmbedThread = event.thread;
          gauge.thread = thread.id;
          gauge.fixed = thread.majorMm === null;
        });
        gauge.addEventListener('ls-embed-verdict', ({ verdict }) => verdict === 'within');`),
    ).toEqual([]);
  });

  it('refuse what isn’t so', () => {
    expect(
      compile(`import './latheside-embed';
        document.createElement('ls-embed-gauge').side = 'middle';
        document.addEventListener('ls-embed-answer', ({ colour }) => colour);`),
    ).toHaveLength(2);
  });
});
