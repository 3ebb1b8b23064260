/** Reflected form of the polynomial 0x04C11DB7 of IEEE 802.3. */
const POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let c = byte;
  for (let bit = 0; bit < 8; bit += 1) c = c & 1 ? (c >>> 1) ^ POLYNOMIAL : c >>> 1;
  return c;
});

const step = (crc: number, byte: number): number => (crc >>> 8) ^ (TABLE[(crc ^ byte) & 0xff] ?? 0);

/** CRC-32 (IEEE 802.3, 3.2.9) of bytes. @returns 0 to 2³² − 1 */
export const crcOfBytes = (bytes: Uint8Array): number => (bytes.reduce(step, 0xffffffff) ^ 0xffffffff) >>> 0;

/**
 * CRC-32 (IEEE 802.3, 3.2.9) of a text as UTF-8 (RFC 3629). It tells a damaged file from a whole one, and nothing about who
 * made it.
 * @param text without unpaired surrogates, as JSON.stringify writes it
 * @returns eight hexadecimal digits
 */
export const crc32 = (text: string): string => {
  let crc = 0xffffffff;
  const take = (byte: number): void => {
    crc = step(crc, byte);
  };
  const rest = (code: number, shift: number): void => {
    for (let s = shift; s >= 0; s -= 6) take(0x80 | ((code >> s) & 0x3f));
  };
  for (let i = 0; i < text.length; i += 1) {
    const code = text.codePointAt(i) ?? 0;
    if (code < 0x80) take(code);
    else if (code < 0x800) {
      take(0xc0 | (code >> 6));
      rest(code, 0);
    } else if (code < 0x10000) {
      take(0xe0 | (code >> 12));
      rest(code, 6);
    } else {
      take(0xf0 | (code >> 18));
      rest(code, 12);
      i += 1;
    }
  }
  return ((crc ^ 0xffffffff) >>> 0).toString(16).padStart(8, '0');
};
