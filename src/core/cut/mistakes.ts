/**
 * What spoils threads, most frequent first (common practice, nobody's count). For each the address at which it is set or
 * checked, and those from which a person is led here.
 */
export const MISTAKES = {
  'pitch-for-lead': { at: 'threads', from: ['threads'] },
  'screw-unit': { at: 'machine/field/screwPitch', from: ['machine/field/screwPitch'] },
  'lines-edges': {
    at: 'machine/field/edgesPerLine',
    from: ['machine/field/encoderLines', 'machine/field/edgesPerLine', 'checks/item/ten-turns'],
  },
  'wrong-mark': { at: 'cut/nut', from: ['cut/nut', 'machine/field/dialLines'] },
  'opened-once': { at: 'cut/nut', from: ['cut/nut', 'cut/pass'] },
  'speed-changed': { at: 'speed', from: ['speed', 'cut/pass'] },
  'reversed-tool-in': { at: 'checks/item/withdrawal', from: ['checks/item/withdrawal', 'cut/pass'] },
  'backlash-in': { at: 'machine/field/backlash', from: ['machine/field/backlash', 'checks/item/run-in'] },
  'work-slipped': { at: 'checks/item/work-tight', from: ['checks/item/work-tight', 'cut/pass'] },
  'power-cycled': { at: 'cut/nut/pick-up', from: ['cut/pass', 'machine/field/powerReturn'] },
  'other-nose': { at: 'threads', from: ['threads', 'checks/item/tool'] },
  'wrong-axis': { at: 'machine/field/topScale', from: ['machine/field/topScale', 'checks/item/compound'] },
  'blank-large': { at: 'checks/item/blank', from: ['checks/item/blank', 'cut/work'] },
  'tool-off': { at: 'checks/item/tool', from: ['checks/item/tool'] },
  'ratio-drifts': { at: 'threads/held', from: ['threads/held', 'machine/field/ratioHeld'] },
  'microsteps-differ': {
    at: 'machine/field/microsteps',
    from: ['machine/field/microsteps', 'machine/sheet'],
  },
  'bursts-lost': { at: 'machine/field/pulseTiming', from: ['machine/field/pulseTiming', 'speed'] },
  'noise-loaded': { at: 'machine/noise', from: ['machine/noise', 'checks/item/drift'] },
  'wrong-wires': { at: 'threads/measure', from: ['threads/measure', 'checks/item/gauge'] },
  'measured-warm': { at: 'threads/measure', from: ['threads/measure', 'cut/measure'] },
  'no-chamfer': { at: 'checks/item/chamfer', from: ['checks/item/chamfer', 'cut/stop'] },
  'spring-rubs': { at: 'cut/plan', from: ['cut/plan'] },
  'dial-plate': { at: 'cut/nut', from: ['cut/nut', 'machine/field/dialTeeth'] },
  'rocked-back': { at: 'cut/nut/pick-up', from: ['cut/nut/pick-up'] },
} as const;
export type MistakeId = keyof typeof MISTAKES;

interface Mistake {
  readonly at: string;
  readonly from: readonly string[];
}

/** All of them in their order. */
export const MISTAKE_IDS = Object.keys(MISTAKES) as readonly MistakeId[];

/** Those that are made at an address, which is written without "#/". */
export const mistakesAt = (address: string): readonly MistakeId[] =>
  MISTAKE_IDS.filter((id) => (MISTAKES[id] as Mistake).from.includes(address));
