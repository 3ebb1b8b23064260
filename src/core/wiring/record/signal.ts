/** What the name of a signal says of it. Names are those printed on terminals: A, /A, STEP+, +5 V, 0 V, PE. */

/** The other half of a pair by its name: A and /A, STEP+ and STEP−; null where the name is of no pair. */
export const partnerOf = (signal: string): string | null => {
  if (signal.startsWith('/')) return signal.slice(1);
  const last = signal.at(-1);
  const body = signal.slice(0, -1);
  if (/^[A-Za-z]/.test(signal)) {
    if (last === '+') return `${body}-`;
    if (last === '-' || last === '−') return `${body}+`;
  }
  return null;
};

/** Whether two names are the two halves of one pair, A with /A too. */
export const arePartners = (a: string, b: string): boolean => {
  const plain = (s: string): string => s.replaceAll('−', '-').trim();
  const [x, y] = [plain(a), plain(b)];
  return partnerOf(x) === y || partnerOf(y) === x;
};

/** Names under which conductors of the supply network, of an inverter or of a protective conductor are known. */
const DANGEROUS = /^(L[1-3]?|N|[UVW][12]?|LIVE|LINE|NEUTRAL|MAINS)$/i;
const VOLTS = /(\d+(?:[.,]\d+)?) ?V/i;
/** Extra-low voltage ends at 50 V alternating (IEC 61140); of direct voltage too, on the careful side. */
const LOW_VOLTAGE = 50;

/** Whether a name is one of mains or inverter wires, or says a voltage above extra-low voltage. */
export const isDangerous = (signal: string): boolean => {
  const volts = VOLTS.exec(signal)?.[1];
  return (
    DANGEROUS.test(signal.trim()) || (volts !== undefined && Number(volts.replace(',', '.')) > LOW_VOLTAGE)
  );
};

/** Protective or functional earth, by its usual names. */
export const isEarth = (signal: string): boolean =>
  /^(PE|FE|EARTH|GROUND|SHIELD|SCREEN)$/i.test(signal.trim());
