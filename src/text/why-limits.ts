import type { LimitId } from '../core/figures';

export interface LimitText {
  readonly name: string;
  readonly binds: string;
  /** What is asked of it at the speed set, with {terms}. */
  readonly formula: string;
  readonly why: string;
}

const STEPS = '{lead} ÷ {screw} × {steps} × {rpm} ÷ 60';

export const limitText: Record<LimitId, LimitText> = {
  'step-rate': {
    name: 'Controller’s steps',
    binds: 'Controller’s steps bind',
    formula: STEPS,
    why: 'Asked for more steps than it can send, the controller falls behind and the lead is wrong.',
  },
  'step-input': {
    name: 'Driver’s step input',
    binds: 'Driver’s step input binds',
    formula: STEPS,
    why: 'Pulses shorter than the driver can see are lost without a sign.',
  },
  burst: {
    name: 'Bunched pulses',
    binds: 'Bunched pulses bind',
    formula:
      '{counts} × {rpm} ÷ 60 × steps due at one edge, {ratio} rounded up, in the shortest gap of two edges',
    why: 'With more than one step per count several pulses crowd into one edge’s time, faster than the average.',
  },
  counter: {
    name: 'Counter',
    binds: 'Counter binds',
    formula: '{counts} × {rpm} ÷ 60',
    why: 'Edges that come faster than they can be counted are lost, and the thread is spoiled.',
  },
  'encoder-channel': {
    name: 'Encoder frequency',
    binds: 'Encoder frequency binds',
    formula: '{lines} × {spindle} ÷ {encoder} × {rpm} ÷ 60',
    why: 'Above its frequency the encoder’s or receiver’s output no longer follows.',
  },
  'encoder-speed': {
    name: 'Encoder speed',
    binds: 'Encoder speed binds',
    formula: '{rpm} × {spindle} ÷ {encoder}',
    why: 'Bearings and disc of the encoder are made for no more.',
  },
  'motor-speed': {
    name: 'Motor speed',
    binds: 'Motor speed binds',
    formula: '{rpm} × {lead} ÷ {screw} × {revs}',
    why: 'Faster, a stepper loses torque and then steps; a servo falls behind.',
  },
  carriage: {
    name: 'Carriage speed',
    binds: 'Carriage speed binds',
    formula: '{rpm} × {lead} ÷ 60',
    why: 'The limit you set for ways, rack and hand.',
  },
  'edge-gap': {
    name: 'Shortest gap of edges',
    binds: 'Shortest gap of edges binds',
    formula: '{lines} × {spindle} ÷ {encoder} × {rpm} ÷ 60 × 360 ÷ (90 − {phase})',
    why: 'Channels that are not 90° apart crowd their edges in pairs. The counter must follow the shorter gap.',
  },
  direction: {
    name: 'Reversal of direction',
    binds: 'Reversal of direction binds',
    formula: '{setup}, against {wait}',
    why: 'A step that comes before the driver has taken the new direction goes the wrong way. A spindle that rocks at rest reverses at every edge.',
  },
  torque: {
    name: 'Torque',
    binds: 'Torque binds',
    formula:
      'load of {force} and the carriage through the screw, and the masses brought to speed in {ramp}, at {rpm}',
    why: 'A stepper asked for more than it has loses steps without a word; a servo falls behind and trips. Pulleys are left out, and the cutting force is taken along the carriage in full.',
  },
  whip: {
    name: 'Whip of the leadscrew',
    binds: 'Whip of the leadscrew binds',
    formula: '{rpm} × {lead} ÷ {screw}',
    why: 'Near this speed a long screw bows out and shakes. The half-nut steadies it only where it stands.',
  },
  chuck: {
    name: 'Chuck',
    binds: 'Chuck binds',
    formula: '{rpm}',
    why: 'The speed marked on the chuck is never passed. Long or heavy work asks for less.',
  },
  'spindle-range': {
    name: 'Spindle’s own speeds',
    binds: 'Spindle’s own speeds bind',
    formula: '{rpm}',
    why: 'The spindle has no faster speed.',
  },
  'stopping-room': {
    name: 'Stopping room',
    binds: 'Stopping room binds',
    formula: '{rpm} × {lead} ÷ 60 × {time} × {factor}',
    why: 'The tool travels on while you see, decide and move the lever. That travel must fit the room there is.',
  },
};
