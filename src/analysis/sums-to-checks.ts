import type { Hertz } from '../units.js';
import type { Jumps } from './jump-list.js';
import type { DigitalSilence, FoundJumps, ProgramChecks, Span } from './motion.js';
import type { LongestClip, ProgramSums } from './program-checks.js';
import type { SampleFormat } from './sample-format.js';
import type { SilentRuns } from './silent-runs.js';

/** What the sums do not hold. */
interface Measured {
  readonly truePeak: readonly [number, number];
  readonly loudnessLufs: number | null;
  readonly ultrasonicMeanSquare: number;
  readonly jumps: Jumps;
}

/** Means and correlation out of the sums. */
export function programChecks(
  sums: ProgramSums,
  format: SampleFormat,
  measured: Measured,
): ProgramChecks {
  const { frames, sum, square } = sums;
  const { sampleRate } = format;
  const product = Math.sqrt(square[0] * square[1]);
  return {
    mean: [sum[0] / frames, sum[1] / frames],
    meanSquare: [square[0] / frames, square[1] / frames],
    samplePeak: sums.samplePeak,
    clippedRuns: sums.clippedRuns,
    firstClipSeconds: sums.firstClipFrame < 0 ? null : sums.firstClipFrame / sampleRate,
    longestClip: clipSpan(sums.longestClip, sampleRate),
    correlation: product > 0 ? sums.cross / product : 0,
    identicalChannels: format.channels === 2 && sums.identical,
    truePeak: measured.truePeak,
    loudnessLufs: measured.loudnessLufs,
    ultrasonicMeanSquare: measured.ultrasonicMeanSquare,
    silence: digitalSilence(sums.silence, sampleRate),
    jumps: foundJumps(measured.jumps, sampleRate),
  };
}

function clipSpan({ firstFrame, frames }: LongestClip, rate: Hertz): Span | null {
  if (frames === 0) return null;
  return { fromSeconds: firstFrame / rate, untilSeconds: (firstFrame + frames) / rate };
}

/** Spans of digital silence that are kept; of the others it is known how many there are. */
const MOST_SPANS = 32;

function digitalSilence({ inside }: SilentRuns, rate: Hertz): DigitalSilence {
  return {
    count: inside.length,
    seconds: inside.reduce((sum, [, frames]) => sum + frames, 0) / rate,
    first: inside.slice(0, MOST_SPANS).map(([first, frames]) => ({
      fromSeconds: first / rate,
      untilSeconds: (first + frames) / rate,
    })),
  };
}

function foundJumps({ count, largest }: Jumps, rate: Hertz): FoundJumps {
  return {
    count,
    largest: largest.map(({ frame, channel, difference, around }) => ({
      atSeconds: frame / rate,
      channel: channel === 0 ? 'left' : 'right',
      size: difference / 2,
      around: around / 2,
    })),
  };
}
