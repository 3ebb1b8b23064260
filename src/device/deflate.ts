const through = async (
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | null> => {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let length = 0;
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      void reader.cancel();
      return null;
    }
    parts.push(value);
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
};

/** Bytes made smaller (RFC 1951, without a header). */
export const deflate = async (bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> =>
  (await through(bytes, new CompressionStream('deflate-raw'), Infinity)) ?? bytes;

/**
 * The bytes that were deflated; null for anything else, and for what would become more than `most` bytes: a few bytes
 * can be made to swell to a phone's whole memory.
 */
export const inflate = (
  bytes: Uint8Array<ArrayBuffer>,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | null> =>
  through(bytes, new DecompressionStream('deflate-raw'), most).catch(() => null);
