import { describe, expect, it } from 'vitest';
import { beginNeeds, type BeginQuestion } from '../../../src/core/run/begin';

const all: BeginQuestion = { passes: 12, speed: 'within', checksLeft: 0, checksFailed: 0 };
const needs = (part: Partial<BeginQuestion>) => beginNeeds({ ...all, ...part });

describe('before a cut begins', () => {
  it('a plan, a speed that stands and every check are there', () => {
    expect(needs({})).toEqual([]);
    expect(needs({ speed: 'near' })).toEqual([]);
  });
  it('what is missing or not known is named, and nothing of it passes', () => {
    expect(needs({ passes: null })).toEqual(['plan']);
    expect(needs({ passes: 0 })).toEqual(['plan']);
    expect(needs({ speed: null })).toEqual(['speed-not-set']);
    expect(needs({ speed: 'over' })).toEqual(['speed-over']);
    expect(needs({ speed: 'unknown' })).toEqual(['speed-unknown']);
    expect(needs({ checksLeft: 1 })).toEqual(['checks']);
    expect(needs({ checksLeft: 3, checksFailed: 1 })).toEqual(['checks-failed']);
    expect(needs({ passes: null, speed: 'over', checksLeft: 9 })).toEqual(['plan', 'speed-over', 'checks']);
  });
});
