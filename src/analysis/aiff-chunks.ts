import { shownId, wavError } from './wav-error.js';
import { type ByteSource, readBytes } from './wav-source.js';

export type AiffContainer = 'AIFF' | 'AIFF-C';

/** Where a chunk's content lies. */
export interface AiffChunk {
  readonly id: string;
  /** Byte of its eight-byte head. */
  readonly at: number;
  /** Byte of its first content. */
  readonly body: number;
  /** Bytes that its head promises, or, if it is `open`, all that is left of the file. */
  readonly size: number;
  /** The size was never filled in. */
  readonly open: boolean;
}

/** The two chunks an AIFF file is read by. */
export interface AiffChunks {
  readonly container: AiffContainer;
  readonly common: AiffChunk | null;
  readonly sound: AiffChunk | null;
  /** The last chunk the walk came to, for a message about what is missing. */
  readonly last: AiffChunk | null;
}

const OPEN_SIZE = 0xffffffff;
/** Recordings have a dozen; a file of nothing but heads must not keep the walk busy. */
const MOST_CHUNKS = 4096;

/**
 * Walks the chunks until both `COMM` and `SSND` are found, in any order; all others are skipped,
 * only their heads are read. The first of each counts. A chunk of odd size is followed by a byte of
 * padding. The form's own size is not asked: recorders leave it wrong.
 * Source: Audio Interchange File Format 1.3 and its extension AIFF-C, draft of 1991 (from memory).
 */
export async function walkAiffChunks(source: ByteSource): Promise<AiffChunks> {
  const container = await readContainer(source);
  let common: AiffChunk | null = null;
  let sound: AiffChunk | null = null;
  let last: AiffChunk | null = null;
  let at = 12;
  for (let count = 0; at + 8 <= source.size && (common === null || sound === null); count++) {
    if (count === MOST_CHUNKS) throw tooManyChunks(source, at);
    last = await readChunk(source, at);
    if (last.id === 'COMM') common ??= last;
    if (last.id === 'SSND') sound ??= last;
    at = last.body + last.size + (last.size % 2);
  }
  return { container, common, sound, last };
}

async function readContainer(source: ByteSource): Promise<AiffContainer> {
  const head = await readBytes(source, 0, 12);
  const form = idAt(head, 8);
  if (idAt(head, 0) === 'FORM' && form === 'AIFF') return 'AIFF';
  if (idAt(head, 0) === 'FORM' && form === 'AIFC') return 'AIFF-C';
  throw wavError(source.path, {
    code: 'not-aiff',
    at: 8,
    found: shownId(form),
    expected: '"AIFF" or "AIFC"',
    remedy: 'export it as a WAV, AIFF or FLAC file',
  });
}

async function readChunk(source: ByteSource, at: number): Promise<AiffChunk> {
  const head = await readBytes(source, at, 8);
  const id = idAt(head, 0);
  const body = at + 8;
  const size = head.length < 8 ? 0 : new DataView(head.buffer).getUint32(4);
  // A sound chunk of no size has not even room for its own head: a recorder that was cut off.
  const open = size === OPEN_SIZE || (id === 'SSND' && size === 0);
  return { id, at, body, size: open ? source.size - body : size, open };
}

function idAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}

function tooManyChunks(source: ByteSource, at: number): Error {
  return wavError(source.path, {
    code: 'bad-header',
    at,
    found: `${MOST_CHUNKS} chunks without both a common and a sound chunk`,
    expected: 'a "COMM" and a "SSND" chunk before that',
    remedy: 'the file is damaged: export it again',
  });
}
