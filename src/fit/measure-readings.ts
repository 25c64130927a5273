import { withTally } from '../analysis/analyse-part.js';
import type { FrameSource } from '../analysis/frame-source.js';
import { createPartAnalyser } from '../analysis/part-analyser.js';
import type { PartMotion } from '../analysis/part-motion.js';
import type { Part } from '../analysis/parts.js';
import { frameBytes } from '../analysis/sample-format.js';
import { emptyTally } from '../analysis/tally.js';
import type { Settings } from '../settings.js';

/** One part of a program, measured with settings of its own. */
export interface Reading {
  readonly settings: Settings;
  readonly part: Part;
}

/** Read at a time; see analyse-part.ts. */
const BLOCK_BYTES = 2 ** 18;

/**
 * Measures the same stretch of a program in several ways at once, in one read: each reading has a
 * kernel of its own, fed from the same blocks with the frames that its part must hear. What a source
 * tallies is told of the first.
 * @param readings at least one; of parts that lie about the same frames
 * @param onFrames told of the frames that are done
 */
export async function measureReadings(
  source: FrameSource,
  readings: readonly Reading[],
  onFrames: (frames: number) => void = () => {},
): Promise<PartMotion[]> {
  const { format, frames } = source;
  const analysers = [];
  for (const { part, settings } of readings) {
    const analyser = await createPartAnalyser(format, frames, part, settings);
    analysers.push({ part, analyser });
  }
  const size = frameBytes(format);
  let frame = Math.min(...readings.map(({ part }) => part.readFrom));
  const endFrame = Math.max(...readings.map(({ part }) => part.readUntil));
  const [{ part: first } = { part: { firstFrame: 0, endFrame: frames } }] = readings;
  const tally = emptyTally(first.firstFrame, first.endFrame);
  const range = { firstFrame: frame, endFrame, blockBytes: BLOCK_BYTES, tally };
  for await (const block of source.read(range)) {
    const next = frame + block.length / size;
    for (const { part, analyser } of analysers) {
      const from = Math.max(part.readFrom, frame);
      const until = Math.min(part.readUntil, next);
      if (from >= until) continue;
      const unfit = analyser.push(block.subarray((from - frame) * size, (until - frame) * size));
      if (unfit >= 0) throw source.refuse(unfit);
    }
    onFrames(next - frame);
    frame = next;
  }
  const motions = analysers.map(({ analyser }) => analyser.finish());
  if (source.tallies !== true) return motions;
  return motions.map((motion, at) => (at === 0 ? withTally(motion, tally) : motion));
}
