import type { FrameSource } from './frame-source.js';

/**
 * SHA-256 of a program's whole frames, of a file as they lie in it, 64 hexadecimal digits: the sound alone, so
 * that other chunks (names, marks, dates), a longer head and bytes of a cut last frame do not
 * matter, and another sample format does. One more read of the file, in blocks.
 * Source: FIPS 180-4.
 */
export async function hashAudio(source: FrameSource): Promise<string> {
  const { createHash } = await import('./create-hash.js');
  const hash = createHash('sha256');
  for await (const block of source.read()) hash.update(block);
  return hash.digest('hex');
}
