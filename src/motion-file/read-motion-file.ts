import { readBytes, withSource } from '../analysis/wav-source.js';
import { decodeMotion } from './decode-motion.js';
import { isMotion } from './is-motion.js';
import { motionError } from './motion-error.js';
import { MOST_FILE_BYTES } from './motion-layout.js';
import type { SavedMotion } from './saved-motion.js';

/**
 * What a motion file holds.
 * @throws InputError if it cannot be read, or for the reasons of decodeMotion
 */
export async function readMotionFile(path: string): Promise<SavedMotion> {
  return await withSource(path, async (source) => {
    const first = await readBytes(source, 0, 64);
    if (isMotion(first) && source.size > MOST_FILE_BYTES) {
      throw motionError(path, {
        code: 'bad-motion',
        found: `${source.size} bytes`,
        expected: `at most ${MOST_FILE_BYTES}`,
        remedy: 'save the motion again',
      });
    }
    // Of what is no motion file, its first bytes are enough to say so.
    const bytes = isMotion(first) ? await readBytes(source, 0, source.size) : first;
    return decodeMotion(path, bytes);
  });
}
