import { STEPS_A_SECOND } from './loudness.js';
import type { Part } from './parts.js';
import type { SampleFormat } from './sample-format.js';

/**
 * K-weighted power, summed over the channels, of every 100 ms that a part counts; a one-channel
 * file counts its channel once.
 * @param powers left, right, left … of every whole 100 ms from where the part is heard
 */
export function countedSteps(
  powers: readonly number[],
  part: Part,
  { channels, sampleRate }: SampleFormat,
): Float64Array {
  const stepOf = (frame: number): number =>
    Math.ceil((frame - part.readFrom) / (sampleRate / STEPS_A_SECOND));
  const until = Math.min(stepOf(part.endFrame), powers.length / 2);
  const first = stepOf(part.firstFrame);
  return Float64Array.from({ length: Math.max(0, until - first) }, (_, index) => {
    const at = 2 * (first + index);
    return channels === 1 ? powers[at]! : powers[at]! + powers[at + 1]!;
  });
}
