import { missingChunk } from './missing-chunk.js';
import { frameBytes, type SampleFormat } from './sample-format.js';
import { type WavChunk, type WavContainer, walkChunks } from './wav-chunks.js';
import { wavError } from './wav-error.js';
import { FORMAT_BYTES, parseFormat } from './wav-format.js';
import { type ByteSource, readBytes, withSource } from './wav-source.js';

/** What the header of a WAV file says, checked against the file's real length. */
export interface WavFile {
  readonly path: string;
  readonly container: WavContainer;
  readonly format: SampleFormat;
  /** Bits of a word that carry sound, its upper ones. */
  readonly validBits: number;
  /** Whole frames that are there, at least 1. */
  readonly frames: number;
  /** Byte of the first frame. */
  readonly dataOffset: number;
  /** The file breaks off: a size left open, fewer bytes than promised, or a cut last frame. */
  readonly truncated: boolean;
}

/** Frames that lie in a file as they are. */
export type LaidFrames = Pick<WavFile, 'path' | 'format' | 'frames' | 'dataOffset'>;

/** A WAV file whose header is read and which is still open for `readFrames`. */
export interface OpenWav {
  readonly file: WavFile;
  readonly source: ByteSource;
}

/**
 * Opens a WAV file, reads its header, hands both to `use` and closes it, whatever happens.
 * RIFF, RF64 and BW64; PCM of 8, 16, 24, 32 bits, float of 32, 64; one or two channels;
 * 8 to 192 kHz. Anything else is an InputError that says where and why. Only chunk heads are read.
 */
export async function withWav<T>(path: string, use: (wav: OpenWav) => Promise<T>): Promise<T> {
  return await withSource(path, async (source) => use(await openWav(source)));
}

/** The same of a file that is open already. */
export async function openWav(source: ByteSource): Promise<OpenWav> {
  return { source, file: await readHeader(source) };
}

/** The header alone. */
export async function readWavHeader(path: string): Promise<WavFile> {
  return await withWav(path, async ({ file }) => file);
}

async function readHeader(source: ByteSource): Promise<WavFile> {
  const { path } = source;
  const chunks = await walkChunks(source);
  if (chunks.format === null) throw missingChunk(source, chunks, 'no-format', '"fmt "');
  if (chunks.data === null) throw missingChunk(source, chunks, 'no-data', '"data"');
  const { body, size } = chunks.format;
  const bytes = await readBytes(source, body, Math.min(size, FORMAT_BYTES));
  const { format, validBits } = parseFormat(path, bytes, body);
  const { frames, truncated } = wholeFrames(source, chunks.data, frameBytes(format));
  const dataOffset = chunks.data.body;
  return { path, container: chunks.container, format, validBits, frames, dataOffset, truncated };
}

/** Frames that are there to the last byte. */
function wholeFrames(
  source: ByteSource,
  data: WavChunk,
  bytesPerFrame: number,
): Pick<WavFile, 'frames' | 'truncated'> {
  const present = Math.min(data.size, source.size - data.body);
  const frames = Math.floor(present / bytesPerFrame);
  if (frames === 0) {
    throw wavError(source.path, {
      code: 'no-data',
      at: data.body,
      found: `${present} bytes of sound`,
      expected: `at least one frame of ${bytesPerFrame} bytes`,
      remedy: 'the recording is empty: export it again',
    });
  }
  const cut = data.size > present || present % bytesPerFrame !== 0;
  return { frames, truncated: data.open || cut };
}
