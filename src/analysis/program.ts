import type { Hertz, Seconds } from '../units.js';
import type { SampleFormat } from './sample-format.js';

/** What a program at a rate of neither family is brought to before the pass. */
export const CONVERTED_RATE: Hertz = 48_000;

/** A program as the pass sees it. */
export interface Program {
  readonly format: SampleFormat;
  readonly frames: number;
  /** Its length by its own clock, which a change of rate may not round. */
  readonly durationSeconds: Seconds;
}

export function programOf(format: SampleFormat, frames: number): Program {
  return { format, frames, durationSeconds: frames / format.sampleRate };
}
