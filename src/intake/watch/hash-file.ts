import { createHash } from 'node:crypto';
import { readInto, withSource } from '../../analysis/wav-source.js';

const BLOCK_BYTES = 2 ** 20;

/**
 * SHA-256 of all bytes that a file has when it is opened, 64 hexadecimal digits.
 * Source: FIPS 180-4.
 * @throws InputError if it cannot be read
 */
export async function hashFile(path: string): Promise<string> {
  return await withSource(path, async (source) => {
    const hash = createHash('sha256');
    const block = new Uint8Array(Math.min(BLOCK_BYTES, source.size));
    // Not to the end of a file that grows: it will be looked at again.
    for (let at = 0; at < source.size; ) {
      const filled = await readInto(source, block, at);
      if (filled === 0) break;
      hash.update(block.subarray(0, filled));
      at += filled;
    }
    return hash.digest('hex');
  });
}
