import { inBase, toNumber, type Stated } from '../../core/quantity';
import * as wires from '../../core/thread/wires';
import type { Thread } from '../../core/thread';
import type { MeasureKey, Way } from '../../text/measure';

/** What the page knows of how it is measured. Lengths in mm. */
export interface Measuring {
  readonly way: Way;
  readonly instrument: wires.Instrument;
  readonly wireKind: wires.WireKind;
  readonly read: (key: MeasureKey) => Stated | null;
}

export interface Found {
  readonly value: number;
  readonly u: number | null;
}
export type Answer =
  | { readonly kind: 'found'; readonly found: Found }
  | { readonly kind: 'refused'; readonly refusal: wires.WireRefusal }
  | { readonly kind: 'waiting' };

/** Figures each way asks for, in the order in which they are read. */
export const READINGS: Readonly<Record<Way, readonly MeasureKey[]>> = {
  three: ['measure.over'],
  one: ['measure.one', 'measure.major'],
  two: ['measure.cylinder', 'measure.onCylinder', 'measure.onThread'],
  micrometer: ['measure.standard', 'measure.shown', 'measure.mic'],
  gauge: [],
};

/** A DRO reads a slide on a bench; across wires held by hand it reads nothing. */
export const instrumentsFor = (way: Way): readonly wires.Instrument[] =>
  way === 'two' ? ['coarse', 'fine', 'dro', 'caliper'] : ['coarse', 'fine', 'caliper'];

/** The pitch diameter that follows from what was read, mm. */
export const answerOf = (thread: Thread, m: Measuring): Answer => {
  const u = wires.INSTRUMENT_U[m.instrument];
  const read = (key: MeasureKey, by: number = u): { value: number; u: number } | null => {
    const s = m.read(key);
    return s && { value: toNumber(inBase(s)), u: by };
  };
  if (m.way === 'gauge') return { kind: 'waiting' };
  if (m.way === 'micrometer') {
    const [mic, shown, actual] = [read('measure.mic'), read('measure.shown'), read('measure.standard')];
    return mic && shown && actual
      ? { kind: 'found', found: wires.threadMicrometer(mic, { actual, shown }) }
      : { kind: 'waiting' };
  }
  const wire = read('measure.wire', wires.WIRE_U[m.wireKind]);
  const reading = ((): wires.WireReading | null => {
    if (m.way === 'three') {
      const over = read('measure.over');
      return over && { kind: 'over', over };
    }
    if (m.way === 'one') {
      const [one, major] = [read('measure.one'), read('measure.major')];
      return one && major && { kind: 'one-wire', reading: one, major };
    }
    const [cylinder, on, onThread] = [
      read('measure.cylinder'),
      read('measure.onCylinder'),
      read('measure.onThread'),
    ];
    const difference = on &&
      onThread && { value: onThread.value - on.value, u: Math.hypot(on.u, onThread.u) };
    return cylinder && difference && { kind: 'compared', cylinder, difference };
  })();
  if (!wire || !reading) return { kind: 'waiting' };
  const e = wires.pitchDiameterFromReading(wires.wireThreadOf(thread), reading, wire);
  return e.ok
    ? { kind: 'found', found: { value: e.pitchDiameter, u: e.u } }
    : { kind: 'refused', refusal: e.refusal };
};
