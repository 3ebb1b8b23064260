import type { CurvePoint } from './torque';

export type CurveRefusal = 'not-a-curve' | 'curve-order' | 'curve-torque';
export type CurveRead =
  | { readonly ok: true; readonly value: readonly CurvePoint[] }
  | { readonly ok: false; readonly code: CurveRefusal };

const POINT = /^(\d{1,5}(?:[.,]\d{1,3})?)\s*[=:]\s*(\d{1,4}(?:[.,]\d{1,4})?)$/;
const number = (text: string): number => Number(text.replace(',', '.'));
const MOST = 20;

/**
 * Reads a pull-out curve, "0=2.2 300=2.0 600=1.4 1200=0.6": rpm of the motor and torque in Nm, from two to twenty
 * points, speeds rising, torque never rising and above nothing but for the last.
 */
export const readCurve = (text: string): CurveRead => {
  const parts = text.trim().split(/[\s;]+/);
  const points = parts.flatMap((part): CurvePoint[] => {
    const [, rpm, torque] = POINT.exec(part) ?? [];
    return rpm && torque ? [{ rpm: number(rpm), torque: number(torque) }] : [];
  });
  if (points.length !== parts.length || points.length < 2 || points.length > MOST)
    return { ok: false, code: 'not-a-curve' };
  const pairs = points.slice(1).map((p, i) => [points[i] as CurvePoint, p] as const);
  if (pairs.some(([a, b]) => b.rpm <= a.rpm)) return { ok: false, code: 'curve-order' };
  if (pairs.some(([a, b]) => b.torque > a.torque || a.torque <= 0))
    return { ok: false, code: 'curve-torque' };
  return { ok: true, value: points };
};
