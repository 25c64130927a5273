// @ts-check
import { writeFileSync } from 'node:fs';

const RATE = 44_100;
const HEAD_BYTES = 44;

/**
 * Writes an invented side as a WAV: struck chords, loud and wide enough for findings of many kinds.
 * @param {string} path
 * @param {number} seconds
 */
export function writeUsualSide(path, seconds) {
  const frames = Math.round(seconds * RATE);
  const bytes = Buffer.alloc(HEAD_BYTES + 4 * frames);
  bytes.write('RIFF\0\0\0\0WAVEfmt \x10\0\0\0\x01\0\x02\0', 'latin1');
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.writeUInt32LE(RATE, 24);
  bytes.writeUInt32LE(4 * RATE, 28);
  bytes.writeUInt16LE(4, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36, 'latin1');
  bytes.writeUInt32LE(4 * frames, 40);
  const words = new Int16Array(bytes.buffer, bytes.byteOffset + HEAD_BYTES, 2 * frames);
  for (let frame = 0; frame < frames; frame++) {
    const beat = frame % (RATE / 2);
    const swell = 0.3 + (0.7 * ((frame / RATE) % 20)) / 20;
    const strength = swell * Math.exp(-beat / 9000);
    const angle = (2 * Math.PI * beat) / RATE;
    const bass = Math.sin(55 * angle);
    const hiss = Math.sin(9000 * angle + 3 * Math.sin(700 * angle));
    words[2 * frame] = 32_700 * strength * (0.6 * bass + 0.4 * hiss);
    words[2 * frame + 1] = 32_700 * strength * (0.5 * Math.cos(61 * angle) - 0.4 * hiss);
  }
  writeFileSync(path, bytes);
}
