let table: Uint32Array | undefined;

const made = (): Uint32Array =>
  Uint32Array.from({ length: 256 }, (_, byte) => {
    let rest = byte;
    for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
    return rest;
  });

/**
 * Checksum over bytes: CRC-32 of ITU-T V.42 § 8.1.1.6.2 (polynomial 04C11DB7 hexadecimal, bits reflected, all ones before
 * and inverted after).
 * @returns 0 to 2³² − 1
 */
export const crc32 = (bytes: Uint8Array): number => {
  table ??= made();
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (table[(rest ^ byte) & 255] ?? 0) ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
};
