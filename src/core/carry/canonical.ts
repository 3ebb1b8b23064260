/**
 * One text for one value, however its keys are ordered and its lines are broken (RFC 8785: keys by their UTF-16 code units,
 * no blanks, numbers as ECMAScript writes them).
 * @param x what JSON can hold; anything else counts as null
 */
export const canonical = (x: unknown): string => {
  if (Array.isArray(x)) return `[${x.map(canonical).join(',')}]`;
  if (typeof x !== 'object' || x === null) return JSON.stringify(x) ?? 'null';
  const fields = x as Readonly<Record<string, unknown>>;
  const parts = Object.keys(fields)
    .filter((key) => fields[key] !== undefined)
    .sort()
    .map((key) => `${JSON.stringify(key)}:${canonical(fields[key])}`);
  return `{${parts.join(',')}}`;
};

/** Whether two values are the same as JSON. */
export const alike = (a: unknown, b: unknown): boolean => a === b || canonical(a) === canonical(b);
