import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { COMMISSIONING } from '../../src/core/context';
import { testById } from '../../src/core/prove';
import { choiceLabel, codeText, optionName, pointText, readingLabel, testText } from '../../src/text/prove';
import { setWords } from '../../src/text/words';
import { given } from '../core/prove/support';

afterEach(() => setWords('uk'));

/** What core returns, as it stands in its source: words are asked for each. */
const source = readdirSync('src/core/prove')
  .filter((file) => file.endsWith('.ts'))
  .map((file) => readFileSync(`src/core/prove/${file}`, 'utf8'))
  .join('\n');
const found = (pattern: RegExp): string[] => [...source.matchAll(pattern)].map((m) => m[1] ?? '');

describe('the words of the commissioning tests', () => {
  it('name every reading, choice and option', () => {
    for (const id of COMMISSIONING) {
      const test = testById(id);
      if (!test) throw new Error(id);
      expect(testText[id].steps().length).toBeGreaterThan(0);
      for (const choices of [{}, { instrument: 'pitch-gauge' }, { inverter: 'none' }])
        for (const r of test.readings(given({}, choices)))
          expect([id, readingLabel(id, r.id)]).not.toEqual([id, r.id]);
      for (const c of test.choices) {
        expect(choiceLabel(c.id)).not.toBe(c.id);
        for (const o of c.options) expect([c.id, optionName(c.id, o)]).not.toEqual([c.id, o]);
      }
    }
  });

  it('say why for every code that core returns, and what each points to', () => {
    const codes = found(/decision\(\s*'\w+',\s*'([\w-]+)'/g);
    expect(codes.length).toBeGreaterThan(20);
    for (const code of [
      ...codes,
      'length-agrees',
      'length-differs',
      'too-coarse',
      'ramp-kept',
      'screw-agrees',
    ])
      expect([code, typeof codeText[code]]).toEqual([code, 'string']);
    const points = found(/points(?:: | = )(\[[^\]]*\])/g).flatMap((list) =>
      [...list.replace(/longer\([^)]*\)/g, '').matchAll(/'([\w-]{4,})'/g)].map((m) => m[1] ?? ''),
    );
    expect(points.length).toBeGreaterThan(15);
    for (const p of points) expect([p, pointText(p) === p]).toEqual([p, false]);
  });

  it('are of the trade on either side of the Atlantic', () => {
    setWords('us');
    expect(pointText('inverter-noise')).toContain('VFD');
    expect(testText['look-over'].steps().join(' ')).toContain('set screw');
    expect(pointText('screens')).toContain('shield');
    expect(choiceLabel('inverter')).toBe('VFD');
  });
});
