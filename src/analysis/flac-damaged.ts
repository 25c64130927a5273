import { InputError } from '../errors.js';
import type { FlacPlace } from './flac-layout.js';

/**
 * The error for a block that is not as it was encoded. Where one ends only the next one's head tells,
 * so that damage there is found in both.
 */
export function flacDamaged(path: string, { at, firstFrame }: FlacPlace): InputError {
  const message =
    `${path}: byte ${at} (frame ${firstFrame}): found a block of sound that is damaged or followed ` +
    'by one that is, or that does not follow the one before it, expected right checksums';
  return new InputError(path, 'sound-damaged', `${message}; fetch or export the file again`);
}

/** The error for sound that is not what was encoded, although each block is. */
export function flacDiffers(path: string): InputError {
  const message = `${path}: found sound with another MD5 than the file has of it, expected the same`;
  return new InputError(path, 'sound-damaged', `${message}; fetch or export the file again`);
}
