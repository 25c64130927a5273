// @ts-check
/** Bytes of a frame: two channels of 24 bits. */
export const FRAME_BYTES = 6;
/** Bytes before the first frame. */
export const HEAD_BYTES = 44;

/**
 * The head of a WAV file of 24-bit stereo.
 * @param {number} rate frames a second
 * @param {number} frames
 * Source: Multimedia Programming Interface and Data Specifications 1.0, 1991 (from memory).
 */
export function wavHead(rate, frames) {
  const bytes = Buffer.alloc(HEAD_BYTES);
  bytes.write('RIFF\0\0\0\0WAVEfmt ', 0, 'latin1');
  bytes.writeUInt32LE(HEAD_BYTES - 8 + FRAME_BYTES * frames, 4);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(2, 22);
  bytes.writeUInt32LE(rate, 24);
  bytes.writeUInt32LE(rate * FRAME_BYTES, 28);
  bytes.writeUInt16LE(FRAME_BYTES, 32);
  bytes.writeUInt16LE(24, 34);
  bytes.write('data', 36, 'latin1');
  bytes.writeUInt32LE(FRAME_BYTES * frames, 40);
  return bytes;
}
