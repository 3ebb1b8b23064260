import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import {
  pieceKey,
  sentencesIn,
  sheetsIn,
  waitingForSentences,
  withoutSentences,
  withoutSheets,
} from '../.ci/sentences.js';

/** Runs a module and gives what it exports. */
const run = (code: string, sentences: readonly unknown[]): Record<string, unknown> => {
  const module = ts.ModuleKind.CommonJS;
  const js = ts.transpileModule(code, { compilerOptions: { module, target: ts.ScriptTarget.ES2022 } });
  const exports: Record<string, unknown> = {};
  // eslint-disable-next-line @typescript-eslint/no-implied-eval, @typescript-eslint/no-unsafe-call -- our own text, as the build runs it
  new Function('exports', 'require', js.outputText)(exports, () => ({ sentences }));
  return exports;
};

const apart = (code: string): { code: string; list: unknown[] } => {
  const keys = [...new Set(sentencesIn(code).map(pieceKey))];
  return {
    code: withoutSentences(code, new Map(keys.map((key, i) => [key, i]))),
    list: keys.map((key): unknown => JSON.parse(key)),
  };
};

const TRICKY = `
import { x } from './a file with blanks in its name';
type Kind = 'a kind that is a type alone' | 'short';
export const plain = { 'a key that is a sentence': 'Don’t let it \\'run\\' on, ever.', kind: 'short one' as const };
export const made = (n: number): string => n > 1 ? 'More than one of them, that is.' : \`\${n} of them, not a sentence by itself\`;
export const bare = \`A sentence in back quotes, with \\\` one inside.\`;
export const twice = ['The same sentence stands here twice.', 'The same sentence stands here twice.'];
export const parts = (n: string): string => \`A \\\`long\\\` beginning of it, then \${\`inside it another, \${n} times, to the end of it\`} and short.\`;
export const chosen = (k: Kind | string): boolean => k === 'a kind that is a type alone';
export const mixed: Readonly<Record<string, unknown>> = {
  first: 'Plain',
  // Said of it: a comment, with a comma.
  count: (n: number): string => (n === 1 ? 'One' : \`\${n} of them\`),
  get later() { return { of: 'a getter, made anew each time' }; },
  inner: { deep: ['a', 'b', 3], word: 'Deep' } as const,
  own: { say: () => 'A sentence inside a function.', plain: 'A sentence beside it.', next: 'more' },
  'last one': 'of all'
} satisfies object;
export const trailing = { ask: () => 'Ask', a: 'first of three', b: 'second of three', c: 'third of three', };
const base = { a: 'spread first', b: 'then overridden' };
export const spread = { a: 'before the spread', ...base, b: 'after the spread', [\`c\${1}\`]: 'computed' };
export const small = { a: 'b' };
export const fresh = () => ({ list: ['made', 'anew', 'each', 'time'] });
`;

describe('sentences put apart by the build', () => {
  it('leave a module that says the same', () => {
    const { code, list } = apart(TRICKY);
    const [before, after] = [run(TRICKY, []), run(code, list)];
    const said = (m: Record<string, unknown>): unknown =>
      JSON.parse(
        JSON.stringify(m, (_k, x: unknown) =>
          typeof x === 'function' ? `made: ${String((x as (n: number) => unknown)(2))}` : x,
        ),
      );
    expect(said(after)).toEqual(said(before));
    expect(after.bare).toBe('A sentence in back quotes, with ` one inside.');
    const made = (m: Record<string, unknown>, n: number) => (m.made as (n: number) => string)(n);
    expect([made(after, 1), made(after, 2)]).toEqual([made(before, 1), made(before, 2)]);
    const parts = (m: Record<string, unknown>) => (m.parts as (n: string) => string)('two');
    expect(parts(after)).toBe(
      'A `long` beginning of it, then inside it another, two times, to the end of it and short.',
    );
    expect((after.chosen as (k: string) => boolean)('a kind that is a type alone')).toBe(true);
    expect((after.mixed as { count: (n: number) => string }).count(2)).toBe('2 of them');
    expect(after.spread).toEqual({ a: 'spread first', b: 'after the spread', c1: 'computed' });
    expect(code).toContain("from './a file with blanks in its name'");
    // What a function gives is nobody else's.
    const fresh = after.fresh as () => unknown;
    expect(fresh()).not.toBe(fresh());
  });

  it('take whole objects and lists, and of an object with functions what is plain', () => {
    const { list } = apart(TRICKY);
    expect(list).toContainEqual({
      'a key that is a sentence': "Don’t let it 'run' on, ever.",
      kind: 'short one',
    });
    expect(list).toContainEqual({
      first: 'Plain',
      inner: { deep: ['a', 'b', 3], word: 'Deep' },
      'last one': 'of all',
    });
    expect(list).toContainEqual({ a: 'first of three', b: 'second of three', c: 'third of three' });
    expect(list).not.toContainEqual({ a: 'b' });
  });

  it('leave none behind in any module of words, and no place empty', () => {
    for (const file of readdirSync('src/text', { recursive: true, encoding: 'utf8' })) {
      if (!file.endsWith('.ts')) continue;
      const { code } = apart(readFileSync(join('src/text', file), 'utf8'));
      expect(sentencesIn(code), file).toEqual([]);
      expect(code, file).not.toContain('sentences[-1]');
    }
  });
});

describe('style sheets put apart by the build', () => {
  const code = `
    import { css } from 'lit';
    export const plain = css\`
      p {
        color: red; /* of what is said */
      }
    \`;
    export const valued = css\`b { margin: \${x} }\`;
  `;

  it('are taken whole, without comments and blanks; one with a value in it stays', () => {
    expect(sheetsIn(code)).toEqual(['p { color: red; }']);
    const out = withoutSheets(code, new Map([[JSON.stringify('p { color: red; }'), 7]]));
    expect(out).toContain('plain = unsafeCSS(sentences[7]);');
    expect(out).toContain('valued = css`b { margin: ${x} }`');
    expect(withoutSheets('const css = 1;', new Map())).toBe('const css = 1;');
  });
});

describe('modules that need them', () => {
  it('are asked for once they are there', () => {
    expect(waitingForSentences('function preload(baseModule) { return baseModule().catch(e); }')).toContain(
      '{ return asked().then(baseModule).catch(e); }',
    );
  });

  it('by a helper of another kind are no longer waited for, which the build must say', () => {
    expect(() => waitingForSentences('function preload(load) { return load(); }')).toThrow('has changed');
  });
});
