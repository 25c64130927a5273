import { createHash } from 'node:crypto';
import { readFrames } from './wav-blocks.js';
import type { OpenWav } from './wav-file.js';

/**
 * SHA-256 of a file's whole frames as they lie in it, 64 hexadecimal digits: the sound alone, so
 * that other chunks (names, marks, dates), a longer head and bytes of a cut last frame do not
 * matter, and another sample format does. One more read of the file, in blocks.
 * Source: FIPS 180-4.
 */
export async function hashAudio(wav: OpenWav): Promise<string> {
  const hash = createHash('sha256');
  for await (const block of readFrames(wav)) hash.update(block);
  return hash.digest('hex');
}
