import type { Settings } from '../settings.js';
import type { FrameSource } from './frame-source.js';
import { setRows } from './motion-rows.js';
import { createPartAnalyser } from './part-analyser.js';
import type { MotionRows, PartMotion } from './part-motion.js';
import type { Part } from './parts.js';
import { frameBytes } from './sample-format.js';
import { emptyTally, type Tally } from './tally.js';

export { kernelIsAvailable } from './kernel/load-kernel.js';
export { figuresOf, type MotionRows, type PartFigures, type PartMotion } from './part-motion.js';

/**
 * Read at a time by a source that does not fill the kernel's room. Larger blocks read no faster, and
 * those of one part are still there while the next ones are worked on.
 */
const BLOCK_BYTES = 2 ** 18;

/**
 * Reads and measures one part of a program.
 * @param onFrames told now and then how many more of the part's own frames are done: over all parts
 *   they add up to the program's
 * @param rows the part's, to be filled in
 * @throws InputError `bad-sample` where it hears a sample that is no finite number or far beyond
 *   full scale. Parts hear a little of each other, so of several that throw the first one in the
 *   program has the program's first such frame.
 */
export async function analysePart(
  source: FrameSource,
  settings: Settings,
  part: Part,
  onFrames: (frames: number) => void = () => {},
  rows?: MotionRows,
): Promise<PartMotion> {
  const { format, frames } = source;
  const analyser = await createPartAnalyser(format, frames, part, settings, rows);
  const ownBefore = (frame: number): number =>
    Math.min(Math.max(frame, part.firstFrame), part.endFrame);
  let frame = part.readFrom;
  const tally = emptyTally(part.firstFrame, part.endFrame);
  const range = {
    firstFrame: part.readFrom,
    endFrame: part.readUntil,
    blockBytes: BLOCK_BYTES,
    tally,
    ...(analyser.room === undefined ? {} : { room: analyser.room }),
  };
  for await (const block of source.read(range)) {
    const unfit = analyser.push(block);
    if (unfit >= 0) throw source.refuse(unfit);
    const next = frame + block.length / frameBytes(format);
    onFrames(ownBefore(next) - ownBefore(frame));
    frame = next;
  }
  const motion = analyser.finish();
  if (rows !== undefined) setRows(rows, motion);
  return source.tallies === true ? withTally(motion, tally) : motion;
}

/** With what was to be said of the samples before they became these. */
export function withTally(motion: PartMotion, tally: Tally): PartMotion {
  const { clippedRuns, firstClipFrame, longestClip, ultrasonicPower } = tally;
  const [left, right] = motion.ultrasonicPower;
  return {
    ...motion,
    sums: { ...motion.sums, clippedRuns, firstClipFrame, longestClip },
    ultrasonicPower: [left + ultrasonicPower[0], right + ultrasonicPower[1]],
  };
}
