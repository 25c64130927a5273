import { type AiffChunk, walkAiffChunks } from './aiff-chunks.js';
import { type AiffCommon, COMMON_BYTES, parseCommon } from './aiff-common.js';
import { wordTurner } from './aiff-words.js';
import { badSample } from './convert-samples.js';
import type { FrameRange } from './frame-source.js';
import { missingChunk } from './missing-chunk.js';
import { frameBytes } from './sample-format.js';
import type { OpenSound } from './sound-file.js';
import { readFrames } from './wav-blocks.js';
import { wavError } from './wav-error.js';
import { type ByteSource, readBytes } from './wav-source.js';

/** Offset and block size, which stand in the sound chunk before the sound. */
const SOUND_HEAD_BYTES = 8;

/**
 * Reads the head of an AIFF or AIFF-C file: PCM of 1 to 32 bits in words of whole bytes, float of 32
 * or 64; one or two channels; 8 to 192 kHz. Its frames are handed on little endian. Anything else is
 * an InputError that says where and why. Only chunk heads are read.
 */
export async function openAiff(source: ByteSource): Promise<OpenSound> {
  const { path } = source;
  const chunks = await walkAiffChunks(source);
  if (chunks.common === null) throw missingChunk(source, chunks, 'no-format', '"COMM"');
  if (chunks.sound === null) throw missingChunk(source, chunks, 'no-data', '"SSND"');
  const { body, size } = chunks.common;
  const bytes = await readBytes(source, body, Math.min(size, COMMON_BYTES));
  const common = parseCommon(path, bytes, body, chunks.container);
  const { format } = common;
  const sound = await wholeFrames(source, chunks.sound, common);
  const file = {
    path,
    container: chunks.container,
    format,
    validBits: common.words.validBits,
    ...sound,
  };
  const turn = wordTurner(common.words);
  async function* read(range?: FrameRange): AsyncGenerator<Uint8Array, void, undefined> {
    for await (const block of readFrames({ file, source }, range)) {
      turn(block);
      yield block;
    }
  }
  return {
    file,
    source: {
      path,
      format,
      frames: file.frames,
      read,
      refuse: (frame) => badSample(file, frame),
    },
    bytesPerFrame: frameBytes(format),
  };
}

/** Where the frames begin, and how many of those that the common chunk says are there. */
async function wholeFrames(
  source: ByteSource,
  { body, size }: AiffChunk,
  { format, frames: said }: AiffCommon,
): Promise<{ dataOffset: number; frames: number; truncated: boolean }> {
  const head = await readBytes(source, body, Math.min(size, SOUND_HEAD_BYTES));
  const offset = head.length < 4 ? 0 : new DataView(head.buffer).getUint32(0);
  const dataOffset = body + SOUND_HEAD_BYTES + offset;
  const bytesPerFrame = frameBytes(format);
  const present = Math.max(0, Math.min(body + size, source.size) - dataOffset);
  const there = Math.floor(present / bytesPerFrame);
  if (there === 0) {
    throw wavError(source.path, {
      code: 'no-data',
      at: dataOffset,
      found: `${present} bytes of sound`,
      expected: `at least one frame of ${bytesPerFrame} bytes`,
      remedy: 'the recording is empty: export it again',
    });
  }
  // A recorder that was cut off has left the number of frames at 0.
  if (said === 0) return { dataOffset, frames: there, truncated: true };
  return { dataOffset, frames: Math.min(said, there), truncated: said > there };
}
