/** A code as it is drawn. */
export interface CodeDrawing {
  /** Modules along one side, with the quiet zone. */
  readonly size: number;
  /** SVG path in modules, for a stroke one module wide: the dark runs of each row. */
  readonly path: string;
}

/** Light modules that must surround a code (ISO/IEC 18004, quiet zone). */
export const QUIET = 4;

/** The drawing of a code's rows of modules, true for dark, given without their quiet zone. */
export const drawingOf = (rows: readonly (readonly boolean[])[]): CodeDrawing => {
  let path = '';
  rows.forEach((row, y) => {
    path += `M${QUIET} ${QUIET + y}.5`;
    for (let x = 0; x < row.length;) {
      const dark = row[x] === true;
      const from = x;
      while (x < row.length && (row[x] === true) === dark) x += 1;
      if (dark) path += `h${x - from}`;
      else if (x < row.length) path += `m${x - from} 0`;
    }
  });
  return { size: rows.length + 2 * QUIET, path };
};
