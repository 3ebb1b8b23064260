import type { Chart, ChartRow, GrooveId } from '../core/figures/chart';
import { leadNumber, toNumber, type Ratio } from '../core/quantity';
import type { chartText } from '../text/chart';
import type { limitText } from '../text/why-limits';
import type { PlotData, PlotLine } from './chart-layout';

/** What everything on the chart is called, and which threads have their place on it. */
export interface ChartNames {
  readonly limit: typeof limitText;
  readonly groove: Readonly<Record<GrooveId, string>>;
  /** The room entered for the job; null where none is. */
  readonly room: string | null;
  readonly rpm: (r: Ratio) => string;
  /** A thread's name; null where it isn't drawn. */
  readonly thread: (row: ChartRow) => string | null;
  /** Decimal mark of the axes. */
  readonly mark: string;
  readonly words: readonly string[];
  readonly axis: typeof chartText.axis;
}

/** The wall chart as it is drawn, all of it named. */
export const plotDataOf = (c: Chart, names: ChartNames): PlotData => {
  const binding = new Set(c.ceiling.map((s) => s.id));
  const { room } = names;
  const lines: PlotLine[] = [
    ...c.lines.map((l) => ({
      name: names.limit[l.id].name,
      kind: l.side === 'drive' ? ('limit' as const) : ('work' as const),
      points: l.points,
      first: binding.has(l.id),
    })),
    ...c.grooves.map((g) => ({
      name: names.groove[g.id],
      kind: 'stop' as const,
      points: g.points,
      first: true,
    })),
    ...(c.entered && room ? [{ name: room, kind: 'stop' as const, points: c.entered, first: true }] : []),
  ].filter((l) => l.points.length > 0);
  return {
    from: c.from,
    to: c.to,
    lines,
    mark: names.mark,
    ceiling: c.ceiling.map((s) => s.points),
    rules: c.own.rpm.map((rpm) => ({ name: names.rpm(rpm), rpm: toNumber(rpm) })),
    threads: c.rows.flatMap((r) => {
      const name = names.thread(r);
      if (name === null) return [];
      const { highest } = r.drive;
      return [{ name, lead: leadNumber(r.lead), rpm: highest === null ? null : Number(highest) }];
    }),
    words: names.words,
    axis: names.axis,
  };
};
