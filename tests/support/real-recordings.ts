import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { FLACDecoder } from '@wasm-audio-decoders/flac';

/** A stereo recording at 44.1 kHz. */
export interface Recording {
  readonly name: string;
  readonly bitDepth: number;
  /** Interleaved words as they were recorded, −2^(bitDepth − 1) … 2^(bitDepth − 1) − 1. */
  readonly words: Int32Array;
}

const FOLDER = fileURLToPath(
  new URL('samples/', import.meta.resolve('supersonic-scsynth-samples')),
);

/** All stereo recordings at 44.1 kHz in npm's supersonic-scsynth-samples (CC0), in name order. */
export async function realRecordings(): Promise<Recording[]> {
  const names = (await readdir(FOLDER)).filter((name) => name.endsWith('.flac'));
  // Where these come from is not clear.
  const clear = names.filter((name) => !name.startsWith('loop_amen')).sort();
  const decoder = new FLACDecoder();
  await decoder.ready;
  const recordings: Recording[] = [];
  for (const name of clear) {
    const bytes = await readFile(FOLDER + name);
    const { channelData, sampleRate, bitDepth, errors } = await decoder.decodeFile(bytes);
    if (errors.length > 0) throw new Error(`${name} could not be decoded`);
    await decoder.reset();
    const [left, right] = channelData;
    if (left === undefined || right === undefined || sampleRate !== 44_100) continue;
    recordings.push({ name, bitDepth, words: interleavedWords(left, right, bitDepth) });
  }
  decoder.free();
  return recordings;
}

/**
 * The first `seconds` of recordings of up to so many bits, one after the other; shorter ones of
 * less than a second are left out.
 * @returns interleaved words of `bitDepth` bits
 */
export function wordsOf(
  recordings: readonly Recording[],
  bitDepth: number,
  seconds: number,
): Int32Array {
  const words = new Int32Array(2 * 44_100 * seconds);
  let filled = 0;
  for (const recording of recordings) {
    if (recording.bitDepth > bitDepth || recording.words.length < 2 * 44_100) continue;
    const part = recording.words.subarray(0, words.length - filled);
    words.set(
      part.map((word) => word * 2 ** (bitDepth - recording.bitDepth)),
      filled,
    );
    filled += part.length;
  }
  if (filled < words.length) throw new Error(`the recordings do not last ${seconds} s`);
  return words;
}

/** The decoder scales by 2^(n − 1) − 1, which this undoes to the integer. */
function interleavedWords(left: Float32Array, right: Float32Array, bitDepth: number): Int32Array {
  const scale = 2 ** (bitDepth - 1) - 1;
  return Int32Array.from({ length: 2 * left.length }, (_, word) => {
    const channel = word % 2 === 0 ? left : right;
    return Math.round(channel[Math.floor(word / 2)]! * scale);
  });
}
