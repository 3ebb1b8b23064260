/** Where everything on a Bode plot stands, in the drawing's own units. Frequency is logarithmic, gain in decibels. */

/** What is drawn: curves as pairs of Hz and dB, between the bounds of both axes. */
export interface BodeData {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  readonly ideal: readonly (readonly [f: number, db: number])[];
  readonly real: readonly (readonly [f: number, db: number])[];
  /** What is named above it, with its line. */
  readonly named: readonly { readonly f: number; readonly text: string }[];
  /** Lines with no name of their own. */
  readonly marks: readonly number[];
  /** How a frequency is written below it. */
  readonly tick: (f: number) => string;
}

export interface BodeName {
  /** Where its line goes down, and where the name begins. */
  readonly at: number;
  readonly x: number;
  readonly y: number;
  readonly text: string;
}
export interface BodeLayout {
  readonly height: number;
  readonly frame: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly decades: readonly { readonly x: number; readonly text: string }[];
  readonly between: readonly number[];
  readonly gains: readonly { readonly y: number; readonly text: string }[];
  readonly zero: number;
  readonly ideal: string;
  readonly real: string;
  readonly named: readonly BodeName[];
  readonly marks: readonly number[];
}

const STEP = 20;
/** Drawn a little past the frame, which clips it: a curve that leaves the plot is seen to leave. */
const PAST = 15;

/** Width of a letter as a share of its height: on the careful side for the bold cut. */
const LETTER = 0.57;

/**
 * Names one below the other, beside the lines that go down from them: all on the side where there is room, and in the order
 * in which no line runs through a name below.
 */
const names = (all: readonly { at: number; text: string }[], width: number, font: number): BodeName[] => {
  const size = (text: string): number => text.length * font * LETTER;
  const after = all.every(({ at, text }) => at + size(text) < width);
  return [...all]
    .sort((a, b) => (after ? a.at - b.at : b.at - a.at))
    .map(({ at, text }, i) => {
      const beside = after ? at + 6 : at - 6 - size(text);
      return { at, x: Math.max(0, Math.min(beside, width - size(text))), y: font * (1 + i * 1.25), text };
    });
};

/** @param width CSS pixels @param font height of its letters, CSS pixels */
export const layout = (data: BodeData, width: number, font: number): BodeLayout => {
  const { from, to, low, high } = data;
  const left = font * 2.5;
  const right = width - font * 1.5;
  const top = font * (data.named.length * 1.25 + 0.4);
  const bottom = top + Math.min(360, Math.max(210, width * 0.7));
  const span = Math.log(to / from);
  const x = (f: number): number => left + (Math.log(f / from) / span) * (right - left);
  const y = (db: number): number => top + ((high - db) / (high - low)) * (bottom - top);
  const line = (all: BodeData['ideal']): string =>
    all
      .map(([f, db], i) => {
        const seen = Math.min(high + PAST, Math.max(low - PAST, db));
        return `${i ? 'L' : 'M'}${x(f).toFixed(1)} ${y(seen).toFixed(1)}`;
      })
      .join('');

  const count = Math.round(Math.log10(to / from));
  // Where they would touch, every other decade is named.
  const every = (right - left) / count < font * 3.2 ? 2 : 1;
  const decades = Array.from({ length: count + 1 }, (_, i) => from * 10 ** i);
  const gains = Array.from({ length: Math.round((high - low) / STEP) + 1 }, (_, i) => high - i * STEP);
  return {
    height: bottom + font * 1.5,
    frame: { left, right, top, bottom },
    decades: decades.map((f, i) => ({ x: x(f), text: i % every ? '' : data.tick(f) })),
    between: decades.slice(0, -1).flatMap((f) => [2, 3, 4, 5, 6, 7, 8, 9].map((n) => x(f * n))),
    gains: gains.map((db) => ({ y: y(db), text: `${db}`.replace('-', '−') })),
    zero: y(0),
    ideal: line(data.ideal),
    real: line(data.real),
    named: names(
      data.named.map(({ f, text }) => ({ at: x(f), text })),
      width,
      font,
    ),
    marks: data.marks.filter((f) => f >= from && f <= to).map(x),
  };
};
