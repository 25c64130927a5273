// @ts-check
import { writeFileSync } from 'node:fs';
import { FRAME_BYTES, wavHead } from './wav-head.mjs';

/**
 * Writes a tape as a stereo WAV file of 24 bits, each sample rounded to the nearest step.
 * @param {string} path
 * @param {import('./tape.mjs').Tape} tape
 */
export function writeWav(path, { rate, left, right }) {
  const sound = Buffer.alloc(FRAME_BYTES * left.length);
  for (let frame = 0; frame < left.length; frame++) {
    const at = FRAME_BYTES * frame;
    sound.writeIntLE(word(left[frame] ?? 0), at, 3);
    sound.writeIntLE(word(right[frame] ?? 0), at + 3, 3);
  }
  writeFileSync(path, Buffer.concat([wavHead(rate, left.length), sound]));
}

/** @param {number} value full scale 1 */
function word(value) {
  return Math.max(-(2 ** 23), Math.min(2 ** 23 - 1, Math.round(value * 2 ** 23)));
}
