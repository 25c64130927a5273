/** The bytes that were deflated and written as base64. */
export async function unpack(base64: string): Promise<Uint8Array> {
  const packed = Uint8Array.from(atob(base64.trim()), (character) => character.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}
