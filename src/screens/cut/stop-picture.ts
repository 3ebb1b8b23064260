import type { StopBar, StopShape } from '../../elements/stop-drawing';
import type { FigureValues } from '../../core/figures';
import type { Job } from '../../core/job';
import { leadNumber, toNumber, type Ratio } from '../../core/quantity';
import { bothAngles } from '../../core/thread/groove';
import { mmText, stopText } from '../../text/cut-stop';

/**
 * What the drawing shows, and its bars from where the thread ends: the tip stands at the creep when the last pass meets the
 * mark; from there the room, then margin and the tool's side up to what is in the way.
 */
export const stopShape = (
  { place, room }: FigureValues['stopRoom'],
  job: Pick<Job, 'hand' | 'side' | 'outwards'>,
  travel: Ratio | null,
): StopShape => {
  const { leading, trailing } = bothAngles(place.half);
  const usable = room.usable ? toNumber(room.usable) : 0;
  const whole = toNumber(room.whole);
  // Where the tip must not go past; with nothing left it lies before the mark.
  const side = whole - room.tool;
  const furthest = room.usable ? room.creep + usable : side - room.margin;
  const goes = travel ? toNumber(travel) : null;
  const end = goes === null ? null : room.creep + goes;
  const over = goes !== null && goes > usable;
  const bar = (from: number, to: number, name: string, tooFar = false): readonly StopBar[] =>
    to - from < 0.005
      ? []
      : [{ from, to, text: `${name} ${mmText(to - from)}`, ...(tooFar ? { over: true } : {}) }];
  const b = stopText.bars;
  const travels =
    end === null
      ? bar(room.creep, furthest, b.room)
      : over
        ? [...bar(room.creep, end, b.travel, true), ...bar(furthest, end, b.over, true)]
        : [...bar(room.creep, end, b.travel), ...bar(end, furthest, b.left)];
  const wall = room.from === 'run-out' ? place.gap && toNumber(place.gap) : whole;
  const inPicture = wall !== null && wall <= Math.max(whole, end ?? 0) * 2.5 ? wall : null;
  return {
    kind: !place.outwards && place.ending !== 'through' ? place.ending : 'gap',
    pitch: leadNumber(place.pitch),
    depth: place.depth,
    leading,
    trailing,
    shoulder: place.shoulder ? toNumber(place.shoulder) : 0,
    wall: inPicture,
    mark: room.creep,
    furthest: room.usable ? furthest : null,
    end,
    over,
    // A right-hand thread runs to the headstock, left in the picture; a left-hand one, or one cut outwards, from it.
    toRight: (job.hand === 'left') !== job.outwards,
    inside: job.side === 'internal',
    bars: [
      ...bar(0, room.creep, b.creep),
      ...travels,
      ...bar(side - room.margin, side, b.margin),
      ...bar(side, whole, b.tool),
      ...bar(0, whole, b[room.from]),
    ],
  };
};

/** The drawing in words. */
export const shapeText = (s: StopShape): string =>
  `${stopText.drawn}: ${s.bars.map((x) => x.text).join(', ')} mm.`;
