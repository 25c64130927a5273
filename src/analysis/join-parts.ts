import type { Settings } from '../settings.js';
import { appendFigures, appendRows } from './append-parts.js';
import { bandLimitOf, isFamilyRate } from './band-limit.js';
import { integratedLoudness } from './loudness.js';
import type { MotionSummary } from './motion.js';
import type { MotionRows, PartFigures, PartMotion } from './part-motion.js';
import { clockOf } from './parts.js';
import type { SampleFormat } from './sample-format.js';
import { programChecks } from './sums-to-checks.js';

/**
 * The motion summary of a program out of its parts.
 * @param parts all of them, in their order, else a RangeError
 * @param frames length of the program
 */
export function joinParts(
  parts: readonly PartMotion[],
  format: SampleFormat,
  frames: number,
  settings: Settings,
): MotionSummary {
  return joinFigures(parts, appendRows(parts), format, frames, settings);
}

/**
 * The same of parts whose rows lie in one memory.
 * @param rows of the whole program
 */
export function joinFigures(
  parts: readonly PartFigures[],
  { bins, left, right, lowBand }: MotionRows,
  format: SampleFormat,
  frames: number,
  settings: Settings,
): MotionSummary {
  const whole = appendFigures(parts);
  const { part } = whole;
  if (part.firstFrame !== 0 || part.endFrame !== frames) {
    throw new RangeError(`parts of frames ${part.firstFrame} … ${part.endFrame} of ${frames}`);
  }
  return {
    turnSeconds: clockOf(format, settings).turnSeconds,
    durationSeconds: frames / format.sampleRate,
    quarterCount: part.endQuarter,
    ...bins,
    left,
    right,
    lowBand,
    program: programChecks(whole.sums, format, {
      truePeak: whole.truePeak,
      loudnessLufs: integratedLoudness(whole.stepPowers),
      ultrasonicMeanSquare: Math.max(...whole.ultrasonicPower) / baseFrames(format, frames),
      jumps: whole.jumps,
    }),
  };
}

/** Length of the program at the base rate; a program of neither family is never halved. */
function baseFrames({ sampleRate }: SampleFormat, frames: number): number {
  if (!isFamilyRate(sampleRate)) return frames;
  return Math.ceil(frames / 2 ** bandLimitOf(sampleRate).halvings);
}
