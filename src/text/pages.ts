/** Names of the pages under a thread, apart from their own words, which are loaded with them. */
export const measureKey = 'Measure: wires, gauges';
export const identifyKey = 'What is this thread?';
export const traceKey = 'Lead error along the thread';
export const limitsKey = 'Limits, undercuts, drills';
export const ownKeyText = 'Own threads';
export const heldKey = 'How the ratio is held';
export const settingsSheetKey = 'Settings sheet';
