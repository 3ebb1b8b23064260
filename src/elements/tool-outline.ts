/** A tool's point for drawing: lengths in one unit, angles in degrees. */
export interface ToolPoint {
  /** Angle of the flank on each side from the line square to the axis. */
  readonly left: number;
  readonly right: number;
  /** One of the two is 0; a sharp tool has neither. */
  readonly radius: number;
  readonly flat: number;
  /** Tip to pitch line. */
  readonly below: number;
  /** Tip to where the drawing of the tool ends. */
  readonly height: number;
}

const RAD = Math.PI / 180;
const STEPS = 12;

/**
 * The outline from upper left round the tip to upper right, as [along, above the tip]. It stands where its left flank
 * passes the pitch line a quarter of the pitch left of 0, as the groove's does.
 */
export const toolOutline = (tool: ToolPoint, pitch: number): [number, number][] => {
  const [a, b] = [tool.left * RAD, tool.right * RAD];
  const { radius: r, flat, height } = tool;
  const arc: [number, number][] = [];
  if (r > 0)
    for (let i = 0; i <= STEPS; i += 1) {
      const turn = Math.PI + a + ((Math.PI - a - b) * i) / STEPS;
      arc.push([r * Math.cos(turn), r + r * Math.sin(turn)]);
    }
  else arc.push([-flat / 2, 0], [flat / 2, 0]);
  const first = arc[0] ?? [0, 0];
  const last = arc[arc.length - 1] ?? [0, 0];
  const leftAt = (h: number): number => first[0] - (h - first[1]) * Math.tan(a);
  const shift = -pitch / 4 - leftAt(tool.below);
  const all: [number, number][] = [
    [leftAt(height), height],
    ...arc,
    [last[0] + (height - last[1]) * Math.tan(b), height],
  ];
  return all.map(([x, y]) => [x + shift, y]);
};
