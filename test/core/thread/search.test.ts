import { describe, expect, it } from 'vitest';
import { catalogue, FAMILIES, threadById, threadsOf } from '../../../src/core/thread/catalogue';
import { indexThreads, search, warmSearch } from '../../../src/core/thread/search';
import { withStarts } from '../../../src/core/thread/starts';

const names = (q: string, more: object = {}): string[] =>
  search(q, { limit: 12, ...more }).map((t) => t.designation);

describe('search', () => {
  it('finds the whole size first, coarse before fine, and numbered sizes too', () => {
    const found = names('10');
    expect(found.slice(0, 4)).toEqual(['M10×1.5', 'M10×1.25', 'M10×1', 'M10×0.75']);
    expect(found).toContain('No. 10-24 UNC');
    expect(found).toContain('No. 10-32 UNF');
  });
  it.each([
    ['10x1', 'M10×1'],
    ['M10x1.25', 'M10×1.25'],
    ['m10 1', 'M10×1'],
    ['10×1,25', 'M10×1.25'],
    ['1/4-20', '1/4-20 UNC'],
    ['1/4 28', '1/4-28 UNF'],
    ['1 1/2', '1 1/2-6 UNC'],
    ['1-1/2-12', '1 1/2-12 UNF'],
    ['#10', 'No. 10-24 UNC'],
    ['no. 10-32', 'No. 10-32 UNF'],
    ['2 ba', '2 BA'],
    ['2ba', '2 BA'],
    ['bsf 1/4', '1/4-26 BSF'],
    ['g 1/2', 'G 1/2'],
    ['bsp 1/2', 'G 1/2'],
    ['npt 1/2', '1/2-14 NPT'],
    ['11 1/2 tpi', '1-11.5 NPT'],
    ['tr20', 'Tr20×4'],
    ['acme 1/2', '1/2-10 Acme'],
    ['13tpi', '1/2-13 UNC'],
    ['rms', 'RMS 0.8-36'],
    ['module 1.5', 'Module 1.5'],
    ['10x1.50', 'M10×1.5'],
    ['.25', '1/4-20 UNC'],
  ])('%s gives %s first', (q, first) => {
    expect(names(q)[0]).toBe(first);
  });
  it('0.8 finds the pitch and the diameter', () => {
    const found = names('0.8');
    expect(found).toContain('M5×0.8');
    expect(found).toContain('RMS 0.8-36');
  });
  it('"13 tpi" gives 13 threads per inch and nothing else; so does the unit', () => {
    for (const found of [search('13 tpi', { limit: 50 }), search('13', { limit: 50, unit: 'tpi' })]) {
      expect(found.length).toBeGreaterThan(0);
      expect(found.every((t) => t.pitch.unit === 'tpi' && t.pitch.value.n === 13n * t.pitch.value.d)).toBe(
        true,
      );
    }
  });
  it('the unit keeps the other system out', () => {
    expect(
      search('1', { limit: 500, unit: 'mm' }).every(
        (t) => t.pitch.unit === 'mm' || t.pitch.unit === 'module',
      ),
    ).toBe(true);
    expect(search('1', { limit: 500, unit: 'in' }).some((t) => t.pitch.unit === 'mm')).toBe(false);
  });
  it.each([
    ['1', '10', '10x', '10x1', '10x1.2', '10x1.25'],
    ['1/', '1/4', '1/4-', '1/4-2', '1/4-20'],
    ['2', '2b', '2ba'],
    ['1', '1 1', '1 1/', '1 1/2', '1 1/2-6'],
  ])('each key narrows: %s …', (...typed) => {
    const sets = typed.map((q) => new Set(search(q, { limit: 1e6 }).map((t) => t.id)));
    for (let i = 1; i < sets.length; i++) {
      const wider = sets[i - 1] as Set<string>;
      expect([...(sets[i] as Set<string>)].every((id) => wider.has(id))).toBe(true);
      expect((sets[i] as Set<string>).size).toBeGreaterThan(0);
    }
  });
  it('favourites go first among equals, then recent ones; not before a better match', () => {
    const more = {
      favourites: new Set(['iso-fine:M10x0.75', 'iso-fine:M100x2']),
      recent: ['iso-fine:M10x1'],
    };
    const found = names('10', more);
    expect(found.slice(0, 3)).toEqual(['M10×0.75', 'M10×1', 'M10×1.5']);
    expect(found.indexOf('M100×2')).not.toBe(0);
  });
  it('nothing typed: recent, then favourites', () => {
    expect(names('', { recent: ['unc:1/4-20'], favourites: new Set(['ba:2', 'gone']) })).toEqual([
      '1/4-20 UNC',
      '2 BA',
    ]);
    expect(names('')).toEqual([]);
  });
  it('finds a person’s own threads before the catalogue’s', () => {
    const t = threadById('iso-coarse:M10');
    if (!t) throw new Error();
    const own = [indexThreads([{ ...t, id: 'own:1', family: 'own', designation: 'spindle nose' }])];
    expect(search('10', { limit: 3, own })[0]?.id).toBe('own:1');
    expect(search('spin', { limit: 3, own })[0]?.id).toBe('own:1');
  });
  it.each(['zzz', '99999', '1//', '../', '%', '10x1x1x1'])('%s finds nothing and breaks nothing', (q) => {
    expect(names(q)).toEqual([]);
  });
  it('never gives more than asked, nor a thread twice', () => {
    const found = search('1', { limit: 40 });
    expect(found).toHaveLength(40);
    expect(new Set(found.map((t) => t.id)).size).toBe(40);
  });
  it('warms up in steps', () => {
    let steps = 0;
    while (warmSearch()) steps++;
    // A step for each family, and sixty look-ups that make it quick.
    expect(steps).toBeGreaterThanOrEqual(59);
    expect(steps).toBeLessThan(FAMILIES.length + 60);
  });
});

describe('catalogue', () => {
  it('has at least 1,500 designations under ids of their own', () => {
    const all = catalogue();
    expect(new Set(all.map((t) => t.id)).size).toBe(all.length);
    expect(new Set(all.map((t) => t.designation)).size).toBeGreaterThanOrEqual(1500);
  });
  it('every thread is found by its id, by its family, and by typing its size', () => {
    for (const t of catalogue()) {
      expect(threadById(t.id)).toBe(t);
      expect(threadsOf(t.family)).toContain(t);
      expect(search(t.size, { limit: 1e6 })).toContain(t);
    }
  });
  it('unknown ids and families give nothing', () => {
    expect(threadById('iso-coarse:M999')).toBeUndefined();
    expect(threadById('tr:Tr40x7*99')).toBeUndefined();
    expect(threadsOf('nothing')).toEqual([]);
  });
  it('multi-start variants keep the pitch and are written as the standards do', () => {
    expect(threadById('tr:Tr40x7*2')).toMatchObject({
      designation: 'Tr40×14(P7)',
      starts: 2,
      id: 'tr:Tr40x7*2',
    });
    expect(threadById('iso-fine:M16x1.5*2')?.designation).toBe('M16×Ph3P1.5');
    expect(threadById('acme:1/2-10*2')?.designation).toBe('1/2-0.1P-0.2L Acme');
    const t = threadById('tr:Tr40x7*2');
    if (!t) throw new Error();
    expect(() => withStarts(t, 2)).toThrow(RangeError);
    expect(() => withStarts(t, 1.5)).toThrow(RangeError);
  });
});
