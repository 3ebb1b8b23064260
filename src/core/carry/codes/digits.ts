/**
 * Bytes as one long decimal number, for a code's numeric mode. What a code of version 15 with correction M (3320 bits,
 * ISO/IEC 18004 table 7) carries of bytes that come back from every scanner:
 *
 * | mode         | signs | bytes | why                                                                                |
 * |--------------|-------|-------|------------------------------------------------------------------------------------|
 * | byte         |   412 |     – | scanners give text back and guess its encoding: bytes above 127 are lost           |
 * | alphanumeric |   600 |   400 | in base 45 (RFC 9285): two bytes in three signs, 16 of 16.5 bits                   |
 * | numeric      |   991 |   411 | one number of all bytes: 3.3219 of 3⅓ bits in each digit, and nothing but digits   |
 */

/** Digits a code of version 15 with correction M holds. */
export const MOST_DIGITS = 991;
/** Bytes whose number never has more digits than that: 256⁴¹¹ < 10⁹⁹⁰. */
export const MOST_BYTES = 411;

/** The number, its highest byte first. @throws RangeError for a first byte of 0, which a number would lose */
export const toDigits = (bytes: Uint8Array): string => {
  if (!bytes[0]) throw new RangeError('first byte is 0');
  let hex = '0x';
  for (const byte of bytes) hex += byte.toString(16).padStart(2, '0');
  return BigInt(hex).toString();
};

/** The bytes of a number as `toDigits` writes it; null for anything else, or anything longer than a code holds. */
export const fromDigits = (text: string): Uint8Array | null => {
  if (text.length > MOST_DIGITS || !/^[1-9]\d*$/.test(text)) return null;
  const hex = BigInt(text).toString(16);
  const even = hex.length % 2 ? `0${hex}` : hex;
  return Uint8Array.from({ length: even.length / 2 }, (_, i) => parseInt(even.slice(2 * i, 2 * i + 2), 16));
};
