/** The tool's outline in a groove, as drawing needs it. Lengths in one unit (mm), angles in degrees. Drawing only. */
export interface GrooveTool {
  /** Flanks to the left and to the right, from square to the axis. */
  readonly left: number;
  readonly right: number;
  readonly flat: number;
  readonly radius: number;
}

/** Where the tool stands in one pass: its tip's depth, and how far to the right of where it ends. */
export interface GrooveCut {
  readonly depth: number;
  readonly at: number;
}

const rad = (degrees: number) => (degrees * Math.PI) / 180;
const fixed = (value: number) => String(Math.round(value * 100) / 100);

/** From the surface down one flank to where the tip begins, as distances from the tip's middle; `x` outwards. */
const flank = (angle: number, { flat, radius }: GrooveTool, depth: number) => {
  const a = rad(angle);
  const tangent = radius * (1 - Math.sin(a));
  if (depth <= tangent) {
    // Not yet past the arc: the surface cuts it.
    const x = flat / 2 + Math.sqrt(Math.max(0, radius ** 2 - (radius - depth) ** 2));
    return { top: x, foot: { x, y: 0 } };
  }
  const foot = { x: flat / 2 + radius * Math.cos(a), y: depth - tangent };
  return { top: foot.x + foot.y * Math.tan(a), foot };
};

/** Half widths of the groove at the surface. */
export const reach = (
  tool: GrooveTool,
  depth: number,
): { readonly left: number; readonly right: number } => ({
  left: flank(tool.left, tool, depth).top,
  right: flank(tool.right, tool, depth).top,
});

/** An SVG path of what the tool fills below the surface (y down from it), closed along it. */
export const groovePath = (tool: GrooveTool, { depth, at }: GrooveCut, scale: number): string => {
  const [l, r] = [flank(tool.left, tool, depth), flank(tool.right, tool, depth)];
  const p = (x: number, y: number) => `${fixed((at + x) * scale)} ${fixed(y * scale)}`;
  const size = fixed(tool.radius * scale);
  const tip =
    tool.radius > 0 ? `A${size} ${size} 0 0 0 ${p(r.foot.x, r.foot.y)}` : `L${p(r.foot.x, r.foot.y)}`;
  return `M${p(-l.top, 0)}L${p(-l.foot.x, l.foot.y)}${tip}L${p(r.top, 0)}z`;
};
