import { type LongestClip, NO_CLIP } from './program-checks.js';

/**
 * What is said of the samples as they lie in the files, where a program's frames have been changed
 * on the way: runs at full scale and what lies above the judged band. Counted over the frames from
 * `firstFrame` to before `endFrame`, of the program.
 */
export interface Tally {
  readonly firstFrame: number;
  readonly endFrame: number;
  clippedRuns: number;
  /** Frame of the program at which the first of them begins; −1 without one. */
  firstClipFrame: number;
  /** The longest of them, frames of the program. */
  longestClip: LongestClip;
  /** What halvings of the rate kept out, Σx² at the base rate; [left, right]. */
  readonly ultrasonicPower: [number, number];
}

export function emptyTally(firstFrame: number, endFrame: number): Tally {
  return {
    firstFrame,
    endFrame,
    clippedRuns: 0,
    firstClipFrame: -1,
    longestClip: NO_CLIP,
    ultrasonicPower: [0, 0],
  };
}
