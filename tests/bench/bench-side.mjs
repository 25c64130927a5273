// @ts-check
import {
  closeSync,
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  openSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { fileURLToPath } from 'node:url';
import { seededNoise } from '../../examples/demo/seeded-noise.mjs';
import { FRAME_BYTES, HEAD_BYTES, wavHead } from '../../examples/demo/wav-head.mjs';
import { longHead } from './long-head.mjs';

/** Git ignores what is made here; it is made once and kept. */
const FOLDER = fileURLToPath(new URL('generated/', import.meta.url));
const BEAT_SECONDS = 0.53;

/**
 * A side of coloured noise under beats and three drifting tones, 24 bit, stereo.
 * @param {{ seconds: number, rate: number }} side
 * @returns {string} its path
 */
export function benchSide({ seconds, rate }) {
  return made(`side-${seconds}-s-${rate}.wav`, (path) => {
    const frames = seconds * rate;
    const file = openSync(path, 'w');
    writeSync(file, wavHead(rate, frames));
    const music = musician(rate);
    const second = Buffer.alloc(rate * FRAME_BYTES);
    for (let frame = 0; frame < frames; frame++) {
      const at = (frame % rate) * FRAME_BYTES;
      music.next();
      second.writeIntLE(Math.round(music.left * 2 ** 23), at, 3);
      second.writeIntLE(Math.round(music.right * 2 ** 23), at + 3, 3);
      if (at + FRAME_BYTES === second.length) writeSync(file, second);
    }
    closeSync(file);
  });
}

/**
 * The sound of a side several times over, as RF64: what is too long to be played anew.
 * @param {{ seconds: number, rate: number }} side
 * @param {number} times
 * @returns {string} its path
 */
export function repeatedSide(side, times) {
  const once = benchSide(side);
  return made(`side-${side.seconds * times}-s-${side.rate}.rf64.wav`, (path) => {
    const head = HEAD_BYTES;
    const bytes = statSync(once).size - head;
    const source = openSync(once, 'r');
    const file = openSync(path, 'w');
    writeSync(file, longHead(side.rate, (times * bytes) / FRAME_BYTES));
    const block = Buffer.alloc(2 ** 24);
    for (let time = 0; time < times; time++) {
      for (let at = head, read = 1; read > 0; at += read) {
        read = readSync(source, block, 0, block.length, at);
        writeSync(file, block, 0, read);
      }
    }
    closeSync(source);
    closeSync(file);
  });
}

/**
 * A folder of so many sides that are one and the same on the disk.
 * @param {{ seconds: number, rate: number }} side
 * @param {number} count
 * @returns {string} its path
 */
export function benchFolder(side, count) {
  const once = benchSide(side);
  return made(`${count}-sides`, (folder) => {
    mkdirSync(folder);
    for (let number = 1; number <= count; number++) {
      const path = `${folder}/side-${number}.wav`;
      try {
        linkSync(once, path);
      } catch {
        // A file system without hard links.
        copyFileSync(once, path);
      }
    }
  });
}

/**
 * Makes a thing once, whole or not at all.
 * @param {string} name
 * @param {(path: string) => void} make
 */
function made(name, make) {
  const path = `${FOLDER}${name}`;
  if (existsSync(path)) return path;
  mkdirSync(FOLDER, { recursive: true });
  const unfinished = `${FOLDER}unfinished`;
  rmSync(unfinished, { recursive: true, force: true });
  make(unfinished);
  renameSync(unfinished, path);
  return path;
}

/**
 * Plays frame after frame; peaks stay under 0.6. The noise falls with frequency like music does
 * (two one-pole sections and a little white), the beat comes every 0.53 s.
 * @param {number} rate
 */
function musician(rate) {
  const [white, other] = [seededNoise(7), seededNoise(11)];
  const low = [0, 0];
  const tones = [55.3, 220.7, 1320.2].map((hz) => (2 * Math.PI * hz) / rate);
  const beatFrames = Math.round(BEAT_SECONDS * rate);
  let frame = 0;
  let beat = 0;
  return {
    left: 0,
    right: 0,
    next() {
      if (frame % beatFrames === 0) beat = 1;
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
