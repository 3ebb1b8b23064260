/** Under which a workshop's machines stand together: names that differ in case or blanks alone are one workshop's. */
export const workshopKey = (name: string): string =>
  name.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim();
