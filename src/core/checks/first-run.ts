import { roomOf } from '../figures/room-from';
import type { Sheet } from '../figures';
import { phaseState } from './phase';

/** What a newcomer does, from nothing to all checks recorded, in this order. */
export const FIRST_STEPS = ['machine', 'thread', 'tool', 'room', 'speed', 'stops', 'checks'] as const;
export type FirstStep = (typeof FIRST_STEPS)[number];

/** Those that are done, as things stand now. */
export const firstDone = (sheet: Sheet, hasMachine: boolean): ReadonlySet<FirstStep> => {
  const { inputs } = sheet;
  const chosen = sheet.get('chosen').value;
  const before = phaseState('before', sheet);
  const stops = before.items.find((s) => s.item.id === 'stop-tests');
  const speed = sheet.get('speed').value?.standing;
  const done: Readonly<Record<FirstStep, boolean>> = {
    machine: hasMachine,
    thread: chosen !== null,
    // A pitch by itself has no depth to ask a nose for.
    tool: chosen !== null && (!chosen.thread || sheet.get('depth').value !== null),
    room: roomOf(inputs) !== null,
    speed: inputs.job.rpm !== null && (speed === 'within' || speed === 'near'),
    stops: stops?.state === 'done',
    checks: before.allRecordedAt !== null,
  };
  return new Set(FIRST_STEPS.filter((step) => done[step]));
};
