import type { InputError } from '../errors.js';
import type { SampleFormat } from './sample-format.js';
import type { Tally } from './tally.js';

/** Which frames to read, and how many bytes at a time. */
export interface FrameRange {
  /** First frame, 0 by default. */
  readonly firstFrame?: number;
  /** Frame after the last, all by default. */
  readonly endFrame?: number;
  /** Bytes of a block, rounded down to whole frames but at least one; 1 MiB by default. */
  readonly blockBytes?: number;
  /**
   * Where a source that can may put its blocks, one after the other, so that nobody copies them; it
   * then gives blocks of this size. Room for a frame at least.
   */
  readonly room?: Uint8Array<ArrayBuffer>;
  /** For a source that tallies: what the analysis cannot see in its frames is added here. */
  readonly tally?: Tally;
}

/** Somewhere a program's frames come from: a file, or several of them one after the other. */
export interface FrameSource {
  /** What messages call it. */
  readonly path: string;
  readonly format: SampleFormat;
  readonly frames: number;
  /**
   * The raw frames of a range, block by block, each of whole frames; a block holds until the next
   * is asked for. Any range gives the same frames, but for what a filter of the source itself
   * leaves beyond its settling (under 1e-11 of it).
   * @param range 0 ≤ firstFrame ≤ endFrame ≤ frames, else a RangeError
   */
  read(range?: FrameRange): AsyncIterable<Uint8Array>;
  /** The error for a frame whose sample is no finite number or far beyond full scale. */
  refuse(frame: number): InputError;
  /**
   * True where its frames are no longer those of the files, so that it must itself say what is to
   * be said of these: see Tally.
   */
  readonly tallies?: boolean;
}
