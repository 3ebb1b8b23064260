import { marked } from './numbers';
/** Names of the pages under a thread, apart from their own words, which are loaded with them. */
export const measureKey = 'Measure: wires, gauges';
export const identifyKey = 'What is this thread?';
export const trainsKey = 'Change gears';
export const chartKey = 'Wall chart';
export const raiseKey = 'What would raise it';
export const feedKey = 'Turning feeds and finish';
/** The train mounted, on the Threads screen. */
export const trainRowText = {
  label: 'Train mounted',
  exact: 'Exact',
  notKnown: 'Not known',
  off: (ppm: number): string =>
    Math.abs(ppm) > 20_000
      ? 'Cuts another lead: change the wheels'
      : `${marked(Math.abs(ppm).toFixed(Math.abs(ppm) < 10 ? 2 : 0))} ppm too ${ppm > 0 ? 'long' : 'short'}: keep the nut closed`,
} as const;
export const traceKey = 'Lead error along the thread';
export const limitsKey = 'Limits, undercuts, drills';
export const ownKeyText = 'Own threads';
export const heldKey = 'How the ratio is held';
export const settingsSheetKey = 'Settings sheet';
