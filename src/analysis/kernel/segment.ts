import type { Settings } from '../../settings.js';
import type { Hertz, Seconds } from '../../units.js';
import { bandLimitOf, LEAD_FRAMES } from '../band-limit.js';
import { plainSegment } from '../plain-segment.js';
import type { SampleFormat } from '../sample-format.js';
import { spiralClock } from '../spiral-clock.js';
import type { Stereo } from '../stereo.js';
import { configureKernel } from './configure.js';
import { feedKernel } from './feed.js';
import { type Kernel, loadKernel, releaseKernel } from './load-kernel.js';

/** Displacement of both walls over a short segment, m at level 0 dB. */
export interface SegmentMotion extends Stereo {
  /** Frames a second of the two rows. */
  readonly rate: Hertz;
}

/** A quarter that no segment reaches. */
const NEVER = 1e4;

/** Which part of a segment is wanted, seconds from its start. */
export interface Span {
  readonly from: Seconds;
  readonly length: Seconds;
}

/**
 * Moves the walls by a segment alone, from rest: what lies within the filters' settling time after
 * its start is not what it would be in the whole program.
 * @param format at a rate of the 44.1 or 48 kHz family
 * @param bytes whole raw frames, at most a second or so
 * @returns rows over the span, one entry an internal frame
 */
export async function moveSegment(
  format: SampleFormat,
  bytes: Uint8Array,
  settings: Settings,
  span: Span,
): Promise<SegmentMotion> {
  const limit = bandLimitOf(format.sampleRate);
  const kernel = await loadKernel();
  if (kernel === null) return plainSegment(format, bytes, settings, span);
  // Only the displacement is wanted: no program to weigh, and the quarters begin after the segment.
  const clock = { ...spiralClock(settings, limit.internalRate), firstQuarter: NEVER };
  configureKernel(kernel, format, 0, settings, limit, clock);
  feedKernel(kernel, format, bytes, () => {});
  kernel.finish(format.sampleRate / 100);
  const rate = limit.internalRate;
  const first = Math.round(span.from * rate);
  const rows = readRows(kernel, first, Math.round(span.length * rate));
  releaseKernel(kernel);
  return { rate, ...rows };
}

/** Frames of the ring from one on; silence before the segment. */
function readRows(kernel: Kernel, first: number, count: number): Stereo {
  const mask = kernel.displacementMask.value;
  const ring = new Float32Array(kernel.memory.buffer, kernel.displacement.value, 2 * (mask + 1));
  const left = new Float64Array(count);
  const right = new Float64Array(count);
  for (let n = Math.max(0, -first - LEAD_FRAMES); n < count; n++) {
    const at = 2 * ((LEAD_FRAMES + first + n) & mask);
    left[n] = ring[at]!;
    right[n] = ring[at + 1]!;
  }
  return { left, right };
}
