import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { changedLater, classicOf, takingFrom } from '../.ci/classic.js';

/** Runs a classic script as a page does, and gives what it put out for others. */
const run = (code: string): { shared: Record<string, unknown>; seen: unknown[] } => {
  const seen: unknown[] = [];
  const world: Record<string, unknown> = {
    document: { currentScript: { src: 'https://a.example/assets/start.js' } },
    see: (x: unknown) => seen.push(x),
  };
  runInNewContext(code, world);
  return { shared: (world.lathesideFirst ?? {}) as Record<string, unknown>, seen };
};

describe('two modules as one classic script', () => {
  it('run in their order, strictly, and put out what the modules after them take', () => {
    const first = 'const n=2;function twice(){return n*2}class C{}export{twice as a,C as default,n};';
    const entry =
      'import{a as e,n}from"./first.js";var twice=null;see(e());see(n);see(function(){return this}());see(twice)';
    const { shared, seen } = run(classicOf(first, entry, 'first.js'));
    expect(seen).toEqual([4, 2, undefined, null]);
    expect(Object.keys(shared)).toEqual(['a', 'default', 'n']);
    expect((shared.a as () => number)()).toBe(4);
  });

  it('know their own address, and import what comes later', () => {
    const first = 'see(import.meta.url);const later=()=>import(`./rest.js`);export{later as a};';
    const code = classicOf(first, 'import{a}from"./first.js";see(typeof a)', 'first.js');
    expect(code).toContain('import(`./rest.js`)');
    expect(run(code).seen).toEqual(['https://a.example/assets/start.js', 'function']);
  });

  it('names in one of them don’t touch those of the other', () => {
    const first = 'const p=1;function f(){return p}export{f as a};';
    const entry = 'import{a}from"./first.js";var p=null;function f(){return 7}see(a());see(f())';
    expect(run(classicOf(first, entry, 'first.js')).seen).toEqual([1, 7]);
  });

  it('are refused where a name gets another value later, which its takers would not see', () => {
    const changing = 'let n=0;const up=()=>{n+=1};export{n as a,up};';
    expect(changedLater(changing)).toEqual(['n']);
    expect(() => classicOf(changing, '', 'first.js')).toThrow(/another value later: n/);
    expect(changedLater('let n=0;const up=()=>{n++};export{n as a,up};')).toEqual(['n']);
    // At the top, before anybody takes it; or another variable of the same name.
    expect(changedLater('let n=0;n=1;const up=n=>{n+=1};export{n as a,up};')).toEqual([]);
  });

  it('are refused where they need another module, or export in another way', () => {
    expect(() => classicOf('import{x}from"./other.js";export{x as a};', '', 'first.js')).toThrow(
      /more than itself/,
    );
    expect(() => classicOf('export*from"./other.js";', '', 'first.js')).toThrow(/not know/);
    expect(() => classicOf('', 'import*as all from"./first.js";', 'first.js')).toThrow(/not know/);
  });

  it('leave the modules after them as they are but for where the names come from', () => {
    const rest = 'import{a as e,n}from"./first.js";import{z}from"./other.js";const t=`from"./first.js"`;';
    expect(takingFrom(rest, 'first.js')).toBe(
      'const{a:e,n}=lathesideFirst;import{z}from"./other.js";const t=`from"./first.js"`;',
    );
  });
});
