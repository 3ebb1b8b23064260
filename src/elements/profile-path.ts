/** What the drawing of a thread's profile needs; lengths in one unit (mm), angles in degrees. Drawing only. */
export interface ProfileShape {
  readonly pitch: number;
  /** Angle of each flank with the perpendicular to the axis: [right of the ridge, left of the ridge]. */
  readonly flanks: readonly [number, number];
  /** Crest to root. */
  readonly depth: number;
  /** Crest to pitch line, where ridge and groove are equally wide. */
  readonly pitchDepth: number;
  /** Radius at the crest; 0 leaves the flat that the flanks give. */
  readonly crestRadius: number;
  readonly rootRadius: number;
}

/** A corner of the outline: x along the axis, y down from the crest, rounded by r. */
export interface Corner {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);

/** The flats that flanks and depth leave, as plane geometry gives them; negative where the flanks would cross. */
export const flats = (s: ProfileShape): { crest: number; root: number } => {
  const spread = tan(s.flanks[0]) + tan(s.flanks[1]);
  return {
    crest: s.pitch / 2 - s.pitchDepth * spread,
    root: s.pitch / 2 - (s.depth - s.pitchDepth) * spread,
  };
};

/**
 * Corners of one end (crest: sign −1, root: +1) between a flank on its left and one on its right. A radius large enough
 * to touch both flanks and the end line is one rounded corner at the flanks' meeting point; a smaller one rounds two.
 */
const end = (
  centre: number,
  y: number,
  left: number,
  right: number,
  pitchY: number,
  r: number,
  half: number,
): Corner[] => {
  const reach = Math.abs(y - pitchY);
  const spread = left + right;
  const outward = Math.sign(y - pitchY);
  if (r > 0 && spread > 0) {
    const apex = (2 * half) / spread;
    const included = Math.atan(left) + Math.atan(right);
    const top = apex - r / Math.sin(included / 2) + r;
    if (top <= reach * 1.02) {
      const x = centre - half + apex * left;
      return [{ x, y: pitchY + outward * apex, r }];
    }
  }
  return [
    { x: centre - half + reach * left, y, r },
    { x: centre + half - reach * right, y, r },
  ];
};

/** Corners of `turns` ridges and grooves from the middle of a groove to the middle of the last one. */
export const corners = (s: ProfileShape, turns: number): Corner[] => {
  const [right, left] = [tan(s.flanks[0]), tan(s.flanks[1])];
  const list: Corner[] = [];
  for (let i = 0; i <= turns; i += 1) {
    list.push(...end(i * s.pitch, s.depth, right, left, s.pitchDepth, s.rootRadius, s.pitch / 4));
    if (i < turns)
      list.push(...end((i + 0.5) * s.pitch, 0, left, right, s.pitchDepth, s.crestRadius, s.pitch / 4));
  }
  return list;
};

const fixed = (value: number) => String(Math.round(value * 100) / 100);

/** An SVG path through the corners, each rounded by an arc that touches both of its sides. */
export const roundedPath = (list: readonly Corner[], scale: number): string =>
  list
    .map((c, i) => {
      const [a, b] = [list[i - 1], list[i + 1]];
      if (!a || !b || c.r === 0) return `${i === 0 ? 'M' : 'L'}${fixed(c.x * scale)} ${fixed(c.y * scale)}`;
      const [la, lb] = [Math.hypot(a.x - c.x, a.y - c.y), Math.hypot(b.x - c.x, b.y - c.y)];
      const [ax, ay] = [(a.x - c.x) / la, (a.y - c.y) / la];
      const [bx, by] = [(b.x - c.x) / lb, (b.y - c.y) / lb];
      const angle = Math.acos(Math.max(-1, Math.min(1, ax * bx + ay * by)));
      const cut = Math.min(c.r / Math.tan(angle / 2), la, lb);
      const r = cut * Math.tan(angle / 2) * scale;
      const sweep = ax * by - ay * bx < 0 ? 1 : 0;
      const from = `${fixed((c.x + ax * cut) * scale)} ${fixed((c.y + ay * cut) * scale)}`;
      const to = `${fixed((c.x + bx * cut) * scale)} ${fixed((c.y + by * cut) * scale)}`;
      return `${i === 0 ? 'M' : 'L'}${from}A${fixed(r)} ${fixed(r)} 0 0 ${sweep} ${to}`;
    })
    .join('');
