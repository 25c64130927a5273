// @ts-check
import { createHash } from 'node:crypto';
import { seededNoise } from '../../examples/demo/seeded-noise.mjs';
import { FRAME_BYTES, wavHead } from '../../examples/demo/wav-head.mjs';

const RATE = 44_100;

/**
 * A short stereo WAV of quiet noise, another for each seed.
 * @param {number} seed not 0
 * @param {number} frames
 */
export function noiseWav(seed, frames = 4410) {
  const noise = seededNoise(seed);
  // So that seeds that are near each other do not begin alike.
  for (let skipped = 0; skipped < 20; skipped++) noise();
  const sound = Buffer.alloc(FRAME_BYTES * frames);
  for (let at = 0; at < sound.length; at += 3) {
    sound.writeIntLE(Math.round(2 ** 19 * noise()), at, 3);
  }
  return Buffer.concat([wavHead(RATE, frames), sound]);
}

/** @param {Uint8Array} bytes */
export function sha256(bytes) {
  return createHash('sha256').update(bytes).digest('hex');
}
