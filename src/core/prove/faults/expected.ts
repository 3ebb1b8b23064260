import { countsPerRev } from '../../drive/gearing';
import { screwPerSpindle } from '../../drive/trains/turns';
import type { MachineProfile } from '../../machine';
import { boxOf, fixedOf, mountedOf } from '../../machine/gears';
import { div, inBase, mul, type Ratio } from '../../quantity';
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
