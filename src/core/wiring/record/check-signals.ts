import { finding, type Finding } from './finding';
import { LAYOUT_IDS, signalsFor } from './layouts';
import { cablesOf, wiresOf, type Entry } from './order';
import { isDifferential, type Cable, type CableKind, type Wire, type WiringRecord } from './shape';
import { arePartners, isDangerous, isEarth, partnerOf } from './signal';

type Usual = readonly [name: string, named: RegExp];
const SUPPLY: Usual = ['+5 V', /^(\+\d|V\+|VCC|VDD)/i];
const RETURN: Usual = ['0 V', /^(0 ?V|GND|COM|V[-−])/i];
const A: Usual = ['A', /^A\+?$/];
const B: Usual = ['B', /^B\+?$/];
const STEP: Usual = ['STEP', /^(STEP|PUL|CLK|CP)/i];
const DIR: Usual = ['DIR', /^(DIR|SIGN|CW)/i];

/** What a cable of a kind hardly works without, by names in common use. */
const USUAL: Readonly<Partial<Record<CableKind, readonly Usual[]>>> = {
  'encoder-single': [SUPPLY, RETURN, A, B],
  'encoder-differential': [SUPPLY, RETURN, A, B],
  'step-single': [STEP, DIR, RETURN],
  'step-differential': [STEP, DIR],
  display: [SUPPLY, RETURN],
};

type Wires = readonly Entry<Wire>[];

const checkUsual = (id: string, cable: Cable, wires: Wires): readonly Finding[] => {
  if (wires.length === 0) return [];
  const names = (USUAL[cable.kind] ?? []).flatMap(([name, named]) =>
    wires.some(([, w]) => named.test(w.signal)) ? [] : [name],
  );
  return names.length > 0 ? [finding('usual-missing', 'unknown', { cable: id, names })] : [];
};

/** A differential signal by a single letter (A, B, Z) needs its other half as much as one that says so. */
const needsPartner = (cable: Cable, signal: string): boolean =>
  partnerOf(signal) !== null || (isDifferential(cable.kind) && /^[A-Z]$/.test(signal));

/** The two halves of a signal go through one twisted pair, and nothing else does. */
const checkPairs = (id: string, cable: Cable, wires: Wires): readonly Finding[] => {
  const found: Finding[] = [];
  const say = (code: Finding['code'], standing: Finding['standing'], ids: readonly string[]): void => {
    found.push(finding(code, standing, { cable: id, wires: ids }));
  };
  for (const [i, [one, w]] of wires.entries()) {
    const mate = wires.find(([, o]) => arePartners(w.signal, o.signal));
    if (!mate && needsPartner(cable, w.signal)) say('partner-missing', 'over', [one]);
    // Each pair is looked at once.
    if (!mate || !isDifferential(cable.kind) || wires.indexOf(mate) < i) continue;
    const [two, m] = mate;
    if (w.pair === null || m.pair === null) say('pair-unknown', 'unknown', [one, two]);
    else if (w.pair !== m.pair) say('pair-split', 'over', [one, two]);
  }
  const numbers = new Set(wires.flatMap(([, w]) => w.pair ?? []));
  for (const n of numbers) {
    const ids = wires.filter(([, w]) => w.pair === n).map(([wire]) => wire);
    if (ids.length > 2) say('pair-crowd', 'over', ids);
  }
  return found.length === 0 && isDifferential(cable.kind) && wires.length > 0
    ? [finding('pairs', 'within', { cable: id })]
    : found;
};

/** In every cable: what is usual is there, halves belong together. */
export const checkSignals = (r: WiringRecord): readonly Finding[] =>
  cablesOf(r).flatMap(([id, cable]) => {
    const wires = wiresOf(r, id);
    return [...checkUsual(id, cable, wires), ...checkPairs(id, cable, wires)];
  });

/** Signals by name: what is found in a cable of mains or inverter and has no business there. */
const SIGNALS = new Set(LAYOUT_IDS.flatMap((kind) => signalsFor(kind)).filter((s) => !isEarth(s)));

/** Mains, inverter and spindle motor share neither cable nor connector with signals; a protective conductor may go with either. */
export const checkDangerous = (r: WiringRecord): readonly Finding[] => {
  const inPower = (w: Wire): boolean => r.cables[w.cable]?.kind === 'power';
  const isPower = (w: Wire): boolean => inPower(w) || isDangerous(w.signal);
  const all = wiresOf(r);
  const misplaced = all.filter(([, w]) => (inPower(w) ? SIGNALS.has(w.signal) : isDangerous(w.signal)));
  const cables = cablesOf(r).flatMap(([cable]) => {
    const wires = misplaced.filter(([, w]) => w.cable === cable).map(([id]) => id);
    return wires.length > 0 ? [finding('dangerous-cable', 'over', { cable, wires })] : [];
  });
  const connectors = Object.keys(r.connectors).flatMap((connector) => {
    const wires = all.filter(([, w]) => [w.from, w.to].some((e) => e?.connector === connector));
    const power = wires.filter(([, w]) => isPower(w)).map(([id]) => id);
    const mixed = power.length > 0 && wires.some(([, w]) => !isPower(w) && !isEarth(w.signal));
    return mixed ? [finding('dangerous-connector', 'over', { connector, wires: power })] : [];
  });
  return [...cables, ...connectors];
};
