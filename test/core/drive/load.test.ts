import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCurve } from '../../../src/core/drive/curve';
import {
  cornerSpeed,
  inertiaAtMotor,
  loadTorque,
  onCurve,
  pullOut,
  screwTorque,
  speedUpTorque,
  thrust,
} from '../../../src/core/drive/torque';
import { SCREW_ENDS, whipSpeed, type ScrewEnds } from '../../../src/core/drive/whip';

describe('torque', () => {
  it('of a screw by its power balance: 500 N on 8 tpi at 30 % is 0.842 N m', () => {
    // 500 × 0.003175 ÷ (2π × 0.3) = 0.84219 (own calculation from T = F·lead ÷ 2πη).
    expect(screwTorque(500, 3.175, 0.3)).toBeCloseTo(0.8421949, 6);
    // Through a 2:1 belt of 95 %: 0.44326.
    const chain = { screwLead: 3.175, motorPerScrew: 2, efficiency: 0.3 };
    expect(loadTorque({ cutting: 500, mass: 0, friction: 0, ...chain })).toBeCloseTo(0.4432605, 6);
  });

  it('of a square screw from friction agrees with the efficiency that follows from it', () => {
    // Shigley, Mechanical Engineering Design, power screws: 32 mm major, 4 mm pitch, two starts, F 6.4 kN, f 0.08 (screw)
    // and no collar: T = F dm/2 (l + π f dm) ÷ (π dm − f l) = 15.94 N m with dm 30, l 8.
    const [force, dm, l, f] = [6400, 30, 8, 0.08];
    const square = ((force * dm) / 2 / 1000) * ((l + Math.PI * f * dm) / (Math.PI * dm - f * l));
    expect(square).toBeCloseTo(15.94, 2);
    const efficiency = (force * l) / 1000 / (2 * Math.PI * square);
    expect(screwTorque(force, l, efficiency)).toBeCloseTo(square, 9);
  });

  it('presses cutting force and weight on the ways', () => {
    // 200 + 0.15 × (12 × 9.80665 + 200) = 247.65 N.
    const load = { cutting: 200, mass: 12, friction: 0.15, efficiency: 1, screwLead: 3, motorPerScrew: 1 };
    expect(thrust(load)).toBeCloseTo(247.652, 3);
  });

  it('to set masses moving is what their energy asks over the time', () => {
    // Energy ½ J ω² gathered at constant torque: T = 2 E ÷ (ω t).
    const masses = {
      mass: 40,
      rotor: 1.2e-4,
      screw: { diameter: 25, length: 1000 },
      screwLead: 6,
      motorPerScrew: 2,
    };
    const rpm = 600;
    const motor = (rpm * 2 * Math.PI) / 60;
    const screw = motor / 2;
    const v = (screw * 0.006) / (2 * Math.PI);
    // A bar's moment of inertia: ½ m r².
    const bar = Math.PI * 0.0125 ** 2 * 1 * 7850;
    const energy = 0.5 * (1.2e-4 * motor ** 2 + 0.5 * bar * 0.0125 ** 2 * screw ** 2 + 40 * v ** 2);
    expect(speedUpTorque(inertiaAtMotor(masses), rpm, 0.5)).toBeCloseTo((2 * energy) / (motor * 0.5), 9);
  });

  it('of a stepper falls beyond its corner: 48 V, 3.2 mH, 4.2 A, 200 steps turn at 535.7 rpm', () => {
    // Stepper application formula V ÷ (2 L I N).
    const corner = cornerSpeed(48, 0.0032, 4.2, 200);
    expect(corner).toBeCloseTo(535.714, 3);
    expect(pullOut(4, corner, 100)).toBeCloseTo(2.8, 9);
    expect(pullOut(4, corner, 2 * corner)).toBeCloseTo(1.4, 9);
  });
});

describe('a pull-out curve in writing', () => {
  it('runs straight between its points and has nothing beyond the last', () => {
    const read = readCurve('0=2.2 300=2,0; 600:1.4');
    if (!read.ok) throw new Error(read.code);
    expect([0, 150, 300, 450, 600, 601].map((n) => onCurve(read.value, n).toFixed(3))).toEqual([
      '2.200',
      '2.100',
      '2.000',
      '1.700',
      '1.400',
      '0.000',
    ]);
  });
  it.each([
    ['', 'not-a-curve'],
    ['300=2', 'not-a-curve'],
    ['300=2 fast=1', 'not-a-curve'],
    ['300=2 300=1', 'curve-order'],
    ['600=1 300=2', 'curve-order'],
    ['300=1 600=2', 'curve-torque'],
    ['300=0 600=0', 'curve-torque'],
    [`${'1=1 '.repeat(21)}`, 'not-a-curve'],
  ])('%s is refused', (text, code) => {
    expect(readCurve(text)).toEqual({ ok: false, code });
  });
});

describe('whip', () => {
  // Makers' catalogues of ball screws give the permissible speed as k · 10⁷ · d ÷ ℓ² (d, ℓ in mm), with 0.8 of the first
  // critical speed already taken: k = 9.7 held at both ends, 15.1 clamped and held, 21.9 clamped, 3.4 clamped and free.
  const K: Readonly<Record<ScrewEnds, number>> = {
    'held-held': 9.7,
    'clamped-held': 15.1,
    'clamped-clamped': 21.9,
    'clamped-free': 3.4,
  };
  it.each(SCREW_ENDS)('%s agrees with the catalogues to their two or three digits', (ends) => {
    const k = (0.8 * whipSpeed(20, 1000, ends)) / ((1e7 * 20) / 1000 ** 2);
    expect(Math.abs(k / K[ends] - 1)).toBeLessThan(0.02);
  });
  it('rises with the diameter and falls with the square of the length', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 80 }), fc.integer({ min: 200, max: 4000 }), (d, l) => {
        const base = whipSpeed(d, l, 'held-held');
        expect(whipSpeed(2 * d, l, 'held-held') / base).toBeCloseTo(2, 9);
        expect(whipSpeed(d, 2 * l, 'held-held') / base).toBeCloseTo(0.25, 9);
      }),
    );
  });
});
