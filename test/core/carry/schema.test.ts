import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { readDocument } from '../../../src/core/carry';
import { spoilt } from './fuzz';
import { again, GOOD as text } from './good';

const schema = JSON.parse(readFileSync('public/schemas/latheside-1.schema.json', 'utf8')) as object;
const isValid = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false }).compile(schema);

describe('the published form of a file', () => {
  it('is kept by what the app writes', () => {
    expect(isValid(JSON.parse(text))).toBe(true);
    expect(again(JSON.parse(text) as object).length).toBeGreaterThan(0);
    expect(readDocument(again(JSON.parse(text) as object)).ok).toBe(true);
  });

  it('can refuse', () => {
    expect(isValid({ ...(JSON.parse(text) as object), version: 2 })).toBe(false);
    const twisted = text.replace('"d": "1"', '"d": "0"');
    expect(twisted).not.toBe(text);
    expect(isValid(JSON.parse(twisted))).toBe(false);
  });

  it('takes everything that the reader takes, and the reader never throws', () => {
    let taken = 0;
    for (let n = 0; n < 4000; n += 1) {
      const wrong = spoilt(text, n, again);
      const read = readDocument(wrong);
      if (!read.ok) continue;
      taken += 1;
      if (!isValid(JSON.parse(wrong.trim()))) throw new Error(`${n}: ${wrong.slice(0, 2000)}`);
    }
    // Some of them are only changed where anything may stand: those show that the reader is past its checksum.
    expect(taken).toBeGreaterThan(50);
  });
});
