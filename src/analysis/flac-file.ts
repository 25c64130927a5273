import { badSample } from './convert-samples.js';
import { LONGEST_HEAD, readBlockHead } from './flac-block-head.js';
import { flacDamaged } from './flac-damaged.js';
import { FlacFrames } from './flac-frames.js';
import { findLastBlock } from './flac-last-block.js';
import type { FlacLayout } from './flac-layout.js';
import { readMetadata } from './flac-metadata.js';
import { endOfSound, startOfSound } from './flac-names.js';
import type { OpenSound } from './sound-file.js';
import { wavError } from './wav-error.js';
import { type ByteSource, readBytes } from './wav-source.js';

/**
 * Reads the head of a FLAC file: 8, 16 or 24 bits, one or two channels, 8 to 192 kHz, blocks of one
 * length or of many. Anything else is an InputError that says where and why. Metadata's heads and
 * the last block are read.
 */
export async function openFlac(source: ByteSource): Promise<OpenSound> {
  const layout = await readLayout(source);
  const { path } = source;
  const { frames, stream } = layout;
  const { format } = stream;
  const decoded = new FlacFrames(layout);
  return {
    file: {
      path,
      container: 'FLAC',
      format,
      validBits: format.bitDepth,
      frames,
      truncated: frames !== stream.frames,
    },
    source: {
      path,
      format,
      frames,
      read: (range) => decoded.read(range),
      // Integers are always fit, so that nobody should ask.
      refuse: (frame) => badSample({ path, format, frames, dataOffset: layout.start }, frame),
    },
    bytesPerFrame: (layout.end - layout.start) / frames,
  };
}

async function readLayout(source: ByteSource): Promise<FlacLayout> {
  const { path } = source;
  const { stream, end: start } = await readMetadata(source, await startOfSound(source));
  const bytes = await readBytes(source, start, LONGEST_HEAD);
  if (bytes.length === 0) throw noSound(source, start);
  const first = readBlockHead(bytes, 0, stream);
  if (first === null || first.number !== 0) throw flacDamaged(path, { at: start, firstFrame: 0 });
  const sync = bytes.subarray(0, 2);
  const layout = { source, stream, sync, blockFrames: first.frames, start };
  const last = await findLastBlock(layout, await endOfSound(source));
  if (last === null) throw flacDamaged(path, { at: start, firstFrame: 0 });
  return { ...layout, end: last.end, frames: last.firstFrame + last.frames };
}

function noSound(source: ByteSource, start: number): Error {
  return wavError(source.path, {
    code: 'no-data',
    at: Math.min(start, source.size),
    found: 'the end of the file',
    expected: 'sound',
    remedy: 'the recording is empty or broken off: export it again',
  });
}
