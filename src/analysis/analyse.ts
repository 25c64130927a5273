import type { Settings } from '../settings.js';
import { joinParts } from './join-parts.js';
import type { MotionSummary } from './motion.js';
import { createPartAnalyser } from './part-analyser.js';
import { wholeProgram } from './parts.js';
import { programOf } from './program.js';
import type { SampleFormat } from './sample-format.js';

/** Takes a program block by block and ends in its motion summary. */
export interface MotionAnalyser {
  /**
   * Takes the next whole raw frames; blocks may have any size and do not show in the result.
   * @returns the first frame of the program that is no finite number or beyond SAMPLE_LIMIT; −1 if
   *   all are fit
   */
  push(frames: Uint8Array): number;
  /** Ends the program. */
  finish(): MotionSummary;
}

/**
 * The one pass over a program, whatever its rate.
 * @param frames length of the program
 */
export async function createAnalyser(
  format: SampleFormat,
  frames: number,
  settings: Settings,
): Promise<MotionAnalyser> {
  const part = wholeProgram(programOf(format, frames), settings);
  const analyser = await createPartAnalyser(format, frames, part, settings);
  return {
    push(raw: Uint8Array): number {
      return analyser.push(raw);
    },
    finish(): MotionSummary {
      return joinParts([analyser.finish()], format, frames, settings);
    },
  };
}
