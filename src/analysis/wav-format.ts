import type { SampleFormat } from './sample-format.js';
import { encodingOf } from './wav-encoding.js';
import { type WavFault, wavError } from './wav-error.js';

/** A format chunk, checked. */
export interface WavFormat {
  readonly format: SampleFormat;
  /** Bits that carry sound, the upper ones of each word: at most the word's. */
  readonly validBits: number;
}

/** Bytes of a format chunk that are looked at: WAVE_FORMAT_EXTENSIBLE has 40. */
export const FORMAT_BYTES = 40;
const SHORTEST_FORMAT = 16;

export const LOWEST_RATE = 8000;
export const HIGHEST_RATE = 192_000;

/**
 * Reads the `fmt ` chunk: tag, channels, rate, bytes a second, block align, bits, and for
 * WAVE_FORMAT_EXTENSIBLE valid bits and sub-format. Bytes a second are often wrong and not needed.
 * @param bytes the chunk's content, its first FORMAT_BYTES at most
 * @param at byte of the content in the file
 * Source: WAVEFORMATEX and WAVEFORMATEXTENSIBLE of the RIFF/WAVE documents (from memory).
 */
export function parseFormat(path: string, bytes: Uint8Array, at: number): WavFormat {
  const refuse = (offset: number, fault: Omit<WavFault, 'at'>) =>
    wavError(path, { ...fault, at: at + offset });
  if (bytes.length < SHORTEST_FORMAT) throw refuse(0, shortFormat(bytes.length));

  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const { encoding, bits, validBits } = encodingOf(path, view, at);

  const channels = view.getUint16(2, true);
  if (channels !== 1 && channels !== 2) throw refuse(2, badChannels(channels));

  const sampleRate = view.getUint32(4, true);
  if (sampleRate < LOWEST_RATE || sampleRate > HIGHEST_RATE) throw refuse(4, badRate(sampleRate));

  const blockAlign = view.getUint16(12, true);
  const frameBytes = (bits / 8) * channels;
  if (blockAlign !== frameBytes) throw refuse(12, badAlign(blockAlign, frameBytes));

  return { format: { encoding, bitDepth: bits, channels, sampleRate }, validBits };
}

function shortFormat(length: number): Omit<WavFault, 'at'> {
  return {
    code: 'bad-header',
    found: `a format chunk of ${length} bytes`,
    expected: `at least ${SHORTEST_FORMAT}`,
    remedy: 'export the file again',
  };
}

export function badChannels(channels: number): Omit<WavFault, 'at'> {
  return {
    code: 'bad-channels',
    found: `${channels} channels`,
    expected: '1 or 2',
    remedy: 'export the stereo mix alone: a groove has two walls',
  };
}

export function badRate(sampleRate: number): Omit<WavFault, 'at'> {
  return {
    code: 'bad-rate',
    found: `a sample rate of ${sampleRate} Hz`,
    expected: `${LOWEST_RATE} to ${HIGHEST_RATE} Hz`,
    remedy: 'export the file at 44.1 to 192 kHz',
  };
}

function badAlign(blockAlign: number, frameBytes: number): Omit<WavFault, 'at'> {
  return {
    code: 'bad-header',
    found: `a block align of ${blockAlign} bytes`,
    expected: `${frameBytes}, which channels and bits make`,
    remedy: 'export the file again',
  };
}
