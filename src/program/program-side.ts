import type { SampleFormat } from '../analysis/sample-format.js';
import type { SoundFile } from '../analysis/sound-file.js';
import type { HandSettings } from '../model/side-plan-input.js';
import type { Settings } from '../settings.js';
import type { Hertz } from '../units.js';

/** A side of several tracks as one program: plain data, so that it crosses threads. */
export interface ProgramSide {
  readonly name: string;
  /** The sheet that it stands in, as it is shown. */
  readonly sheet: string;
  readonly settings: Settings;
  readonly levelDb: number;
  /** What the program's frames are. */
  readonly format: SampleFormat;
  readonly frames: number;
  /** True where the frames are the files' own, byte for byte, with silence in the gaps. */
  readonly isUntouched: boolean;
  readonly tracks: readonly ProgramTrack[];
  readonly hand: HandSettings;
}

export interface ProgramTrack {
  readonly name: string;
  readonly file: TrackFile;
  /** Frames of the file that the track is, and the one after them. */
  readonly firstFrame: number;
  readonly endFrame: number;
  /** Frame of the program at which it begins, and the one after its last. */
  readonly startFrame: number;
  readonly stopFrame: number;
  /**
   * Frame of the program that lies on a frame of the track's own rate, and how many of these lie
   * between it and the track's first: it begins to its own frame, not to the program's.
   */
  readonly originFrame: number;
  readonly leadFrames: number;
  /** Factor on its samples. */
  readonly gain: number;
  /** Frames of the file over which it rises and falls. */
  readonly fadeInFrames: number;
  readonly fadeOutFrames: number;
  /** A corner of its own, filtered before the analysis; null where the analysis does it for all. */
  readonly elliptical: Elliptical | null;
  /** It keeps its place in any running order. */
  readonly isPinned: boolean;
}

/** High-pass on the difference of the channels; without a corner none. */
export interface Elliptical {
  readonly corner: Hertz | null;
  readonly order: 1 | 2;
}

/** What the head of a track's file says. */
export interface TrackFile extends SoundFile {
  /** Bytes of the file that a frame takes. */
  readonly bytesPerFrame: number;
}
