import type { MotionSummary, ProgramChecks } from './analysis/motion.js';
import type { SoundEdges } from './analysis/silent-ends.js';
import type { SoundContainer } from './analysis/sound-file.js';
import type { SideForecast } from './model/forecast-types.js';
import type { HandSettings } from './model/side-plan-input.js';
import type { Settings } from './settings.js';
import type { Hertz, Seconds } from './units.js';

/** One file that a side was read from, as its head describes it. */
export interface SourceFile {
  /** As the user gave it, or below what was given; never made absolute. */
  readonly path: string;
  readonly container: SoundContainer;
  readonly encoding: 'pcm' | 'float';
  readonly bitDepth: number;
  readonly sampleRate: Hertz;
  readonly channels: 1 | 2;
  readonly frames: number;
  readonly durationSeconds: Seconds;
}

/** A side's forecast together with what it was made from. */
export interface ForecastedFile {
  readonly name: string;
  readonly sources: readonly SourceFile[];
  readonly settings: Settings;
  readonly program: ProgramChecks;
  readonly forecast: SideForecast;
  /** Whether the motion was measured in the audio or read back from where it had been saved. */
  readonly readFrom: 'audio' | 'motion';
  /** The motion summary, for those who asked to have it; it is large. */
  readonly motion: MotionSummary | null;
  /** SHA-256 of the frames as they lie in the file, hexadecimal; null where nobody asked. */
  readonly audioSha256: string | null;
  /** Where asked for: the silent ends of the sound; null if all of it is silent. */
  readonly soundEdges?: SoundEdges | null;
  /** Tracks, markers and what is set by hand along it; only of a sheet's side. */
  readonly hand?: HandSettings;
}
