import type { PartMotion } from '../part-motion.js';
import type { Part } from '../parts.js';
import type { SampleFormat } from '../sample-format.js';
import { type FrameRun, leastSilentFrames } from '../silent-runs.js';
import { numbersAt } from './configure.js';
import type { Kernel } from './load-kernel.js';

/** What a kernel adds up over the frames that it counts. */
export type Counted = Pick<PartMotion, 'sums' | 'truePeak' | 'ultrasonicPower'>;

/** Σx, Σx², Σ left·right and max |x|, two numbers each; and three of them twice. */
const SUM_NUMBERS = 18;

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
  kernel.longestClip.value = 0;
  kernel.longestClipFrame.value = -1;
  kernel.silentHead.value = -1;
  kernel.silentTail.value = 0;
  kernel.identical.value = 1;
}

/**
 * What a kernel has counted so far. The half-bands are late, so that this lies a few frames before
 * what it has been given: so do the ends of all parts, and they still meet.
 * @param part whose own frames are over
 * @param silentRuns that ended among them
 */
export function countedBy(
  kernel: Kernel,
  { firstFrame, endFrame, readFrom }: Part,
  { sampleRate }: SampleFormat,
  silentRuns: readonly FrameRun[],
): Counted {
  const pair = (address: number): [number, number] => {
    const [left, right] = numbersAt(kernel, address, 2);
    return [left!, right!];
  };
  const at = kernel.sums.value;
  const firstClip = kernel.firstClipFrame.value;
  const longestClip = kernel.longestClipFrame.value;
  const [head, tail] = [kernel.silentHead.value, kernel.silentTail.value];
  return {
    sums: {
      frames: endFrame - firstFrame,
      sum: pair(at),
      square: pair(at + 16),
      cross: pair(at + 32)[0],
      samplePeak: pair(at + 48),
      clippedRuns: kernel.clippedRuns.value,
      firstClipFrame: firstClip < 0 ? -1 : readFrom + firstClip,
      longestClip: {
        firstFrame: longestClip < 0 ? -1 : readFrom + longestClip,
        frames: kernel.longestClip.value,
      },
      identical: kernel.identical.value !== 0,
      silence: {
        from: firstFrame,
        until: endFrame,
        head: head < 0 ? tail : head,
        tail,
        least: leastSilentFrames(sampleRate),
        inside: silentRuns,
      },
    },
    truePeak: pair(kernel.truePeaks.value),
    ultrasonicPower: pair(kernel.ultrasonicPower.value),
  };
}
