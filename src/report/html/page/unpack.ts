import { fromPrintable } from '../data/printable.js';

/** The bytes that were deflated and written as `toPrintable` does. */
export async function unpack(text: string): Promise<Uint8Array> {
  const stream = new Blob([fromPrintable(text.trim())])
    .stream()
    .pipeThrough(new DecompressionStream('deflate-raw'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}
