import type { Settings } from '../settings.js';
import { isFamilyRate } from './band-limit.js';
import { ConvertingAnalyser } from './converting-analyser.js';
import { familyAnalyser } from './family-analyser.js';
import type { MotionRows, PartMotion } from './part-motion.js';
import type { Part } from './parts.js';
import { programOf } from './program.js';
import type { SampleFormat } from './sample-format.js';

/** Takes what a part must hear block by block and ends in its motion. */
export interface PartAnalyser {
  /**
   * Takes the next whole raw frames, from the part's `readFrom` on; blocks may have any size and do
   * not show in the result.
   * @returns the first frame, counted from the program's first, that is no finite number or beyond
   *   SAMPLE_LIMIT; −1 if all are fit
   */
  push(frames: Uint8Array): number;
  /** Where blocks may lie that `push` then need not copy, if it would. */
  readonly room?: Uint8Array<ArrayBuffer>;
  /** Ends the part at its `readUntil`. */
  finish(): PartMotion;
}

/**
 * The pass over a part of a program, whatever the program's rate.
 * @param frames length of the program
 * @param part at a rate of neither family only all of it
 * @param rows where the part's may be put; not all analysers do
 */
export async function createPartAnalyser(
  format: SampleFormat,
  frames: number,
  part: Part,
  settings: Settings,
  rows?: MotionRows,
): Promise<PartAnalyser> {
  const program = programOf(format, frames);
  return isFamilyRate(format.sampleRate)
    ? await familyAnalyser(program, part, settings, rows)
    : await ConvertingAnalyser.create(program, part, settings);
}
