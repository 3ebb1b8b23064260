/** Complex nodal analysis by Gaussian elimination: of its own, so that it shares nothing with what it checks. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}
const sub = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
const mul = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
const div = (a: Complex, b: Complex): Complex => {
  const d = b.re ** 2 + b.im ** 2;
  return { re: (a.re * b.re + a.im * b.im) / d, im: (a.im * b.re - a.re * b.im) / d };
};
export const size = (a: Complex): number => Math.hypot(a.re, a.im);

export type Part = readonly [kind: 'R' | 'L' | 'C', from: number, to: number, value: number];

/** Voltages of nodes 1…n with a source of 1 V at node 1; node 0 is ground. */
export const solve = (parts: readonly Part[], nodes: number, f: number): Complex[] => {
  const w = 2 * Math.PI * f;
  const zero = { re: 0, im: 0 };
  // Unknowns: the nodes' voltages and the source's current.
  const n = nodes + 1;
  const a: Complex[][] = Array.from({ length: n }, () => Array.from({ length: n + 1 }, () => zero));
  const put = (i: number, j: number, y: Complex) => {
    const row = a[i - 1];
    const was = row?.[j - 1];
    if (i > 0 && j > 0 && row && was) row[j - 1] = { re: was.re + y.re, im: was.im + y.im };
  };
  for (const [kind, from, to, value] of parts) {
    const y =
      kind === 'R'
        ? { re: 1 / value, im: 0 }
        : kind === 'C'
          ? { re: 0, im: w * value }
          : { re: 0, im: -1 / (w * value) };
    const minus = { re: -y.re, im: -y.im };
    put(from, from, y);
    put(to, to, y);
    put(from, to, minus);
    put(to, from, minus);
  }
  const one = { re: 1, im: 0 };
  put(1, n, one);
  put(n, 1, one);
  const last = a[n - 1];
  if (last) last[n] = one;
  for (let col = 0; col < n; col += 1) {
    let pivot = col;
    for (let row = col; row < n; row += 1)
      if (size(a[row]?.[col] ?? zero) > size(a[pivot]?.[col] ?? zero)) pivot = row;
    const [top, was] = [a[pivot] ?? [], a[col] ?? []];
    a[col] = top;
    a[pivot] = was;
    for (let row = 0; row < n; row += 1) {
      const r = a[row] ?? [];
      if (row === col) continue;
      const by = div(r[col] ?? zero, top[col] ?? zero);
      for (let k = col; k <= n; k += 1) r[k] = sub(r[k] ?? zero, mul(by, top[k] ?? zero));
    }
  }
  return a.slice(0, nodes).map((row, i) => div(row[n] ?? zero, row[i] ?? zero));
};
