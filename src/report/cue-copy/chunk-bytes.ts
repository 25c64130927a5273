/** A chunk of RIFF: name, size, content, and a byte of padding after an odd size. */
export function chunkBytes(id: string, content: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(8 + content.length + (content.length % 2));
  bytes.set(Buffer.from(id, 'latin1'));
  new DataView(bytes.buffer).setUint32(4, content.length, true);
  bytes.set(content, 8);
  return bytes;
}

/** A chunk within bytes that hold nothing but chunks. */
export interface InnerChunk {
  readonly id: string;
  readonly content: Uint8Array;
}

/** The chunks in these bytes; the last is cut where they end. */
export function innerChunks(bytes: Uint8Array): InnerChunk[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const chunks: InnerChunk[] = [];
  for (let at = 0; at + 8 <= bytes.length; ) {
    const size = view.getUint32(at + 4, true);
    const id = Buffer.from(bytes.subarray(at, at + 4)).toString('latin1');
    chunks.push({ id, content: bytes.subarray(at + 8, at + 8 + size) });
    at += 8 + size + (size % 2);
  }
  return chunks;
}
