/**
 * Lines of core to break, one at a time. `find` must stand in the file exactly once; `change` takes its place.
 * Each is a mistake a person could make and that would give a machinist a wrong figure.
 * @typedef {{ name: string, file: string, find: string, change: string }} Mutation
 * @type {Mutation[]}
 */
export const MUTATIONS = [
  {
    name: 'a denominator of zero is let through',
    file: 'quantity/stored.ts',
    find: 'return den > 0n ?',
    change: 'return den >= 0n ?',
  },
  {
    name: 'a decimal has one place too many',
    file: 'quantity/read.ts',
    find: '10n ** BigInt(part.length)',
    change: '10n ** BigInt(part.length + 1)',
  },
  {
    name: 'the whole of a mixed fraction is lost',
    file: 'quantity/read.ts',
    find: 'add(BigInt(whole), ratio(BigInt(top), BigInt(bottom)))',
    change: 'add(0n, ratio(BigInt(top), BigInt(bottom)))',
  },
  {
    name: 'a comma is no decimal mark',
    file: 'quantity/read.ts',
    find: '(?:[.,](\\d*))?$/.exec(body)',
    change: '(?:[.](\\d*))?$/.exec(body)',
  },
  {
    name: 'an inch of 25.5 mm',
    file: 'quantity/units.ts',
    find: 'MM_PER_INCH = ratio(127, 5)',
    change: 'MM_PER_INCH = ratio(51, 2)',
  },
  {
    name: 'threads per inch taken as inches',
    file: 'quantity/units.ts',
    find: 'u.reciprocal ? div(u.factor, value) : mul(u.factor, value)',
    change: 'mul(u.factor, value)',
  },
  {
    name: 'floor of a negative number towards zero',
    file: 'quantity/ratio.ts',
    find: 'a.n % a.d < 0n ? q - 1n : q',
    change: 'q',
  },
  {
    name: 'halves rounded down',
    file: 'quantity/write.ts',
    find: "(rule === 'nearest' || low % 2n === 1n)",
    change: '(low % 2n === 1n)',
  },
  {
    name: 'trailing zeros of whole numbers dropped',
    file: 'quantity/write.ts',
    find: 'digits.slice(0, digits.length - places)',
    change: "digits.slice(0, digits.length - places).replace(/0+$/, '')",
  },
  {
    name: 'a lead with π bounded from below where it must be from above',
    file: 'quantity/lead.ts',
    find: 'l.pi ? mul(l.mm, PI_HIGH) : l.mm',
    change: 'l.pi ? mul(l.mm, PI_LOW) : l.mm',
  },
  {
    name: 'starts left out of the lead',
    file: 'quantity/lead.ts',
    find: 'lead(mul(pitch.mm, starts), pitch.pi)',
    change: 'lead(pitch.mm, pitch.pi)',
  },
  {
    name: 'encoder pulleys swapped',
    file: 'drive/gearing.ts',
    find: 'div(mul(e.lines, e.edges, e.spindle), e.encoder)',
    change: 'div(mul(e.lines, e.edges, e.encoder), e.spindle)',
  },
  {
    name: 'motor pulleys swapped',
    file: 'drive/gearing.ts',
    find: 'mul(div(p.screw, p.motor), p.gearbox)',
    change: 'mul(div(p.motor, p.screw), p.gearbox)',
  },
  {
    name: 'steps per count upside down',
    file: 'drive/gearing.ts',
    find: 'div(l.mm, screwLead), div(steps, counts)',
    change: 'div(l.mm, screwLead), div(counts, steps)',
  },
  {
    name: 'the farther of two fractions held',
    file: 'drive/gearing.ts',
    find: 'compare(distance(target, p, q), distance(target, r, s))',
    change: 'compare(distance(target, r, s), distance(target, p, q))',
  },
  {
    name: 'a fraction too large for the controller passes as exact',
    file: 'drive/gearing.ts',
    find: 'top <= topMax && bottom <= bottomMax',
    change: 'top <= topMax',
  },
  {
    name: 'channel frequency counted in edges',
    file: 'drive/rates.ts',
    find: 'div(mul(e.lines, e.spindle), mul(e.encoder, 60))',
    change: 'div(mul(e.lines, e.spindle, 4), mul(e.encoder, 60))',
  },
  {
    name: 'step rate per second taken per minute',
    file: 'drive/rates.ts',
    find: 'div(mul(div(leadHigh(l), screwLead), steps), 60)',
    change: 'mul(div(leadHigh(l), screwLead), steps)',
  },
  {
    name: 'the safety factor left out of the stopping travel',
    file: 'drive/rates.ts',
    find: 'mul(leadHigh(l), wholeTime, safetyFactor)',
    change: 'mul(leadHigh(l), wholeTime)',
  },
  {
    name: 'a burst of pulses forgotten',
    file: 'drive/rates.ts',
    find: 'ratio(ceil(r))',
    change: 'ratio(1)',
  },
  {
    name: 'pulse low time left out',
    file: 'drive/rates.ts',
    find: 'div(1, addTimes(high, low))',
    change: 'div(1, high)',
  },
  {
    name: 'a limit rounded up',
    file: 'drive/rates.ts',
    find: 'floor(div(mul(limit, margin), perRpm))',
    change: 'ceil(div(mul(limit, margin), perRpm))',
  },
  {
    name: 'the half-nut may be opened on a lead with π',
    file: 'cut/half-nut.ts',
    find: "if (x.lead.pi) return closed('irrational');",
    change: '',
  },
  {
    name: 'the half-nut may be opened on a ratio held only nearly',
    file: 'cut/half-nut.ts',
    find: "if (!x.exactRatio) return closed('inexact-ratio', a, b);",
    change: '',
  },
  {
    name: 'a dial gear that misses is trusted',
    file: 'cut/half-nut.ts',
    find: 'BigInt(teeth) % b !== 0n',
    change: 'BigInt(teeth) % b < 0n',
  },
  {
    name: 'over a limit called near',
    file: 'figures/standing.ts',
    find: "return 'over';",
    change: "return 'near';",
  },
  {
    name: 'an unknown hides behind what is within',
    file: 'figures/standing.ts',
    find: "['within', 'near', 'unknown', 'over']",
    change: "['unknown', 'within', 'near', 'over']",
  },
  {
    name: 'a record outlives a changed input',
    file: 'context/staleness.ts',
    find: 'record.inputs[p] !== fingerprint(inputAt(inputs, p))',
    change: 'record.inputs[p] === undefined',
  },
  {
    name: 'depth of infeed as if measured on the diameter',
    file: 'thread/depth.ts',
    find: '(outward * (from - target)) / 2',
    change: 'outward * (from - target)',
  },
  {
    name: 'percentage of thread from one flank',
    file: 'thread/tapping.ts',
    find: '(2 * height * pitch)',
    change: '(height * pitch)',
  },
];
