/** What is unpacked may have no more bytes: a small parcel can hold a bomb. */
export const MAX_UNPACKED_BYTES = 16 * 2 ** 20;

/** Bytes packed by gzip (RFC 1952). */
export async function pack(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  const packed = new Blob([bytes]).stream().pipeThrough(new CompressionStream('gzip'));
  return new Uint8Array(await new Response(packed).arrayBuffer());
}

/**
 * Unpacks what {@link pack} made, and stops as soon as it grows too large. Never throws.
 *
 * @returns undefined for what is no whole gzip, or more than `most` bytes
 */
export async function unpack(
  packed: Uint8Array<ArrayBuffer>,
  most = MAX_UNPACKED_BYTES
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const pieces: Uint8Array[] = [];
  let size = 0;
  const reader = new Blob([packed])
    .stream()
    .pipeThrough(new DecompressionStream('gzip'))
    .getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) break;
      size += value.length;
      if (size > most) {
        await reader.cancel();
        return undefined;
      }
      pieces.push(value);
    }
  } catch {
    return undefined;
  }
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
