/** Where everything on the wall chart stands, in the drawing's own units. Both axes are logarithmic. */

/** A lead in mm and a speed in rpm. */
export interface ChartPoint {
  readonly lead: number;
  readonly rpm: number;
}
export interface PlotLine {
  readonly name: string;
  /** `limit`: one limit of the drive; `work`: chuck and the like; `stop`: what a stopping room allows. */
  readonly kind: 'limit' | 'work' | 'stop';
  readonly points: readonly ChartPoint[];
  /** It decides somewhere: its name gets a place before the others'. */
  readonly first?: boolean;
}
export interface PlotThread {
  readonly name: string;
  readonly lead: number;
  /** Height of its point; null where that isn't known, and only its place is shown. */
  readonly rpm: number | null;
}
export interface PlotData {
  readonly from: number;
  readonly to: number;
  readonly lines: readonly PlotLine[];
  /** The lowest of the drive's limits, drawn heavy. */
  readonly ceiling: readonly (readonly ChartPoint[])[];
  readonly rules: readonly { readonly name: string; readonly rpm: number }[];
  readonly threads: readonly PlotThread[];
  /** What must be said on the chart itself, a paragraph each. */
  readonly words: readonly string[];
  /** Decimal mark of the axes. */
  readonly mark: string;
  readonly axis: { readonly lead: string; readonly tpi: string; readonly rpm: string; readonly own: string };
}

export type Pixel = readonly [x: number, y: number];
export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}
export interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** Degrees, clockwise. */
  readonly turn: number;
}

/** Mean width of a letter of the face, × its size. */
const LETTER = 0.6;
export const widthOf = (text: string, font: number): number => text.length * LETTER * font;

/** Words in lines of at most that width. */
export const wrap = (text: string, width: number, font: number): string[] => {
  const most = Math.max(8, Math.floor(width / (LETTER * font)));
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
};

/** 1, 2 or 5 × 10^k, the nearest at or below; above with `up`. */
export const nice = (x: number, up = false): number => {
  const power = 10 ** Math.floor(Math.log10(x));
  const steps = [1, 2, 5, 10].map((m) => m * power);
  return (up ? steps.find((s) => s >= x * 0.999) : steps.findLast((s) => s <= x * 1.001)) ?? x;
};

/** Every 1, 2 and 5 × 10^k from one speed to another. */
export const speedTicks = (low: number, high: number): number[] => {
  const ticks: number[] = [];
  for (let t = nice(low, true); t <= high * 1.001; t = nice(t * 1.5, true)) ticks.push(t);
  return ticks;
};

const LEADS = [0.1, 0.25, 0.5, 1, 1.5, 2, 3, 4, 6, 10, 20, 50, 100];
const TPI = [200, 100, 48, 32, 20, 14, 10, 8, 6, 4, 2, 1];

/** Numbers of an axis that keep so far apart that none touches the next. */
const apart = (places: readonly { text: string; x: number }[], font: number) => {
  let end = -Infinity;
  return places.filter(({ text, x }) => {
    const half = widthOf(text, font) / 2;
    if (x - half < end + font * 0.35) return false;
    end = x + half;
    return true;
  });
};

/** Shifts places along a line so that each keeps its distance from the next, all within the ends. Rising. */
export const spread = (places: readonly number[], gap: number, from: number, to: number): number[] => {
  const out: number[] = [];
  for (const [i, p] of places.entries()) out.push(Math.max(p, from, (out[i - 1] ?? -Infinity) + gap));
  for (let i = out.length - 1; i >= 0; i -= 1)
    out[i] = Math.min(out[i] ?? 0, to, (out[i + 1] ?? Infinity) - gap);
  return out;
};

/** The part of a polyline inside the frame, cut at its top and bottom. */
const clip = (line: readonly Pixel[], f: Frame): Pixel[] => {
  const inside = ([, y]: Pixel): boolean => y >= f.top && y <= f.bottom;
  const out: Pixel[] = [];
  for (const [i, b] of line.entries()) {
    const a = line[i - 1];
    if (a && inside(a) !== inside(b)) {
      const y = (inside(a) ? b : a)[1] < f.top ? f.top : f.bottom;
      const share = (y - a[1]) / (b[1] - a[1]);
      out.push([a[0] + share * (b[0] - a[0]), y]);
    }
    if (inside(b)) out.push(b);
  }
  return out;
};

const lengths = (line: readonly Pixel[]): number[] => {
  let sum = 0;
  return line.map((p, i) => {
    const before = line[i - 1];
    return (sum += before ? Math.hypot(p[0] - before[0], p[1] - before[1]) : 0);
  });
};

/** The point of a polyline at a distance from its start. */
const along = (line: readonly Pixel[], sums: readonly number[], at: number): Pixel => {
  const i = Math.max(
    1,
    sums.findIndex((s) => s >= at),
  );
  const [a, b] = [line[i - 1] ?? line[0], line[i] ?? line.at(-1)];
  if (!a || !b) return [0, 0];
  const [s, e] = [sums[i - 1] ?? 0, sums[i] ?? 0];
  const share = e > s ? (at - s) / (e - s) : 0;
  return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
};

/** Points along the middle of a label, close enough to find what it would touch. */
const dotsOf = ({ text, x, y, turn }: Label, font: number): Pixel[] => {
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const n = Math.ceil(widthOf(text, font) / (font * 0.5));
  const rise = font * 0.35;
  return Array.from({ length: n + 1 }, (_, i) => {
    const d = (i * widthOf(text, font)) / n;
    return [x + d * c + rise * s, y + d * s - rise * c];
  });
};

/** A line whose name had no room: the number that stands on it instead. */
export interface Keyed {
  readonly sign: string;
  readonly name: string;
}

interface Best {
  readonly label: Label;
  readonly cost: number;
  readonly dots: readonly Pixel[];
}

const NONE: readonly never[] = [];

/** Points in squares, so that only those near by are looked at: a chart has thousands, and names try many places. */
class Near {
  private readonly squares = new Map<number, { readonly at: Pixel; readonly of: number }[]>();
  /** @param size side of a square: no less than the distance asked about */
  constructor(private readonly size: number) {}

  /** Columns far enough apart for any drawing's rows. */
  private key(x: number, y: number): number {
    return Math.floor(x / this.size) * 10_000 + Math.floor(y / this.size);
  }
  add(at: Pixel, of: number): void {
    const key = this.key(...at);
    const square = this.squares.get(key);
    if (square) square.push({ at, of });
    else this.squares.set(key, [{ at, of }]);
  }
  /** Points within a distance; those of one line twice. */
  count([x, y]: Pixel, distance: number, twice = -1): number {
    const most = distance * distance;
    const middle = this.key(x, y);
    let sum = 0;
    for (let column = -10_000; column <= 10_000; column += 10_000)
      for (let row = -1; row <= 1; row += 1)
        for (const { at, of } of this.squares.get(middle + column + row) ?? NONE) {
          const [dx, dy] = [at[0] - x, at[1] - y];
          if (dx * dx + dy * dy < most) sum += of === twice ? 2 : 1;
        }
    return sum;
  }
}

/**
 * Names written along their own lines, where they touch no other name and cross as few other lines as can be. Where
 * there is no room for a name its number stands on the line, and the name in a list.
 */
export function* placing(
  lines: readonly { readonly name: string; readonly pixels: readonly Pixel[]; readonly first?: boolean }[],
  f: Frame,
  font: number,
): Generator<void, { readonly labels: readonly Label[]; readonly keyed: readonly Keyed[] }> {
  const drawn = lines.map(({ name, pixels }) => {
    const line = clip(pixels, f);
    return { name, line, sums: lengths(line) };
  });
  const inked = drawn.map(({ line, sums }) =>
    Array.from({ length: Math.floor((sums.at(-1) ?? 0) / 6) + 1 }, (_, i) => along(line, sums, i * 6)),
  );
  const ink = new Near(font);
  inked.forEach((points, i) => points.forEach((p) => ink.add(p, i)));
  const taken = new Near(font);
  const isOut = ([x, y]: Pixel): boolean =>
    x < f.left + 2 || x > f.right - 2 || y < f.top + font / 2 || y > f.bottom - font / 2;
  const place = function* (index: number, text: string): Generator<void, Best | null> {
    const d = drawn[index];
    const total = d?.sums.at(-1) ?? 0;
    const width = widthOf(text, font);
    let best: Best | null = null;
    for (let start = 4; d && start + width <= total; start += font * 0.6) {
      yield;
      const [a, b] = [along(d.line, d.sums, start), along(d.line, d.sums, start + width)];
      const turn = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
      const [nx, ny] = [Math.sin((turn * Math.PI) / 180), -Math.cos((turn * Math.PI) / 180)];
      for (const side of [-1, 1]) {
        // Above its line, or below it by the height of a letter.
        const off = side < 0 ? font * 0.25 : -font * 0.95;
        const label = { text, x: a[0] + nx * off, y: a[1] + ny * off, turn };
        const dots = dotsOf(label, font);
        if (dots.some(isOut) || dots.some((p) => taken.count(p, font) > 0)) continue;
        // Letters over their own line, where it bends under them, hide it: twice as bad as crossing another.
        let hidden = 0;
        for (const p of dots) {
          hidden += ink.count(p, font * 0.5, index) * 4;
          if (best && hidden > best.cost) break;
        }
        const cost = hidden + (side > 0 ? 1 : 0) + (start / total) * 0.5;
        if (!best || cost < best.cost) best = { label, cost, dots };
      }
    }
    return best;
  };
  const order = drawn
    .map((_, i) => i)
    .sort(
      (a, b) =>
        Number(lines[b]?.first ?? false) - Number(lines[a]?.first ?? false) ||
        (drawn[a]?.sums.at(-1) ?? 0) - (drawn[b]?.sums.at(-1) ?? 0),
    );
  const labels: Label[] = [];
  const keyed: Keyed[] = [];
  for (const index of order) {
    const d = drawn[index];
    if (!d || d.line.length < 2) continue;
    const sign = String(keyed.length + 1);
    const named = yield* place(index, d.name);
    const best = named ?? (yield* place(index, sign));
    if (!best) continue;
    if (!named) keyed.push({ sign, name: d.name });
    best.dots.forEach((p) => taken.add(p, index));
    labels.push(best.label);
  }
  return { labels, keyed };
}

/** Nobody threads slower under power than this. */
const LEAST_RPM = 10;

export interface PlotSize {
  readonly width: number;
  /** Most height; the drawing takes what its axes need. */
  readonly height: number;
  readonly font: number;
}

/** Names on the chart that are longer are cut: the table has them whole. */
const NAME = 11;
const short = (name: string): string => (name.length > NAME ? `${name.slice(0, NAME - 1)}…` : name);

/** Threads of one lead share a place: "M10 +1". */
const byLead = (threads: readonly PlotThread[], most: number): PlotThread[] => {
  const groups = new Map<string, PlotThread[]>();
  for (const t of threads) groups.set(t.lead.toFixed(3), [...(groups.get(t.lead.toFixed(3)) ?? []), t]);
  return [...groups.values()]
    .slice(0, most)
    .flatMap(([first, ...rest]) =>
      first ? [{ ...first, name: short(first.name) + (rest.length ? ` +${rest.length}` : '') }] : [],
    )
    .sort((a, b) => a.lead - b.lead);
};

const laidOut = function* (data: PlotData, { width, height, font }: PlotSize) {
  // What is lowest decides the scale: lines far above it have nothing to say here, and the table has every figure.
  const deciding = [
    ...data.ceiling.flat(),
    ...data.lines.filter((l) => l.kind === 'stop').flatMap((l) => l.points),
  ]
    .map((p) => p.rpm)
    .concat(data.rules.map((r) => r.rpm))
    .filter((x) => Number.isFinite(x) && x >= 1);
  const low = nice(Math.max(LEAST_RPM, Math.min(20, ...deciding)));
  const high = nice(Math.min(20000, Math.max(200, ...deciding) * 1.3), true);
  // Digits are wider than letters are on the whole, and the spindle’s own speeds heavier.
  const margin = widthOf('0000', font) + 8 + font / 3;
  const wordLines = data.words.map((w) => wrap(w, width, font));
  const head = wordLines.flat().length * font * 1.25 + data.words.length * font * 0.3;
  const threads = byLead(data.threads, Math.floor((width - 2 * margin) / (font * 1.15)));
  const strip = Math.max(0, ...threads.map((t) => widthOf(t.name, font))) + (threads.length ? font * 2.2 : 0);
  const left = margin;
  const right = width - margin;
  const top = head + font * 2.9;
  const decades = Math.log10(high / low);
  const perDecade = (right - left) / Math.log10(data.to / data.from);
  const foot = font * 2.7 + strip;
  const tall = Math.max(font * 16, Math.min(height - top - foot, perDecade * decades * 1.3));
  const f: Frame = { left, right, top, bottom: top + tall };
  const x = (lead: number): number =>
    left + (Math.log(lead / data.from) / Math.log(data.to / data.from)) * (right - left);
  const y = (rpm: number): number => f.bottom - (Math.log(rpm / low) / Math.log(high / low)) * tall;
  const pixels = (points: readonly ChartPoint[]): Pixel[] => points.map((p) => [x(p.lead), y(p.rpm)]);
  const inside = (lead: number): boolean => lead >= data.from * 0.999 && lead <= data.to * 1.001;
  const lines = data.lines.map((l) => ({ ...l, pixels: pixels(l.points) }));
  const rules = data.rules.filter((r) => r.rpm >= low && r.rpm <= high);
  const ruleYs = spread(
    rules.map((r) => -y(r.rpm)),
    font,
    -f.bottom,
    -f.top,
  );
  const slots = spread(
    threads.map((t) => x(t.lead)),
    font * 1.15,
    left,
    right,
  );
  return {
    frame: f,
    width,
    height: f.bottom + foot,
    words: wordLines,
    lines,
    ceiling: data.ceiling.map(pixels),
    ...(yield* placing(lines, f, font)),
    rules: rules.map((r, i) => ({ name: r.name, y: y(r.rpm), at: -(ruleYs[i] ?? 0) })),
    threads: threads.map((t, i) => ({
      name: t.name,
      x: x(t.lead),
      y: t.rpm === null ? null : y(t.rpm),
      slot: slots[i] ?? 0,
    })),
    speeds: speedTicks(low, high).map((rpm) => ({ text: String(rpm), y: y(rpm) })),
    leads: apart(
      LEADS.filter(inside).map((mm) => ({ text: String(mm).replace('.', data.mark), x: x(mm) })),
      font,
    ),
    tpi: apart(
      TPI.filter((n) => inside(25.4 / n)).map((n) => ({
        text: String(n).replace('.', data.mark),
        x: x(25.4 / n),
      })),
      font,
    ),
  };
};

export type Layout = ReturnType<typeof laidOut> extends Generator<unknown, infer L> ? L : never;

/** What was laid out: names take long to place, and the same drawing is asked for at every rendering. */
const known = new WeakMap<PlotData, Map<string, Layout>>();

/** Lays a drawing out a name at a time; whoever runs it to its end finds it ready in `layout`. */
export function* layoutSteps(data: PlotData, size: PlotSize): Generator<void, Layout> {
  const sizes = known.get(data) ?? new Map<string, Layout>();
  known.set(data, sizes);
  const key = `${size.width} ${size.height} ${size.font}`;
  const kept = sizes.get(key) ?? (yield* laidOut(data, size));
  sizes.set(key, kept);
  return kept;
}

/** Where everything stands, at once. */
export const layout = (data: PlotData, size: PlotSize): Layout => {
  const steps = layoutSteps(data, size);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
};
