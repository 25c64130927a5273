import { fromPrintable } from '../data/printable.js';

/** The bytes that were deflated and written as `toPrintable` does. Rejects what is damaged. */
export async function unpack(text: string): Promise<Uint8Array> {
  const stream = new Blob([fromPrintable(text.trim())])
    .stream()
    .pipeThrough(new DecompressionStream('deflate'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}
