import { number, type NumberField } from '../../machine/field';
import type { IngredientName } from '../../drive/trace';

/** A figure of the model: the field that takes it, and what is assumed where a person has entered nothing. */
interface TraceFigure {
  readonly field: NumberField;
  /** As text in the field's first unit; null: nothing is assumed, and without it that part is left out. */
  readonly assumed: string | null;
}
const figure = (field: NumberField, assumed: string | null): TraceFigure => ({ field, assumed });
const length = (min: string, max: string): NumberField => number('notes', ['mm', 'in'], min, max);
const micro = (max: string): NumberField => number('notes', ['um', 'mm'], '0', max);

/**
 * Every figure that a person can enter, by its name among the readings. What is assumed is common practice for a
 * small home-built drive and no measurement of anything: the page says so beside each.
 */
export const TRACE_FIGURES = {
  'trace.length': figure(length('0.1', '5000'), '30'),
  'trace.engagement': figure(length('0.1', '1000'), null),
  'trace.runIn': figure(length('0', '500'), null),
  'trace.ripple': figure(number('notes', ['percent'], '0', '50'), '2'),
  'trace.ripplePerRev': figure(number('notes', ['times'], '0.1', '200'), '2'),
  'trace.ramp': figure(number('notes', ['s', 'ms'], '0.01', '30'), '0.5'),
  'trace.dip': figure(number('notes', ['percent'], '0', '80'), '5'),
  'trace.dipTime': figure(number('notes', ['s', 'ms'], '0.01', '10'), '0.2'),
  'trace.offset': figure(length('0', '2'), '0.03'),
  'trace.radius': figure(length('2', '300'), '20'),
  'trace.phase': figure(number('notes', ['deg'], '0', '80'), '10'),
  'trace.missed': figure(number('notes', ['count'], '0', '10000'), '1'),
  'trace.extra': figure(number('notes', ['count'], '0', '10000'), '0'),
  'trace.period': figure(number('notes', ['ms', 'us', 's'], '0', '500'), '0.1'),
  'trace.latency': figure(number('notes', ['ms', 'us', 's'], '0', '500'), '0.1'),
  'trace.rate': figure(number('notes', ['kHz', 'Hz', 'MHz'], '0.1', '10000'), '100'),
  'trace.rampUp': figure(number('notes', ['s', 'ms'], '0.001', '10'), null),
  'trace.lag': figure(number('notes', ['ms', 's'], '0.2', '1000'), '15'),
  'trace.torque': figure(number('notes', ['s', 'ms'], '0.005', '10'), null),
  'trace.natural': figure(number('notes', ['Hz'], '5', '1000'), '80'),
  'trace.damping': figure(number('notes', ['times'], '0.01', '2'), '0.2'),
  'trace.corner': figure(number('notes', ['rpm'], '5', '10000'), null),
  'trace.load': figure(number('notes', ['percent'], '0', '95'), '20'),
  'trace.cyclic': figure(micro('500'), '5'),
  'trace.per300': figure(micro('5000'), '20'),
  'trace.play': figure(length('0', '5'), null),
} as const satisfies Record<string, TraceFigure>;
export type TraceKey = keyof typeof TRACE_FIGURES;
export const TRACE_KEYS = Object.keys(TRACE_FIGURES) as TraceKey[];

const SERVO: readonly TraceKey[] = ['trace.lag', 'trace.torque'];
const STEPPER: readonly TraceKey[] = ['trace.natural', 'trace.damping', 'trace.load', 'trace.corner'];

/** The figures that an ingredient needs, by the kind of motor. */
export const figuresOf = (name: IngredientName, motor: 'stepper' | 'servo' | null): readonly TraceKey[] => {
  switch (name) {
    case 'ripple':
      return ['trace.ripple', 'trace.ripplePerRev'];
    case 'ramp':
      return ['trace.ramp'];
    case 'dip':
      return ['trace.dip', 'trace.dipTime'];
    case 'eccentricity':
      return ['trace.offset', 'trace.radius'];
    case 'phase':
      return ['trace.phase'];
    case 'miscounts':
      return ['trace.missed', 'trace.extra'];
    case 'format':
      return [];
    case 'timing':
      return ['trace.period', 'trace.latency'];
    case 'output':
      return ['trace.rate', 'trace.rampUp'];
    case 'motor':
      return motor === 'servo' ? SERVO : STEPPER;
    case 'screw':
      return ['trace.cyclic', 'trace.per300'];
    case 'backlash':
      return ['trace.play'];
  }
};
