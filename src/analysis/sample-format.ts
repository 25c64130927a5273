import type { Hertz } from '../units.js';

/** How the frames of a data chunk are to be read; interleaved, little endian, whole frames. */
export interface SampleFormat {
  readonly encoding: 'pcm' | 'float';
  /** Bits of the container word: PCM 8 (unsigned), 16, 24, 32; float 32, 64. */
  readonly bitDepth: 8 | 16 | 24 | 32 | 64;
  readonly channels: 1 | 2;
  readonly sampleRate: Hertz;
}

/** Bytes of one frame, all channels. */
export function frameBytes(format: SampleFormat): number {
  return (format.bitDepth / 8) * format.channels;
}
