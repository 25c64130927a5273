import type { FrameSource } from './frame-source.js';
import type { SampleFormat } from './sample-format.js';

export const WAV_CONTAINERS = ['RIFF', 'RF64', 'BW64'] as const;
/** What a sound may come in. */
export const SOUND_CONTAINERS = [...WAV_CONTAINERS, 'AIFF', 'AIFF-C', 'FLAC'] as const;

export type WavContainer = (typeof WAV_CONTAINERS)[number];
export type SoundContainer = (typeof SOUND_CONTAINERS)[number];

/** What the head of a file of sound says, checked against what is there. */
export interface SoundFile {
  readonly path: string;
  readonly container: SoundContainer;
  /** Of the frames as they are handed on, whatever their order of bytes in the file. */
  readonly format: SampleFormat;
  /** Bits of a word that carry sound, its upper ones. */
  readonly validBits: number;
  /** Whole frames that are there, at least 1. */
  readonly frames: number;
  /** The file breaks off, or never said how long it is. */
  readonly truncated: boolean;
}

/** A file of sound whose head is read and which is still open. */
export interface OpenSound {
  readonly file: SoundFile;
  readonly source: FrameSource;
  /** Bytes of the file that a frame takes; of a compressed one on average. */
  readonly bytesPerFrame: number;
}
