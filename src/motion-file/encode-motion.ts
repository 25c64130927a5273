import { OutputError } from '../errors.js';
import { COLUMNS } from './motion-columns.js';
import { digestOf } from './motion-digest.js';
import type { MotionHead } from './motion-head.js';
import {
  DIGEST_AT,
  DIGEST_BYTES,
  HEAD_BYTES_AT,
  MAGIC,
  MOST_QUARTERS,
  VERSION,
  VERSION_AT,
} from './motion-layout.js';
import { packColumn } from './pack-column.js';
import type { SavedMotion } from './saved-motion.js';

/**
 * A motion summary as the bytes of a motion file. Nothing is rounded. Little endian throughout:
 *
 * | byte | |
 * | --- | --- |
 * | 0 | MAGIC, 8 bytes |
 * | 8 | VERSION, uint32 |
 * | 12 | bytes of the head, uint32 |
 * | 16 | SHA-256 of all other bytes: those before it, then those after it |
 * | 48 | the head: JSON as UTF-8, see motion-head.ts |
 * | … | the columns one after another in the order of motion-columns.ts, see pack-column.ts |
 *
 * Paths and clock leave no trace: the same audio and settings give the same bytes, as long as the
 * zlib that packs them is the same.
 * @throws OutputError for a program longer than can be read again
 */
export function encodeMotion(saved: SavedMotion): Uint8Array {
  if (saved.motion.quarterCount > MOST_QUARTERS) {
    const turns = `${saved.motion.quarterCount / 4} turns`;
    throw new OutputError(`${turns} are more than a motion file holds, ${MOST_QUARTERS / 4}`);
  }
  const columns = COLUMNS.map(({ name, of, type }) => {
    const column = of(saved.motion);
    if (!column.every(Number.isFinite)) throw new Error(`${name} holds no finite number`);
    return packColumn(column, type);
  });
  const head = Buffer.from(JSON.stringify(headOf(saved, columns)), 'utf8');
  const start = new DataView(new ArrayBuffer(DIGEST_AT));
  new Uint8Array(start.buffer).set(MAGIC);
  start.setUint32(VERSION_AT, VERSION, true);
  start.setUint32(HEAD_BYTES_AT, head.length, true);
  const digest = new Uint8Array(DIGEST_BYTES);
  const bytes = new Uint8Array(
    Buffer.concat([new Uint8Array(start.buffer), digest, head, ...columns]),
  );
  bytes.set(digestOf(bytes), DIGEST_AT);
  return bytes;
}

function headOf(saved: SavedMotion, columns: readonly Uint8Array[]): MotionHead {
  const { motion, source } = saved;
  return {
    name: saved.name,
    source: {
      container: source.container,
      encoding: source.encoding,
      bitDepth: source.bitDepth,
      channels: source.channels,
      sampleRate: source.sampleRate,
      frames: source.frames,
      durationSeconds: source.durationSeconds,
    },
    truncated: saved.truncated,
    audioSha256: saved.audioSha256,
    settings: saved.settings,
    turnSeconds: motion.turnSeconds,
    durationSeconds: motion.durationSeconds,
    quarterCount: motion.quarterCount,
    program: motion.program,
    columns: COLUMNS.map(({ name }, index) => ({ name, bytes: columns[index]?.length ?? 0 })),
  };
}
