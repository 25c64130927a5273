import { convertSamples } from '../analysis/convert-samples.js';
import type { FrameSource } from '../analysis/frame-source.js';
import { frameBytes } from '../analysis/sample-format.js';
import type { Seconds } from '../units.js';
import type { HardPassage } from './hardest-passages.js';

/** How far outside a passage a quieter frame is looked for: half a period of 50 Hz. */
const REACH: Seconds = 0.01;

/**
 * A passage that begins and ends up to a hundredth of a second further out, where the program is
 * nearest to zero: cut off in the middle of a swing it would begin with a click, and samples are not
 * faded, so that they stay the program's own.
 */
export async function withQuietEdges(
  passage: HardPassage,
  source: FrameSource,
): Promise<HardPassage> {
  const { sampleRate } = source.format;
  const reach = Math.round(REACH * sampleRate);
  const from = Math.round(passage.fromSeconds * sampleRate);
  const until = Math.round(passage.untilSeconds * sampleRate);
  const first = await quietestFrame(source, from - reach, from + 1);
  const last = await quietestFrame(source, until - 1, until + reach);
  return { ...passage, fromSeconds: first / sampleRate, untilSeconds: (last + 1) / sampleRate };
}

/** Of a range, as far as the program has it; both channels count. */
async function quietestFrame(source: FrameSource, from: number, until: number): Promise<number> {
  const { format, frames } = source;
  const firstFrame = Math.min(Math.max(from, 0), frames - 1);
  const endFrame = Math.min(Math.max(until, firstFrame + 1), frames);
  let frame = firstFrame;
  let quietest = firstFrame;
  let least = Number.POSITIVE_INFINITY;
  for await (const block of source.read({ firstFrame, endFrame })) {
    const count = block.length / frameBytes(format);
    const stereo = new Float64Array(2 * count);
    convertSamples(block, format, stereo);
    for (let at = 0; at < count; at++) {
      const height = Math.max(Math.abs(stereo[2 * at] ?? 0), Math.abs(stereo[2 * at + 1] ?? 0));
      if (height < least) {
        least = height;
        quietest = frame + at;
      }
    }
    frame += count;
  }
  return quietest;
}
