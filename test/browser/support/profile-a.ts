import type { Hand } from './hand';

type Step = { key: string | RegExp } | { type: string; unit?: string } | 'next';

/**
 * One lathe, as its owner would enter it: 8 tpi screw with a 16-tooth, 8-line dial; encoder of 1024 lines counted
 * fourfold, 1:1; stepper 200 × 16 through 20:40 teeth; controller 100 thousand steps/s, counter 200 thousand edges/s,
 * motor 800 rpm, carriage 25 mm/s. By the question, in the order in which it is asked.
 */
const ANSWERS: readonly (readonly [string, Step])[] = [
  ['What turns the leadscrew', { key: /^An electronic drive/ }],
  ['pitch of the leadscrew', { type: '8', unit: 'tpi' }],
  ['starts has the leadscrew', { key: '1 start' }],
  ['open the half-nut', { key: /^A lever opens it/ }],
  ['a thread dial', { key: /^There is a dial/ }],
  ['teeth has the gear', { key: '16 teeth' }],
  ['lines has the dial', { key: '8 lines' }],
  ['lines per rev has the encoder', { key: '1024 lines' }],
  ['edges per line', { key: '4 edges/line' }],
  ['teeth on the spindle', { key: '1 (direct)' }],
  ['teeth on the encoder', { key: '1 (direct)' }],
  ['encoder’s shaft turn', { type: '6000' }],
  ['one encoder channel reach', { key: '100 kHz' }],
  ['from 90° apart', { key: '10°' }],
  ['edges a second can the controller', { type: '200' }],
  ['drives the leadscrew', { key: /^Stepper/ }],
  ['full steps per rev', { key: '200 steps/rev' }],
  ['microsteps per full step', { key: '16 per full step' }],
  ['teeth on the motor', { type: '20' }],
  ['teeth on the leadscrew’s side', { type: '40' }],
  ['gears left in between', { key: '1 to 1' }],
  ['levers stand', 'next'],
  ['fast may the motor turn', { type: '800' }],
  ['gives way when', { key: /^Shear pin/ }],
  ['step pulse be on', { key: '2.5 µs' }],
  ['off between pulses', { key: '2.5 µs' }],
  ['driver’s input bear', { key: '200 kHz' }],
  ['direction stand', { key: '5 µs' }],
  ['steps a second can the controller send', { type: '100' }],
  ['wait after changing direction', { key: '10 µs' }],
  ['at each edge, or spread', { key: /^At each edge/ }],
  ['hold the gear ratio', { key: /^Two whole numbers/ }],
  ['top number', { type: '65535' }],
  ['bottom number', { type: '65535' }],
  ['carriage travel under drive', { type: '25', unit: 'mm/s' }],
  ['backlash is there', { type: '0.12', unit: 'mm' }],
  ['dial read diameter or radius', { key: /^Diameter/ }],
  ['one division of the cross-slide', { key: '0.05 mm' }],
  ['one turn of the cross-slide', { key: '100' }],
  ['one division of the top slide', { key: '0.02 mm' }],
  ['one turn of the top slide', { key: '100' }],
  ['when its scale says zero', { key: /^Square to/ }],
  ['Which torque has the motor', { type: '4' }],
  ['pull-out curve for your supply', 'next'],
  ['feeds the stepper’s driver', { key: '48 V' }],
  ['current does the driver', { type: '4.2' }],
  ['inductance has a phase', { type: '3.2' }],
  ['inertia has the motor’s rotor', { type: '1' }],
  ['at speed, or at rest', { type: '0.5' }],
  ['cutting force is to be', { key: '100 N' }],
  ['carriage weigh', { type: '30' }],
  ['friction have the ways', { key: /^0.1( |$)/ }],
  ['torque becomes thrust', { key: '30 %' }],
  ['diameter has the leadscrew', { type: '22', unit: 'mm' }],
  ['between its bearings', { type: '900', unit: 'mm' }],
  ['ends of the leadscrew held', { key: /^A pair at one end, one/ }],
  ['fixed speeds, or a range', { key: /^Fixed speeds/ }],
  ['speeds has the spindle', 'next'],
  ['marked on the chuck', { type: '2500' }],
  ['unscrew in reverse', { key: /^Locked on/ }],
  ['after its power is cut', { key: '10 turns' }],
  ['kind of stop button', { key: /^Stays in, direct opening/ }],
  ['Which contacts', { key: /^Two that open/ }],
  ['stop button really cut', { key: /^Power of spindle and drive/ }],
  ['motor do after the stop', { key: /^It is limp/ }],
  ['come to rest after the stop', { key: /^It coasts/ }],
  ['run again after a stop', { key: /^Release, then/ }],
  ['when power comes back', { key: /^It stays off/ }],
  ['part of the stop has failed', { key: /^Both/ }],
  ['until the nut is open', { key: '0.5 s' }],
  ['stopping room multiplied', { key: '1.5 times' }],
  ['Anything else', 'next'],
];

/** Walks the guided entry from its first question to its last, or to one that is left open. */
export const enterProfileA = async (person: Hand, until?: string): Promise<void> => {
  for (const [question, step] of ANSWERS) {
    await person.heads(new RegExp(question));
    if (question === until) return;
    if (step === 'next') await person.key('Next');
    else if ('key' in step) await person.key(step.key);
    else await person.enters(/^Enter (another|the) value$/, step.type, step.unit);
  }
};
