/** Files that are almost right: a good one, spoilt at random the same way for the same number. */

/** Mulberry32: numbers from 0 to 1, the same for the same start. */
export const dice = (start: number): (() => number) => {
  let a = start >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

const ODD: readonly unknown[] = [
  null,
  true,
  -1,
  0.5,
  1e300,
  '',
  'x'.repeat(300),
  '\ud800',
  [],
  {},
  [[[[]]]],
  { n: '1', d: '0' },
  { n: 1, d: 2 },
  { n: '1', d: '9'.repeat(60) },
  { ['__proto__x']: 1, constructor: 2 },
  ['a', 'b'],
  'machine',
  2,
];
const SIGNS = ['{', '}', '[', ']', '"', ',', ':', '\\', '0', 'e', '-', '\u0000', '\ufeff', '\ud83d', ' '];

type Tree = Record<string, unknown> | unknown[];
const isTree = (x: unknown): x is Tree => typeof x === 'object' && x !== null;

/** Changes, takes out or adds one thing somewhere in a value. */
const spoil = (x: Tree, roll: () => number): void => {
  const keys = Object.keys(x);
  const key = keys[Math.floor(roll() * keys.length)];
  const tree = x as Record<string, unknown>;
  const pick = structuredClone(ODD[Math.floor(roll() * ODD.length)]);
  if (key === undefined) return;
  const inner = tree[key];
  if (isTree(inner) && Object.keys(inner).length > 0 && roll() < 0.8) return spoil(inner, roll);
  const how = roll();
  if (how < 0.2) delete tree[key];
  else if (how < 0.3)
    Object.defineProperty(tree, '__proto__', {
      value: pick,
      enumerable: true,
      configurable: true,
      writable: true,
    });
  else if (how < 0.4) tree[`x${Math.floor(roll() * 9)}`] = pick;
  else tree[key] = pick;
};

/** A spoilt copy of a file's text. @param again writes its checksum anew, so that a reader gets past that */
export const spoilt = (good: string, number: number, again: (document: object) => string): string => {
  const roll = dice(number);
  const how = roll();
  if (how < 0.3) {
    let text = good;
    for (let n = 1 + Math.floor(roll() * 3); n > 0; n -= 1) {
      const at = Math.floor(roll() * text.length);
      const sign = SIGNS[Math.floor(roll() * SIGNS.length)] ?? '';
      text = text.slice(0, at) + sign + text.slice(at + Math.floor(roll() * 3));
    }
    return text;
  }
  if (how < 0.4) return good.slice(0, Math.floor(roll() * good.length));
  const document = JSON.parse(good) as Record<string, unknown>;
  for (let n = Math.floor(roll() * 3); n >= 0; n -= 1) spoil(document, roll);
  return again(document);
};
