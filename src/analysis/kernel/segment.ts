import type { Settings } from '../../settings.js';
import type { Hertz } from '../../units.js';
import { bandLimitOf, LEAD_FRAMES } from '../band-limit.js';
import type { SampleFormat } from '../sample-format.js';
import { spiralClock } from '../spiral-clock.js';
import type { Stereo } from '../stereo.js';
import { configureKernel, numbersAt } from './configure.js';
import { feedKernel } from './feed.js';
import { loadKernel } from './load-kernel.js';

/** Displacement of both walls over a short segment, m at level 0 dB. */
export interface SegmentMotion extends Stereo {
  /** Frames a second of the two rows. */
  readonly rate: Hertz;
}

/**
 * Moves the walls by a segment alone, from rest: what lies within the filters' settling time after
 * its start is not what it would be in the whole program.
 * @param format at a rate of the 44.1 or 48 kHz family
 * @param bytes whole raw frames, at most a second or so
 * @returns rows from the segment's first frame on, one entry an internal frame
 */
export async function moveSegment(
  format: SampleFormat,
  bytes: Uint8Array,
  frames: number,
  settings: Settings,
): Promise<SegmentMotion> {
  const limit = bandLimitOf(format.sampleRate);
  const clock = spiralClock(settings, limit.internalRate);
  const kernel = await loadKernel();
  configureKernel(kernel, format, frames, settings, limit, clock);
  const forget = (): void => {
    kernel.takeBins();
    kernel.takeQuarters();
    kernel.takeSteps();
    kernel.takeLow();
  };
  feedKernel(kernel, format, bytes, forget);
  kernel.finish(format.sampleRate / 100);
  return {
    rate: limit.internalRate,
    ...readRows(kernel, Math.floor((frames / format.sampleRate) * limit.internalRate)),
  };
}

function readRows(kernel: Awaited<ReturnType<typeof loadKernel>>, count: number): Stereo {
  const mask = kernel.displacementMask.value;
  const ring = numbersAt(kernel, kernel.displacement.value, 2 * (mask + 1));
  const row = (channel: 0 | 1): Float64Array =>
    Float64Array.from({ length: count }, (_, n) => ring[2 * ((LEAD_FRAMES + n) & mask) + channel]!);
  return { left: row(0), right: row(1) };
}
