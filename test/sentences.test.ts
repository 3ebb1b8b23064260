import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { sentencesIn, withoutSentences } from '../.ci/sentences.js';

/** Runs a module and gives what it exports. */
const run = (code: string, sentences: readonly string[]): Record<string, unknown> => {
  const module = ts.ModuleKind.CommonJS;
  const js = ts.transpileModule(code, { compilerOptions: { module, target: ts.ScriptTarget.ES2022 } });
  const exports: Record<string, unknown> = {};
  // eslint-disable-next-line @typescript-eslint/no-implied-eval, @typescript-eslint/no-unsafe-call -- our own text, as the build runs it
  new Function('exports', 'require', js.outputText)(exports, () => ({ sentences }));
  return exports;
};

const apart = (code: string): { code: string; list: string[] } => {
  const list = [...new Set(sentencesIn(code).map(({ text }) => text))];
  return { code: withoutSentences(code, new Map(list.map((text, i) => [text, i]))), list };
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
`;

describe('sentences put apart by the build', () => {
  it('leave a module that says the same', () => {
    const { code, list } = apart(TRICKY);
    const [before, after] = [run(TRICKY, []), run(code, list)];
    expect(after.plain).toEqual(before.plain);
    expect(after.bare).toBe('A sentence in back quotes, with ` one inside.');
    expect(after.twice).toEqual(before.twice);
    const made = (m: Record<string, unknown>, n: number) => (m.made as (n: number) => string)(n);
    expect([made(after, 1), made(after, 2)]).toEqual([made(before, 1), made(before, 2)]);
    const parts = (m: Record<string, unknown>) => (m.parts as (n: string) => string)('two');
    expect(parts(after)).toBe(
      'A `long` beginning of it, then inside it another, two times, to the end of it and short.',
    );
    expect((after.chosen as (k: string) => boolean)('a kind that is a type alone')).toBe(true);
    expect(list).toHaveLength(8);
    expect(code).toContain("'a key that is a sentence': sentences[");
    expect(code).toContain("from './a file with blanks in its name'");
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
