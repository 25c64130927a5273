// @ts-check
import { FRAME_BYTES, wavHead } from '../../examples/demo/wav-head.mjs';

const DS64_BYTES = 28;
/** What stands in a size that ds64 holds. */
const ELSEWHERE = 0xffffffff;

/**
 * The head of an RF64 file, whose sizes have 64 bits. Source: EBU Tech 3306.
 * @param {number} rate
 * @param {number} frames
 */
export function longHead(rate, frames) {
  const plain = wavHead(rate, 0);
  const head = Buffer.concat([
    plain.subarray(0, 12),
    Buffer.alloc(8 + DS64_BYTES),
    plain.subarray(12),
  ]);
  const dataBytes = frames * FRAME_BYTES;
  head.write('RF64', 0, 'ascii');
  head.writeUInt32LE(ELSEWHERE, 4);
  head.write('ds64', 12, 'ascii');
  head.writeUInt32LE(DS64_BYTES, 16);
  head.writeBigUInt64LE(BigInt(head.length - 8 + dataBytes), 20);
  head.writeBigUInt64LE(BigInt(dataBytes), 28);
  head.writeBigUInt64LE(BigInt(frames), 36);
  head.writeUInt32LE(ELSEWHERE, head.length - 4);
  return head;
}
