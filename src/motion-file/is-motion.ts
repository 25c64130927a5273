import { readBytes, withSource } from '../analysis/wav-source.js';
import { MAGIC, MOTION_EXTENSION } from './motion-layout.js';

/** True for bytes that begin as a motion file does. */
export function isMotion(bytes: Uint8Array): boolean {
  return MAGIC.every((byte, index) => bytes[index] === byte);
}

/**
 * Whether a file is to be read as a saved motion. What it begins with decides; its name does only
 * where it begins neither as a motion file nor as a sound file, so that a damaged one is called that.
 * @throws InputError if it cannot be read
 */
export async function isMotionFile(path: string): Promise<boolean> {
  return await withSource(path, async (source) => {
    const first = await readBytes(source, 0, MAGIC.length);
    if (isMotion(first)) return true;
    const isNamedSo = path.toLowerCase().endsWith(MOTION_EXTENSION);
    return isNamedSo && !/^(RIFF|RF64|BW64|FORM|fLaC)/.test(Buffer.from(first).toString('latin1'));
  });
}
