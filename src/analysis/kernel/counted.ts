import type { PartMotion } from '../part-motion.js';
import { numbersAt } from './configure.js';
import type { Kernel } from './load-kernel.js';

/** What a kernel adds up over the frames that it counts. */
export type Counted = Pick<PartMotion, 'sums' | 'truePeak' | 'ultrasonicPower'>;

/** Σx, Σx², Σ left·right and max |x|, two numbers each. */
const SUM_NUMBERS = 8;

/**
 * Lets a kernel count from here on. Its filters go on, and so does a run at full scale that has
 * begun: it counts where its third sample lies.
 */
export function beginCounting(kernel: Kernel): void {
  numbersAt(kernel, kernel.sums.value, SUM_NUMBERS).fill(0);
  numbersAt(kernel, kernel.truePeaks.value, 2).fill(0);
  numbersAt(kernel, kernel.ultrasonicPower.value, 2).fill(0);
  kernel.clippedRuns.value = 0;
  kernel.firstClipFrame.value = -1;
  kernel.identical.value = 1;
}

/**
 * What a kernel has counted so far. The half-bands are late, so that this lies a few frames before
 * what it has been given: so do the ends of all parts, and they still meet.
 * @param frames how many it has counted
 * @param firstFrame frame of the program that it was given first
 */
export function countedBy(kernel: Kernel, frames: number, firstFrame: number): Counted {
  const pair = (address: number): [number, number] => {
    const [left, right] = numbersAt(kernel, address, 2);
    return [left!, right!];
  };
  const at = kernel.sums.value;
  const firstClip = kernel.firstClipFrame.value;
  return {
    sums: {
      frames,
      sum: pair(at),
      square: pair(at + 16),
      cross: pair(at + 32)[0],
      samplePeak: pair(at + 48),
      clippedRuns: kernel.clippedRuns.value,
      firstClipFrame: firstClip < 0 ? -1 : firstFrame + firstClip,
      identical: kernel.identical.value !== 0,
    },
    truePeak: pair(kernel.truePeaks.value),
    ultrasonicPower: pair(kernel.ultrasonicPower.value),
  };
}
