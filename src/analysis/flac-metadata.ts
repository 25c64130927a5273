import { type FlacStream, parseStream, STREAM_BYTES } from './flac-stream.js';
import { shownId, wavError } from './wav-error.js';
import { type ByteSource, readBytes } from './wav-source.js';

/** What comes before the sound in a FLAC file. */
export interface FlacMetadata {
  readonly stream: FlacStream;
  /** Byte after the last block: the first of the sound. */
  readonly end: number;
}

/** Recordings have a dozen; a file of nothing but blocks must not keep the walk busy. */
const MOST_BLOCKS = 4096;
const BLOCK_HEAD_BYTES = 4;
const TYPE_STREAM = 0;

/**
 * Walks the metadata: STREAMINFO is its first block, all others are skipped, only their heads are
 * read.
 * @param at byte of the marker: names of another standard may lie before it
 * Source: RFC 9639, 8.
 */
export async function readMetadata(source: ByteSource, at: number): Promise<FlacMetadata> {
  const id = String.fromCharCode(...(await readBytes(source, at, 4)));
  if (id !== 'fLaC') throw notFlac(source, at, id);
  let block = await readBlockHead(source, at + 4);
  if (block.type !== TYPE_STREAM || block.size < STREAM_BYTES) throw noStream(source, at + 4);
  const body = at + 4 + BLOCK_HEAD_BYTES;
  const bytes = await readBytes(source, body, STREAM_BYTES);
  if (bytes.length < STREAM_BYTES) throw noStream(source, at + 4);
  const stream = parseStream(source.path, bytes, body);
  let next = body + block.size;
  for (let count = 1; !block.isLast; count++) {
    if (count === MOST_BLOCKS) throw tooManyBlocks(source, next);
    block = await readBlockHead(source, next);
    next += BLOCK_HEAD_BYTES + block.size;
  }
  return { stream, end: next };
}

async function readBlockHead(
  source: ByteSource,
  at: number,
): Promise<{ isLast: boolean; type: number; size: number }> {
  const bytes = await readBytes(source, at, BLOCK_HEAD_BYTES);
  if (bytes.length < BLOCK_HEAD_BYTES) {
    throw wavError(source.path, {
      code: 'no-data',
      at: Math.min(at, source.size),
      found: 'the end of the file',
      expected: 'more metadata, then sound',
      remedy: 'the file is damaged or not finished: export it again',
    });
  }
  const word = new DataView(bytes.buffer).getUint32(0);
  return { isLast: word >= 2 ** 31, type: (word >>> 24) & 127, size: word % 2 ** 24 };
}

function notFlac(source: ByteSource, at: number, id: string): Error {
  return wavError(source.path, {
    code: 'not-flac',
    at,
    found: shownId(id),
    expected: '"fLaC"',
    remedy: 'export it as a WAV, AIFF or FLAC file',
  });
}

function noStream(source: ByteSource, at: number): Error {
  return wavError(source.path, {
    code: 'no-format',
    at,
    found: 'another or a shorter block of metadata',
    expected: `one of type ${TYPE_STREAM} and ${STREAM_BYTES} bytes, which tells the format`,
    remedy: 'the file is damaged: export it again',
  });
}

function tooManyBlocks(source: ByteSource, at: number): Error {
  return wavError(source.path, {
    code: 'bad-header',
    at,
    found: `${MOST_BLOCKS} blocks of metadata`,
    expected: 'sound before that',
    remedy: 'the file is damaged: export it again',
  });
}
