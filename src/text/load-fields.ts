import type { FieldName } from '../core/machine';
import type { FieldText } from './machine-fields';

const ANSWERS = 'Without it this limit is not known; a ramp test can answer for it.';

type LoadField =
  | 'encoderPhaseError'
  | 'directionWait'
  | 'motorTorque'
  | 'motorPeak'
  | 'torqueCurve'
  | 'motorSupply'
  | 'motorCurrent'
  | 'motorInductance'
  | 'rotorInertia'
  | 'rampTime'
  | 'cuttingForce'
  | 'carriageMass'
  | 'slideFriction'
  | 'screwEfficiency'
  | 'screwDiameter'
  | 'screwLength'
  | 'screwEnds';

/** What the load, the torque and the shortest times are asked as. Each may be left open: a ramp test answers for all. */
export const loadFields: Readonly<Record<LoadField & FieldName, FieldText>> = {
  encoderPhaseError: {
    label: 'Phase error of the encoder',
    question: 'How far may its two channels be from 90° apart?',
    where:
      'Data sheet: phase or quadrature error, in electrical degrees. Where none is given, 45° is a careful guess.',
    needed: ANSWERS,
  },
  directionWait: {
    label: 'Wait after a reversal',
    question: 'How long does the controller wait after changing direction?',
    where: 'Its settings or its data sheet: direction set-up. 0 if it sends the step at once.',
    needed: ANSWERS,
  },
  motorTorque: {
    label: 'Torque of the motor',
    question: 'Which torque has the motor?',
    where: 'Plate or data sheet: holding torque of a stepper, rated torque of a servo. 1 N m is 10.2 kg cm.',
    needed: ANSWERS,
  },
  motorPeak: {
    label: 'Peak torque of the servo',
    question: 'Which torque has it for a moment?',
    where: 'Data sheet, and no more than the limit set in its drive.',
    needed: ANSWERS,
  },
  torqueCurve: {
    label: 'Pull-out curve',
    question: 'Is there a pull-out curve for your supply?',
    where:
      'The maker’s, at your own supply voltage only. Motor speed in rpm and torque in N m, point by point: 0=2.2 300=2 600=1.4. Left empty, holding torque, supply and inductance are used.',
    needed: 'Without it torque is reckoned from holding torque, supply, current and inductance.',
  },
  motorSupply: {
    label: 'Supply of the driver',
    question: 'Which voltage feeds the stepper’s driver?',
    where: 'Measured by a competent person, or read off the supply. More voltage keeps torque at speed.',
    needed: ANSWERS,
  },
  motorCurrent: {
    label: 'Current of a phase',
    question: 'Which current does the driver give a phase?',
    where: 'The driver’s setting, and no more than the motor’s plate.',
    needed: ANSWERS,
  },
  motorInductance: {
    label: 'Inductance of a phase',
    question: 'Which inductance has a phase?',
    where: 'Data sheet, for the way it is wired: windings in series have four times that of parallel ones.',
    needed: ANSWERS,
  },
  rotorInertia: {
    label: 'Inertia of the rotor',
    question: 'Which inertia has the motor’s rotor?',
    where: 'Data sheet. 1 kg cm² is 1000 g cm².',
    needed: ANSWERS,
  },
  rampTime: {
    label: 'Fastest start or stop',
    question: 'How soon is the spindle at speed, or at rest?',
    where:
      'The shorter of the two, by a video or a count of seconds. With a clutch or straight on the supply 0.2 to 0.5 s; with an inverter its ramp.',
    needed: ANSWERS,
  },
  cuttingForce: {
    label: 'Largest cutting force',
    question: 'Which cutting force is to be reckoned with?',
    where:
      'Section of the chip in mm² times 2500 to 4000 N/mm² in steel. A first pass 0.23 mm deep takes about 100 N.',
    needed: ANSWERS,
  },
  carriageMass: {
    label: 'Mass of the carriage',
    question: 'What does the carriage weigh, slides and apron with it?',
    where: 'A guess upwards will do: 10 kg on a small bench lathe, 100 kg on a large one.',
    needed: ANSWERS,
  },
  slideFriction: {
    label: 'Friction of the ways',
    question: 'Which coefficient of friction have the ways?',
    where: 'Oiled ways 0.1 to 0.2. Dry or tight ones more.',
    needed: ANSWERS,
  },
  screwEfficiency: {
    label: 'Efficiency of the leadscrew',
    question: 'How much of the torque becomes thrust?',
    where: 'A trapezoidal or Acme screw in a bronze nut 20 to 40 %, a ball screw about 90 %.',
    needed: ANSWERS,
  },
  screwDiameter: {
    label: 'Leadscrew diameter',
    question: 'Which diameter has the leadscrew?',
    where: 'Measured over its crests. For bending its root counts, taken as 0.8 of this.',
    needed: ANSWERS,
  },
  screwLength: {
    label: 'Leadscrew length',
    question: 'How long is it between its bearings?',
    where: 'By a tape, from bearing to bearing.',
    needed: ANSWERS,
  },
  screwEnds: {
    label: 'Bearings of the leadscrew',
    question: 'How are the ends of the leadscrew held?',
    where: 'Two bearings apart from each other clamp an end; one alone only holds it.',
    needed: ANSWERS,
  },
};
