/** Signs by which a spreadsheet takes a cell for a formula; a tab or return before one is as bad. */
const FORMULA = /^[=+\-@\t\r]/;

/** One cell (RFC 4180, 2.5 to 2.7): never a formula, quoted where it holds a comma, a quote or a line break. */
export const csvCell = (text: string): string => {
  const plain = FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n']/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
};

/** A table as text by RFC 4180: the header first, every line ended by CR LF. */
export const csvText = (header: readonly string[], rows: readonly (readonly string[])[]): string =>
  [header, ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
