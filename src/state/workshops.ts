import { FIELDS, workshopKey } from '../core/machine';
import type { App } from './app';
import { byName } from './machines';

type MachineColour = (typeof FIELDS.colour.options)[number];
type Machine = App['machines']['list'][number];

/** Where machines stand together. */
export interface Workshop {
  readonly key: string;
  /** As most of the machines write it, those used last asked; empty where none was named. */
  readonly name: string;
  /** The one in use first, then by when they were used, then by name. */
  readonly machines: readonly [Machine, ...Machine[]];
}

const ASKED = 9;
const nameOf = (machines: readonly Machine[]): string => {
  const names = machines.slice(0, ASKED).map((m) => m.value.profile.workshop);
  const count = (name: string): number => names.filter((n) => n === name).length;
  return names.reduce((best, name) => (count(name) > count(best) ? name : best));
};

/** All workshops: that of the machine in use first, then by when a machine there was used, then by name. */
export const workshopsOf = ({ machines, machine, settings }: App): readonly Workshop[] => {
  const rank = new Map(settings.used.map((id, i) => [id, i]));
  if (machine) rank.set(machine.id, -1);
  const by = (a: Machine, b: Machine): number => {
    const [i, j] = [rank.get(a.id) ?? Infinity, rank.get(b.id) ?? Infinity];
    return i === j ? 0 : i - j;
  };
  const groups = new Map<string, [Machine, ...Machine[]]>();
  for (const m of [...machines.list].sort(by)) {
    const key = workshopKey(m.value.profile.workshop);
    const known = groups.get(key);
    if (known) known.push(m);
    else groups.set(key, [m]);
  }
  return [...groups]
    .map(([key, all]) => ({ key, name: nameOf(all), machines: all }))
    .sort((a, b) => by(a.machines[0], b.machines[0]) || byName(a.name, b.name));
};

/** A colour that no machine of this workshop has yet; the first one when all are taken. */
export const colourFor = (app: App, workshop: string): MachineColour => {
  const key = workshopKey(workshop);
  const taken = app.machines.list.flatMap(({ value: { profile } }) =>
    workshopKey(profile.workshop) === key ? profile.colour : [],
  );
  const { options } = FIELDS.colour;
  return options.find((c) => !taken.includes(c)) ?? options[0];
};
