// @ts-check
import { closeSync, existsSync, mkdirSync, openSync, renameSync, writeSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { seededNoise } from '../../examples/demo/seeded-noise.mjs';
import { FRAME_BYTES, wavHead } from '../../examples/demo/wav-head.mjs';

export const SIDE_MINUTES = 20;
const RATE = 96_000;
const FRAMES = SIDE_MINUTES * 60 * RATE;
/** 0.53 s. */
const BEAT_FRAMES = 50_880;

/**
 * A side of coloured noise under beats and three drifting tones, made once and kept.
 * @returns {string} its path, in a folder that git ignores
 */
export function benchSide() {
  const folder = fileURLToPath(new URL('generated/', import.meta.url));
  const path = `${folder}side-${SIDE_MINUTES}-minutes.wav`;
  if (existsSync(path)) return path;
  mkdirSync(folder, { recursive: true });
  const unfinished = `${folder}unfinished.wav`;
  const file = openSync(unfinished, 'w');
  writeSync(file, wavHead(RATE, FRAMES));
  const music = musician();
  const second = Buffer.alloc(RATE * FRAME_BYTES);
  for (let frame = 0; frame < FRAMES; frame++) {
    const at = (frame % RATE) * FRAME_BYTES;
    music.next();
    second.writeIntLE(Math.round(music.left * 2 ** 23), at, 3);
    second.writeIntLE(Math.round(music.right * 2 ** 23), at + 3, 3);
    if (at + FRAME_BYTES === second.length) writeSync(file, second);
  }
  closeSync(file);
  renameSync(unfinished, path);
  return path;
}

/**
 * Plays frame after frame; peaks stay under 0.6. The noise falls with frequency like music does
 * (two one-pole sections and a little white), the beat comes every 0.53 s.
 */
function musician() {
  const [white, other] = [seededNoise(7), seededNoise(11)];
  const low = [0, 0];
  const tones = [55.3, 220.7, 1320.2].map((hz) => (2 * Math.PI * hz) / RATE);
  let frame = 0;
  let beat = 0;
  return {
    left: 0,
    right: 0,
    next() {
      if (frame % BEAT_FRAMES === 0) beat = 1;
      beat *= 0.99994;
      const level = 0.3 + 0.7 * beat;
      const shared = white();
      const apart = other();
      low[0] = 0.97 * (low[0] ?? 0) + 0.03 * (shared + 0.5 * apart);
      low[1] = 0.97 * (low[1] ?? 0) + 0.03 * (shared - 0.5 * apart);
      let tone = 0;
      for (const [k, step] of tones.entries()) tone += (0.1 / (k + 1)) * Math.sin(step * frame);
      this.left = level * (0.8 * low[0] + 0.01 * shared + tone);
      this.right = level * (0.8 * low[1] + 0.01 * apart + tone);
      frame++;
    },
  };
}
