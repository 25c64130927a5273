/** Bytes of the number that says how long the head is. */
const LENGTH_BYTES = 4;

/** Head, as UTF-8 behind its length, and what is coded in one. */
export function joinPageBytes(head: string, coded: Uint8Array): Uint8Array {
  const text = new TextEncoder().encode(head);
  const bytes = new Uint8Array(LENGTH_BYTES + text.length + coded.length);
  new DataView(bytes.buffer).setUint32(0, text.length, true);
  bytes.set(text, LENGTH_BYTES);
  bytes.set(coded, LENGTH_BYTES + text.length);
  return bytes;
}

export function splitPageBytes(bytes: Uint8Array): { head: string; coded: Uint8Array } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = LENGTH_BYTES + view.getUint32(0, true);
  const head = new TextDecoder().decode(bytes.subarray(LENGTH_BYTES, end));
  return { head, coded: bytes.subarray(end) };
}
