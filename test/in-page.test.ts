import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { EARLY, LOOK } from '../.ci/in-page.js';
import { HEADERS, PAGE_POLICY } from '../.ci/policy.js';

const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

describe('what stands in the page itself', () => {
  it('is what the policy names, in the README too', () => {
    expect(PAGE_POLICY).toContain(`script-src 'self' ${hash(EARLY)};`);
    expect(PAGE_POLICY).toContain(`style-src 'self' ${hash(LOOK)};`);
    const readme = readFileSync('README.md', 'utf8');
    expect(readme.split(HEADERS['Content-Security-Policy'])).toHaveLength(3);
  });

  it('ends nothing in the page, and is short', () => {
    for (const text of [EARLY, LOOK]) expect(text).not.toMatch(/<\/|<!--/);
    expect(EARLY.length).toBeLessThan(2000);
    expect(LOOK.length).toBeLessThan(6000);
  });

  it('asks for nothing but what lies beside the page', () => {
    const asked = [...LOOK.matchAll(/url\(([^)]*)\)/g)].map(([, address]) => address);
    expect(asked).toEqual(["'./fonts/b612-regular.woff2'", "'./fonts/b612-bold.woff2'"]);
    expect(LOOK).not.toContain('@import');
  });
});
