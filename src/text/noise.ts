import type { NoiseName, Output, SumId } from '../core/wiring/noise';
import type { RemedyCaution, RemedyId, Symptom } from '../core/wiring/remedies';
import { trade } from './prove';

/** Words of the pages on electrical noise. Those in braces follow the setting of trade words. */
export const noiseText = {
  title: 'Electrical noise',
  intro: 'What you see, what to try, and what can be worked out. The app measures nothing.',
  symptoms: 'What do you see?',
  sums: 'Worked out from your figures',
  ask: 'Ask the makers and a competent person',
  try: 'Try in this order, cheapest first',
  one: 'One change at a time. After each, repeat the test that showed it: Drift at rest, or There and back.',
  tests: 'Test records',
  workOut: 'Work it out',
  entered: 'Entered',
  enter: 'Enter',
  why: 'Why: formulas and sources',
  missing: 'Not known yet:',
  fromJob: 'speed of the job',
  machine: 'Of the machine',
  list: 'All about noise',
  back: 'Back to the machine',
  clear: 'Clear what was entered here',
  noLimit: 'No limit is known to judge this by.',
  noMachine: 'No machine yet',
  output: 'How the encoder’s signals are driven',
  at: (f: string): string => `At ${f}`,
  passes: (share: string): string => `${share} of it arrives`,
  plot: (from: string, to: string): string =>
    `Gain from ${from} to ${to}; well above the corner 40 dB less for each ten times the frequency.`,
  axis: 'Gain in dB over frequency in Hz; above 0 it amplifies',
  cornerAt: (f: string): string => `Corner ${f}`,
  carrierAt: (f: string): string => `Carrier ${f}`,
  names: {
    real: 'as it is',
    ideal: 'ideal, no load',
    marks: 'carrier and multiples',
  },
} as const;

const lines = (text: string): string[] =>
  text
    .trim()
    .split('\n')
    .map((line) => line.trim());
/** A table in lines: what stands before the first bar is the name of the rest. */
const table = (text: string): Readonly<Record<string, string>> =>
  Object.fromEntries(lines(text).map((line) => line.split(/ \| (.*)/) as [string, string]));

/** First and large, on each of these pages. */
const CAUTIONS = `
  Isolate before you touch wiring: main switch off and locked. Wait until {inverter}, drive and supply have discharged, as long as their makers say.
  {Mains}, {inverter} and {earth}: your local code and a competent person decide. No protective device is sized here.
  At the output of {inverter}s never a {mains} filter, a capacitor, or a switch opened under load. Protective {earth} always stays joined.
`;
export const noiseCautions = (): readonly string[] => lines(trade(CAUTIONS));

const ASK = `
  Which kind of residual-current device goes with this {inverter}, and what current to {earth} it leaks with the filter it has: a filter adds to it.
  Which cable the motor needs, how its {screen} is clamped, and how long it may be.
  Which filter or choke belongs at the input, and which, if any, may stand at the output.
  Which carrier frequencies are allowed, and what they cost in heat.
  Where the supply’s 0 V is joined to {earth}: at one place, decided once.
  How long to wait after switching off before anything may be touched.
`;
export const askList = (): readonly string[] => lines(trade(ASK));

const SYMPTOM = table(`
  running | Counts come only while the {inverter} runs
  switching | Counts jump when a contactor or lamp switches
  speed | Counts are missed at speed
  rest | Counts come while everything stands still
  stop | The drive faults when the spindle stops
  flicker | The display flickers or starts anew
`);
export const symptomName = (s: Symptom): string => trade(SYMPTOM[s] ?? s);

interface RemedyWords {
  readonly what: string;
  readonly why: string;
}
/** What to do, and why. */
const REMEDIES = table(`
  contacts | Press every plug home, tug every wire, look at {screen} and crimps. | A loose contact looks like noise, and costs nothing to find.
  apart | Lay the encoder’s cable 0.2 to 0.3 m or more from the motor’s; cross at right angles. | What couples across falls off with distance. Common practice of drive makers.
  rates | Look at Speed whether encoder and counter keep up at this speed. | Counts lost to a limit look like noise, but come only above one speed.
  input-filter | Set the controller’s input filter: longer than the noise, no more than a third of the gap between edges. | Too short lets noise in, too long loses counts at speed.
  measure | Measure the supply at the far end of its cable, with everything running. Extra-low voltage only. | A supply that sags makes outputs weak and displays start anew.
  ramp | Let the {inverter} stop the spindle more slowly. | A spindle stopped hard feeds its energy back, and the drive sees too much voltage or can’t follow.
  nut-open | Stop the spindle once with the half-nut open, no work near, and see whether the fault stays away. | Then it is the load: a carriage that pushes the screw feeds back into the drive.
  carrier | Try the lowest carrier frequency that the {inverter}’s manual allows. | Fewer edges a second; the motor sounds louder.
  bond | Join motor, lathe, {inverter} and box by short wide straps on bare metal. | Noise current takes the way of least impedance: let that be no signal’s. Paint insulates.
  clamp | Clamp the encoder cable’s {screen} all round to the chassis at both ends; no long tail. | A tail of 5 cm is already 3 Ω at 10 MHz. Where a loop hums, one end direct and a capacitor at the other. Makers differ about analogue lines.
  pull-up | Take a smaller pull-up resistor, as far as the output can sink its current. | A line held more firmly is moved less, and rises sooner.
  near | A capacitor of some 10 µF and one of 100 nF across the supply, at its far end. | The current of fast edges is then fetched nearby.
  light | Cover the encoder from light and swarf, and see that its coupling is tight. | A disc that trembles on an edge counts to and fro.
  suppressor | Put the suppressor that its maker names across the coil of each contactor, valve and relay. | A coil switched off makes hundreds of volts of burst.
  ring | Pass the encoder’s cable several times through a ferrite ring, close to the controller. | It opposes what flows alike in all wires and leaves the signal alone.
  thicker | Use spare cores in parallel for supply and return, or a thicker cable. | Half the resistance, half the drop.
  low-pass | A coil and capacitor in the extra-low-voltage supply, damped. | Undamped it amplifies around its corner, which may lie near the carrier.
  receiver | Take receivers that are made for this rate: differential, or with a Schmitt input. | A common opto-coupler ends at 10 to 50 kHz.
  supply | Give controller and display a supply of their own. | What motor and relays do to theirs stays there.
  differential | Use an encoder or line driver with differential outputs, a twisted pair for each, and a terminated receiver: about 120 Ω at the far end. | What both wires pick up alike is taken away. A broken wire can be noticed too.
  insulate | Insulate the encoder from the headstock: coupling and bracket. | Return current through bearings and encoder then finds no way there.
  motor-cable | A {screen}ed motor cable, its {screen} clamped all round at motor and {inverter}. | The noise goes back inside it, and not through the lathe.
  mains-filter | A filter at the input of the {inverter}, the one its maker names. | It keeps noise out of the {mains}. It leaks current to {earth}: ask which residual-current device suits.
  brake | A braking resistor, the one the drive’s maker names, fitted as the manual says. | It takes the energy of stopping. It gets hot.
`);
export const remedyText = (id: RemedyId): RemedyWords => {
  const [what = '', why = ''] = trade(REMEDIES[id] ?? id).split(' | ');
  return { what, why };
};

const CAUTION = table(`
  isolate | Isolated, and discharged.
  live | Live: only where nothing but extra-low voltage can be touched. Else a competent person measures.
  moving | Hands, sleeves and rags clear; chuck key out; one hand at the stop.
  maker | Only as the maker says, by a competent person.
  stop-time | The whole stopping time grows: test it again, and enter it, before you thread.
  stop-circuit | Isolated. A diode makes a coil let go later: never in a stop circuit without its maker’s word and a new stop test.
`);
export const cautionText = (caution: RemedyCaution): string => CAUTION[caution] ?? caution;

interface SumWords {
  readonly title: string;
  readonly intro: string;
  readonly sources: readonly string[];
}
/** Title, what it is about, sources. */
const SUM = table(`
  reach | Cable length | How far the encoder’s signals reach, by the way they are driven. | Differential: the guide in the annex of TIA/EIA-422, 24 AWG twisted pair, terminated; straight between its points on log scales, never beyond them. | Single-ended and open collector, near {inverter}s: common practice. | Close begins at 0.8 of the length.
  pull-up | Open collector | Whether its slow rising edge still comes well before the next edge. | Charging of a capacitor through a resistor. Falling is fast and rising slow, so that the channels shift against each other. | No more than a quarter of the shortest gap: common practice. Cables have 50 to 150 pF/m. | The output’s current by its data sheet.
  input | Input filter | Longer than the noise, and no more than a third of the shortest gap between edges. | Common practice for digital filters of counters. Slow opto-couplers are a limit of their own.
  supply | Encoder’s supply | What of its voltage arrives at the far end. Count in the current at switching on. | Ohm’s law, there and back, copper at 20 °C; contacts and warmth come on top. | AWG: diameter by ASTM B258, solid copper by IEC 60028. Stranded by its area: the most that IEC 60228 class 5 allows, from memory. | Close begins at 0.8 of the longest cable.
  common-mode | Stray current | What the edges of {inverter}s drive through stray capacitance. It comes back through {screen}s, bearings and the encoder’s body. | i = C × dv/dt. Edges of {inverter}s: 1 to 10 kV/µs; motor and cable have about 1 nF: common practice. | A {screen}’s tail: about 1 nH for each mm, common practice.
  low-pass | Supply filter | A coil and a capacitor in an extra-low-voltage supply, between what really feeds it and what it feeds. | Circuit theory: voltage divider with coil, its wire, capacitor, damping and load. | Stated losses hold between 50 and 50 Ω; 0.1 and 100 Ω either way round are nearer to real ones, and may amplify: CISPR 17. | Close: a tenth or more of the carrier arrives, a rule of our own. Its multiples are marked as frequencies; how strong each is depends on the {inverter}. | Look at the coil too: its current before saturation and its self-resonance, by the data sheet.
`);
export const sumText = (id: SumId): SumWords => {
  const [title = '', intro = '', ...sources] = trade(SUM[id] ?? id).split(' | ');
  return { title, intro, sources };
};

const LABELS = table(`
  rpm | Spindle speed
  length | Length of the cable
  inductance | Inductance of the coil
  capacitance | Capacitor
  source | Resistance of the source
  load | Resistance of the load
  coil | Resistance of the coil
  dampResistance | Damping resistor
  dampCapacitance | Its capacitor, in series
  carrier | Carrier frequency
  stray | Stray capacitance
  slew | Steepness of the edges
  tail | Length of a tail
  ringing | Frequency of the noise
  pullUp | Pull-up resistor
  perMetre | Capacitance of the cable
  inputCapacitance | Capacitance of the input
  pullVolts | Voltage of the pull-up
  threshold | Input switches at
  sink | Output can sink
  volts | Voltage fed in
  least | Least the encoder needs
  draw | Its current
  awg | Conductor, AWG
  area | Or its area
  perKm | Or by its data sheet
  filterTime | Input filter as set
  noiseTime | Noise lasts
`);
export const noiseLabel = (name: NoiseName): string => LABELS[name] ?? name;

export const outputText: Readonly<Record<Output, string>> = {
  differential: 'Differential',
  single: 'Single-ended',
  collector: 'Open collector',
};

/** Each figure: what it is, and the formula behind it. */
const LINES = table(`
  rate | Bits a second | 2 × frequency of a channel
  reach-differential | Differential reaches | 1219 m to 100 kb/s, 122 m at 1 Mb/s, 12 m at 10 Mb/s
  reach-single | Single-ended, near noise | 3 m, common practice
  reach-collector | Open collector, near noise | 5 m, common practice
  delay | Rising edge late by | −τ × ln(1 − share at which the input switches)
  delay-most | At most | shortest gap ÷ 4; gap = (90° − phase error) ÷ 360° of a channel’s period
  delay-most-best | At most, with no phase error | gap ÷ 4; gap = a quarter of a channel’s period
  tau | Time constant τ | R × (capacitance of the cable per m × length + that of the input)
  rise | Rise, 10 to 90 % | 2.2 × τ
  rc-corner | Its corner | 1 ÷ (2π × τ)
  sunk | Output has to sink | V ÷ R
  largest | Largest pull-up | delay allowed ÷ (capacitance × −ln(1 − share))
  smallest | Smallest pull-up | V ÷ current the output can sink
  filter-most | Filter as set | against a third of the gap
  filter-least | Noise lasts | no longer than the filter
  third | A third of the gap | gap ÷ 3; gap = (90° − phase error) ÷ 360° of a channel’s period
  third-best | A third, with no phase error | a quarter of a channel’s period ÷ 3
  channel | Frequency of a channel | lines × spindle pulley ÷ encoder pulley × rpm ÷ 60
  arrives | Arrives | voltage fed in − drop
  drop | Lost on the way | 2 × length × current × resistance per m
  longest | Longest cable | (voltage fed in − least) ÷ (2 × current × resistance per m)
  per-metre | Each conductor | AWG n: 0.127 × 92^((36 − n) ÷ 39) mm, 17.24 Ω mm²/km; stranded: 19.5 Ω mm²/km
  current | Current while an edge lasts | capacitance × steepness
  tail | The tail opposes with | 2π × frequency × 1 nH/mm × length
  corner | Corner | 1 ÷ (2π × √(L × C))
  amplifies | Amplifies below | where as much arrives as without the filter
  amplifies-ideal | Amplifies below, ideal | √2 × corner
  peak | Highest gain | looked for along the curve as it is
  carrier-ideal | Carrier, ideal | −20 × log |1 − (f ÷ corner)²|
  carrier | Carrier as it is | with filter ÷ without: (1 + Rs/Rl) ÷ |1 + Z × Y|; Z of source and coil, Y of all across
  multiple | Strongest of its multiples | as for the carrier, at 2 to 5 times its frequency
  loss-even | Stated loss, 50 / 50 Ω | insertion loss, CISPR 17
  loss-low | Loss, 0.1 / 100 Ω | insertion loss, CISPR 17
  loss-high | Loss, 100 / 0.1 Ω | insertion loss, CISPR 17
  damp-resistance | To damp it: resistor, about | √(L ÷ C)
  damp-capacitance | In series with at least | 3 × C
  damped | Highest gain then | as before, with both across the load
`);
export const lineText = (code: string): readonly [label: string, formula: string] => {
  const [label = '', formula = ''] = (LINES[code] ?? code).split(' | ');
  return [label, formula];
};

const NOTES = table(`
  beyond-guide | Faster than 10 Mb/s: the guide says nothing of that.
  no-pull-up | No pull-up does both: a shorter cable, a lower speed, or another kind of output.
  no-filter | The noise lasts longer than a third of the gap: no filter does. Quieten the noise, or go slower.
  solid | AWG as solid copper: a stranded conductor has a few per cent more. Its data sheet is better.
  never | It amplifies nowhere.
  coil | Resistance of the coil taken as none: the peak is no higher than shown.
`);
export const noteText = (code: string): string => NOTES[code] ?? code;
