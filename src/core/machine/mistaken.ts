import type { MachineProfile } from './fields';
import { workshopKey } from './workshop';

/** Signs that look alike in most typefaces, and what each counts as. */
const LOOKALIKES: readonly (readonly [RegExp, string])[] = [
  [/rn/g, 'm'],
  [/vv/g, 'w'],
  [/[il|]/g, '1'],
  [/o/g, '0'],
];

/** What of a name is seen from a step away: its letters and figures. */
const plainName = (name: string): string => workshopKey(name).replace(/[^\p{L}\p{N}|]/gu, '');

const asSeen = (plain: string): string =>
  LOOKALIKES.reduce((text, [sign, as]) => text.replace(sign, as), plain);

/** Shorter names differ enough by one sign: whoever calls two lathes A and B means it. */
const LONG = 3;

/** Whether one sign put in, left out, changed, or swapped with its neighbour makes one name of the other. */
const oneApart = (a: string, b: string): boolean => {
  const [short, long] = a.length < b.length ? [a, b] : [b, a];
  const more = long.length - short.length;
  if (short.length < LONG || more > 1) return false;
  let at = 0;
  while (at < short.length && short[at] === long[at]) at += 1;
  const rest = short.slice(at + 1);
  return more === 1
    ? short.slice(at) === long.slice(at + 1)
    : rest === long.slice(at + 1) ||
        (short[at] === long[at + 1] && short[at + 1] === long[at] && rest.slice(1) === long.slice(at + 2));
};

/** Whether two machines' names could be taken for each other. */
export const namesAlike = (one: string, other: string): boolean => {
  const [a, b] = [plainName(one), plainName(other)];
  return asSeen(a) === asSeen(b) || oneApart(a, b);
};

type Marked = Pick<MachineProfile, 'name' | 'colour'>;

/** What a machine could be mistaken for among others of its workshop: the first of its colour, the first of a name like its own. */
export const mistakenFor = (
  machine: Marked,
  others: readonly Marked[],
): { readonly colour: string | null; readonly name: string | null } => ({
  colour: (machine.colour && others.find((o) => o.colour === machine.colour)?.name) ?? null,
  name: others.find((o) => namesAlike(o.name, machine.name))?.name ?? null,
});
