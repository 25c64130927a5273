import type { Hertz, Metres, Seconds } from '../units.js';

/** Bins a quarter turn. */
export const BINS_PER_QUARTER = 16;
/** Quarters a turn. */
export const QUARTERS_PER_TURN = 4;
/** Classes of a histogram. */
export const HISTOGRAM_CLASSES = 24;
/** Width of a histogram class, dB: a quarter of a factor of two, which is 1.505. */
export const CLASS_DB = (20 * Math.log10(2)) / 4;

/**
 * Digital silence that lasts shorter is not told: a stop between two notes of a machine may be.
 * Common practice, no published source.
 */
export const LEAST_SILENCE: Seconds = 0.1;
/**
 * How far a single sample must lie from the middle of its neighbours to be a jump, −36 dBFS, full
 * scale 1. Common practice, no published source.
 */
export const LEAST_JUMP = 10 ** (-36 / 20);

/**
 * Turns, quarters or bins that a length has begun: its ceiling, but for what rounding adds to a
 * length that is whole.
 */
export function begun(count: number): number {
  return Math.ceil(count - 1e-9);
}

/**
 * How often a magnitude lay in which class, per quarter turn.
 * Class c holds magnitudes from 2^(c/4) on, in SI units, up to the next class.
 * Row q of `counts` (HISTOGRAM_CLASSES long) runs downwards from class `topClass[q]`, the class of
 * the quarter's largest sample, so counts[q·24 + k] belongs to class topClass[q] − k; the last
 * entry also holds everything under it.
 */
export interface Histogram {
  readonly topClass: Int16Array;
  readonly counts: Uint32Array;
}

/** One wall, per quarter turn, at level 0 dB. Peaks are inter-sample peaks of the magnitude. */
export interface WallMotion {
  /** Peak |u̇|, m/s. */
  readonly velocityPeak: Float64Array;
  /** Peak |ü|, m/s². */
  readonly accelerationPeak: Float64Array;
  /** Mean of u̇², (m/s)². */
  readonly velocityMeanSquare: Float64Array;
  /** Mean of ü², (m/s²)². */
  readonly accelerationMeanSquare: Float64Array;
  /** Of the edge velocity √2·|u̇|, m/s. */
  readonly edgeVelocityHistogram: Histogram;
  /** Of |ü|, m/s². */
  readonly accelerationHistogram: Histogram;
}

/** The displacement under `lowBandHz`, per quarter turn. */
export interface LowBand {
  /** Correlation of the walls, −1 … 1; 0 where one is silent. */
  readonly correlation: Float64Array;
  /** Phase of the left against the right, radians; 0 where one is silent. */
  readonly phase: Float64Array;
  /** Share of the energy that is vertical, 0 … 1; 0 in silence. */
  readonly verticalShare: Float64Array;
  /** Strongest frequency, Hz; 0 in silence. */
  readonly strongestFrequency: Float64Array;
  /** √2·rms of the vertical motion at level 0 dB, m: its peak where it is a sine. */
  readonly verticalAmplitude: Float64Array;
  /** The same of the lateral motion, m. */
  readonly lateralAmplitude: Float64Array;
}

/** What the program's samples themselves say; [left, right], mono doubled. */
export interface ProgramChecks {
  readonly meanSquare: readonly [number, number];
  readonly mean: readonly [number, number];
  /** Largest |sample|, full scale 1. */
  readonly samplePeak: readonly [number, number];
  /** Largest |program| between samples, full scale 1. Source: ITU-R BS.1770-4, annex 2. */
  readonly truePeak: readonly [number, number];
  /** Integrated loudness, LUFS; null if all of it lies under the gates. Source: BS.1770-4. */
  readonly loudnessLufs: number | null;
  /**
   * Runs of at least three successive samples at full scale, in float equal ones there or beyond;
   * either channel.
   */
  readonly clippedRuns: number;
  /** Where the first such run begins; null without one. */
  readonly firstClipSeconds: Seconds | null;
  /** The longest of them; null without one. */
  readonly longestClip: Span | null;
  /** Correlation of the channels over the whole program; 0 in silence. */
  readonly correlation: number;
  /** True if no frame's channels differ although the file has two. */
  readonly identicalChannels: boolean;
  /** Mean square above the band that is judged, full scale 1, both channels' larger. */
  readonly ultrasonicMeanSquare: number;
  readonly silence: DigitalSilence;
  readonly jumps: FoundJumps;
}

/** A stretch of the program. */
export interface Span {
  readonly fromSeconds: Seconds;
  readonly untilSeconds: Seconds;
}

/**
 * Stretches of at least LEAST_SILENCE whose samples are exactly zero in both channels, between the
 * program's first sample that is not and its last.
 */
export interface DigitalSilence {
  readonly count: number;
  /** All of them together. */
  readonly seconds: Seconds;
  /** The first of them, in their order. */
  readonly first: readonly Span[];
}

/** Single samples that the sound around them does not explain, see JumpFinder and JumpList. */
export interface FoundJumps {
  readonly count: number;
  /** The largest of them, the largest first. */
  readonly largest: readonly FoundJump[];
}

export interface FoundJump {
  readonly atSeconds: Seconds;
  readonly channel: 'left' | 'right';
  /** How far the sample lies from the middle of its neighbours, full scale 1. */
  readonly size: number;
  /** The largest distance of that kind of the samples around it. */
  readonly around: number;
}

/**
 * The motion summary: everything the model needs to know of a program, at level 0 dB.
 *
 * Quarters count from 0 at the first sample of the program and go on for one turn of silence after
 * its last begun turn: quarterCount = 4·ceil(turns) + 4. Bins are BINS_PER_QUARTER a quarter. All
 * extremes are signed inter-sample extremes over the bin, its edges included.
 */
export interface MotionSummary {
  /** T, one turn. */
  readonly turnSeconds: Seconds;
  /** Length of the program. */
  readonly durationSeconds: Seconds;
  readonly quarterCount: number;
  /** max √2·(u_R(t) − u_L(t − T)), m. */
  readonly approach: Float64Array;
  /** The same with the worst u_L within ± speedTolerance·T, m. */
  readonly approachLoose: Float64Array;
  /** max z, m. */
  readonly lift: Float64Array;
  /** max −z, m. */
  readonly sink: Float64Array;
  /** max |x|, m. */
  readonly lateral: Float64Array;
  /** max √2·u_R, dilated by ± speedTolerance·T, m. */
  readonly outward: Float64Array;
  /** max −√2·u_L, dilated likewise, m. */
  readonly inward: Float64Array;
  readonly left: WallMotion;
  readonly right: WallMotion;
  readonly lowBand: LowBand;
  readonly program: ProgramChecks;
}

/** The edges' motion around a place, for a closer look: one entry an internal frame. */
export interface EdgeWindow {
  /** Frames a second. */
  readonly rate: Hertz;
  /** Time of frame 0, program time. */
  readonly startSeconds: Seconds;
  /** √2·u_R from startSeconds on, m at level 0 dB. */
  readonly outer: Float64Array;
  /** √2·u_L from startSeconds − T − margin on, so that inner[margin + n] lies one turn before outer[n]. */
  readonly inner: Float64Array;
  /** Frames of `inner` before the one that faces outer[0]. */
  readonly margin: number;
}

/** Largest magnitude of a bin row, a convenience for callers that look at one quarter. */
export function quarterMaximum(row: ArrayLike<Metres>, quarter: number): Metres {
  let largest = Number.NEGATIVE_INFINITY;
  const end = (quarter + 1) * BINS_PER_QUARTER;
  for (let bin = quarter * BINS_PER_QUARTER; bin < end; bin++) {
    if (row[bin]! > largest) largest = row[bin]!;
  }
  return largest;
}
