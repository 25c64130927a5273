import { InputError } from '../errors.js';
import { frameBytes, type SampleFormat } from './sample-format.js';
import type { LaidFrames } from './wav-file.js';

/**
 * Largest magnitude that passes, full scale 1: 2^31, so that even floats on the scale of 32-bit
 * integers do, and that no sum of squares over a side overflows. furrow's own choice.
 */
export const SAMPLE_LIMIT = 2 ** 31;

/** Reads words of one kind from `view` into `out`, from the first on. */
type WordReader = (view: DataView, out: Float64Array, words: number) => void;

/**
 * Raw frames to interleaved stereo, full scale 1, exactly: integer/2^(bits−1), so that negative
 * full scale is −1 (8 bits are unsigned, middle 128); floats as they are. Mono goes to both sides.
 * @param bytes whole frames, interleaved, little endian, at any offset of their buffer
 * @param out at least two numbers a frame, left then right; what lies beyond is left alone
 * @returns the first frame, counted from the start of `bytes`, with a sample that is no number, is
 *   infinite or beyond SAMPLE_LIMIT; −1 if all are fit, as those of integer formats always are
 */
export function convertSamples(bytes: Uint8Array, format: SampleFormat, out: Float64Array): number {
  const frames = bytes.length / frameBytes(format);
  if (!Number.isInteger(frames) || out.length < 2 * frames) {
    throw new RangeError(`${bytes.length} bytes do not fit ${out.length} samples`);
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  wordReader(format)(view, out, frames * format.channels);
  if (format.channels === 1) doubleMono(out, frames);
  return format.encoding === 'float' ? firstUnfit(out, frames) : -1;
}

function wordReader({ encoding, bitDepth }: SampleFormat): WordReader {
  if (encoding === 'float') return bitDepth === 32 ? readFloat32 : readFloat64;
  if (bitDepth === 8) return readPcm8;
  if (bitDepth === 16) return readPcm16;
  return bitDepth === 24 ? readPcm24 : readPcm32;
}

function readPcm8(view: DataView, out: Float64Array, words: number): void {
  for (let word = 0; word < words; word++) out[word] = (view.getUint8(word) - 128) / 2 ** 7;
}

function readPcm16(view: DataView, out: Float64Array, words: number): void {
  for (let word = 0; word < words; word++) out[word] = view.getInt16(2 * word, true) / 2 ** 15;
}

function readPcm24(view: DataView, out: Float64Array, words: number): void {
  for (let word = 0; word < words; word++) {
    const value = view.getUint16(3 * word, true) + 2 ** 16 * view.getInt8(3 * word + 2);
    out[word] = value / 2 ** 23;
  }
}

function readPcm32(view: DataView, out: Float64Array, words: number): void {
  for (let word = 0; word < words; word++) out[word] = view.getInt32(4 * word, true) / 2 ** 31;
}

function readFloat32(view: DataView, out: Float64Array, words: number): void {
  for (let word = 0; word < words; word++) out[word] = view.getFloat32(4 * word, true);
}

function readFloat64(view: DataView, out: Float64Array, words: number): void {
  for (let word = 0; word < words; word++) out[word] = view.getFloat64(8 * word, true);
}

/** Spreads the first `frames` numbers over both channels, from the end so that none is overwritten. */
function doubleMono(out: Float64Array, frames: number): void {
  for (let frame = frames - 1; frame >= 0; frame--) {
    const sample = out[frame]!;
    out[2 * frame] = sample;
    out[2 * frame + 1] = sample;
  }
}

function firstUnfit(out: Float64Array, frames: number): number {
  for (let word = 0; word < 2 * frames; word++) {
    if (!(Math.abs(out[word]!) <= SAMPLE_LIMIT)) return Math.floor(word / 2);
  }
  return -1;
}

/**
 * The error for a frame that `convertSamples` points at.
 * @param frame counted from the first of the file
 */
export function badSample(file: LaidFrames, frame: number): InputError {
  const at = file.dataOffset + frame * frameBytes(file.format);
  const message = `${file.path}: byte ${at} (frame ${frame}): found a sample that is not a number,`;
  const remedy = 'mend the sound there or export the file again';
  const expected = 'infinite or far beyond full scale, expected a finite one';
  return new InputError(file.path, 'bad-sample', `${message} ${expected}; ${remedy}`);
}
