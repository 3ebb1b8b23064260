import { countsPerRev } from '../../drive/gearing';
import { screwPerSpindle, trainRatio } from '../../drive/trains/turns';
import type { MachineProfile } from '../../machine';
import { boxOf, fixedOf, mountedOf } from '../../machine/gears';
import { div, inBase, mul, ONE, type Ratio } from '../../quantity';
import { STANDS, type ChainField, type Part } from './change';
import type { Expected } from './reading';

/**
 * What the profile expects of each test, at the lead that is set (mm; null: none). With change gears the train that is
 * mounted decides, and there are no counts.
 */
export const expectedOf = (m: MachineProfile, leadMm: Ratio | null): Expected => {
  const screw = m.screwPitch && m.screwStarts ? mul(inBase(m.screwPitch), m.screwStarts.value) : null;
  if (m.driveKind === 'change-gears') {
    const [fixed, box, train] = [fixedOf(m), boxOf(m), mountedOf(m)];
    const turns = fixed && box && train ? screwPerSpindle({ fixed, box }, train) : null;
    return { counts: null, screw: turns, carriage: screw };
  }
  const { encoderLines: lines, edgesPerLine: edges, spindlePulley: spindle, encoderPulley: encoder } = m;
  const counts =
    lines && edges && spindle && encoder
      ? countsPerRev({
          lines: lines.value,
          edges: edges.value,
          spindle: spindle.value,
          encoder: encoder.value,
        })
      : null;
  return { counts, screw: leadMm && screw ? div(leadMm, screw) : null, carriage: screw };
};

const ABOVE: Readonly<Record<Part, 1 | -1>> = { counts: 1, steps: -1, lead: 1, train: 1, thread: 1 };

/**
 * What the controller's ratio rests on, as one number: counts ÷ steps × screw lead × wheels, of the fields that are
 * known. While it stays the same, so does what is set, and a travel read with it still says something.
 */
export const settingsOf = (m: MachineProfile): Ratio => {
  const train = mountedOf(m);
  const wheels = m.driveKind === 'change-gears' && train ? trainRatio(train.stages) : ONE;
  return (Object.keys(STANDS) as ChainField[]).reduce((r, field) => {
    const value = m[field];
    if (!value) return r;
    const [part, side] = STANDS[field];
    return ABOVE[part] * side > 0 ? mul(r, inBase(value)) : div(r, inBase(value));
  }, wheels);
};
