import { channelPerRpm } from '../../drive';
import { MARGIN_ELECTRONIC, standingOf } from '../../figures/standing';
import type { FieldName, MachineProfile } from '../../machine';
import { compare, div, inBase, max, mul, sub, type Ratio, type Stated } from '../../quantity';
import { finding, type Finding, type Missing } from './finding';
import { NEEDS_SCREEN } from './layouts';
import { bitRate, differentialReach, SINGLE_ENDED_REACH } from './reach';
import { SECTIONS } from './section';
import { isDifferential, type Bond, type Cable } from './shape';
import { longestSupply, supplyDrop } from './supply-drop';

const ofCable = (field: Extract<Missing, { of: 'cable' }>['field']): Missing => ({ of: 'cable', field });
const metres = (length: Stated): Ratio => div(inBase(length), 1000);

const DIRECT: readonly (Bond | null)[] = ['clamp', 'shell', 'wire'];

/**
 * How a cable's screen is bonded. Common practice of drive makers: digital signals at both ends, low-impedance; one end
 * direct and a capacitor at the other where a loop hums; a motor's always at both. A wire is a poor bond at high frequency.
 */
const checkScreen = (cable: Cable): Finding | null => {
  const { kind, screen, bondFrom, bondTo } = cable;
  const needs = NEEDS_SCREEN.includes(kind);
  if (screen === null)
    return needs ? finding('screen-unknown', 'unknown', { missing: [ofCable('screen')] }) : null;
  if (screen === 'no') return needs ? finding('screen-none', 'near') : null;
  const unknown = (['bondFrom', 'bondTo'] as const).filter((f) => cable[f] === null);
  if (unknown.length > 0) return finding('screen-unknown', 'unknown', { missing: unknown.map(ofCable) });
  const bonds = [bondFrom, bondTo];
  const direct = bonds.filter((b) => DIRECT.includes(b)).length;
  if (direct === 0) return finding('screen-open', 'over');
  if (direct === 1 && (kind === 'motor' || bonds.includes('open')))
    return finding('screen-one-end', kind === 'motor' ? 'over' : 'near');
  return bonds.includes('wire') ? finding('screen-pigtail', 'near') : finding('screen', 'within');
};

/** Drop along the supply's two conductors against what the far end bears; asked of encoders, and wherever it was begun. */
const checkSupply = (cable: Cable): Finding | null => {
  const { length, section, supply, least, current } = cable;
  if (!cable.kind.startsWith('encoder') && !supply && !least && !current) return null;
  if (!length || !section || !supply || !least || !current) {
    const fields = ['length', 'section', 'supply', 'least', 'current'] as const;
    const missing = fields.filter((f) => cable[f] === null).map(ofCable);
    return finding('supply', 'unknown', { missing });
  }
  const allowed = sub(inBase(supply), inBase(least));
  if (compare(allowed, 0) <= 0) return finding('supply-below', 'over');
  const perKm = SECTIONS[section];
  const drop = supplyDrop(metres(length), inBase(current), perKm);
  const values = {
    drop,
    allowed,
    length: metres(length),
    reach: longestSupply(allowed, inBase(current), perKm),
  };
  return finding('supply', standingOf(drop, allowed, MARGIN_ELECTRONIC), { values });
};

interface Rate {
  readonly rate: Ratio | null;
  readonly missing: readonly FieldName[];
}

const known = (m: MachineProfile, fields: readonly FieldName[]): readonly FieldName[] =>
  fields.filter((f) => m[f] === null);

/** The fastest that the spindle can be set to, rpm. */
const fastest = (m: MachineProfile): Rate => {
  if (m.spindleDrive === 'speeds') {
    const [first, ...rest] = (m.spindleSpeeds ?? []).map((s) => s.value);
    return first ? { rate: max(first, ...rest), missing: [] } : { rate: null, missing: ['spindleSpeeds'] };
  }
  const missing: FieldName[] = m.spindleDrive === null ? ['spindleDrive'] : known(m, ['spindleMax']).slice();
  return { rate: missing.length === 0 && m.spindleMax ? m.spindleMax.value : null, missing };
};

/** Bits a second in one encoder channel at the spindle's highest speed. */
const encoderRate = (m: MachineProfile): Rate => {
  const speed = fastest(m);
  const missing = [...known(m, ['encoderLines', 'spindlePulley', 'encoderPulley']), ...speed.missing];
  const { encoderLines: lines, spindlePulley: spindle, encoderPulley: encoder } = m;
  if (!lines || !spindle || !encoder || !speed.rate) return { rate: null, missing };
  const perRpm = channelPerRpm({ lines: lines.value, spindle: spindle.value, encoder: encoder.value });
  return { rate: bitRate(mul(perRpm, speed.rate)), missing };
};

/** Step pulses as fast as the controller sends them. */
const stepRate = (m: MachineProfile): Rate => ({
  rate: m.controllerMaxSteps && bitRate(inBase(m.controllerMaxSteps)),
  missing: known(m, ['controllerMaxSteps']),
});

const checkReach = (cable: Cable, m: MachineProfile): Finding | null => {
  const { kind } = cable;
  const encoder = kind.startsWith('encoder');
  if (!encoder && !kind.startsWith('step')) return null;
  const noLength = cable.length ? [] : [ofCable('length')];
  const length = cable.length && metres(cable.length);
  const judged = (code: 'reach-single' | 'reach-differential', reach: Ratio, rate?: Ratio): Finding =>
    length
      ? finding(code, standingOf(length, reach, MARGIN_ELECTRONIC), {
          values: { length, reach, ...(rate ? { rate } : {}) },
        })
      : finding(code, 'unknown', { missing: noLength });
  if (!isDifferential(kind)) return judged('reach-single', SINGLE_ENDED_REACH);
  const { rate, missing } = encoder ? encoderRate(m) : stepRate(m);
  if (!rate || missing.length > 0) {
    const ofMachine = missing.map((field) => ({ of: 'machine', field }) as const);
    return finding('reach-differential', 'unknown', { missing: [...noLength, ...ofMachine] });
  }
  const reach = differentialReach(rate);
  return reach
    ? judged('reach-differential', reach, rate)
    : finding('reach-too-fast', 'over', { values: { rate } });
};

/** A stop circuit is closed while nobody presses, so that a broken wire stops too (ISO 13850, IEC 60204-1). */
const checkContacts = ({ kind, contacts }: Cable): Finding | null => {
  if (kind !== 'stop') return null;
  if (contacts === null) return finding('contacts-unknown', 'unknown', { missing: [ofCable('contacts')] });
  return contacts === 'closed' ? finding('contacts', 'within') : finding('contacts-open', 'over');
};

/** What can be said of one cable by its own figures and the machine's. */
export const checkCable = (id: string, cable: Cable, machine: MachineProfile): readonly Finding[] =>
  [checkScreen(cable), checkSupply(cable), checkReach(cable, machine), checkContacts(cable)].flatMap((f) =>
    f ? [{ ...f, cable: id }] : [],
  );
