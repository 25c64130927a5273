import type { Settings } from '../settings.js';
import { badSample } from './convert-samples.js';
import { createPartAnalyser } from './part-analyser.js';
import type { PartMotion } from './part-motion.js';
import type { Part } from './parts.js';
import { frameBytes } from './sample-format.js';
import { readFrames } from './wav-blocks.js';
import type { OpenWav } from './wav-file.js';

export { kernelIsAvailable } from './kernel/load-kernel.js';
export { buffersOf, type PartMotion } from './part-motion.js';

/**
 * Read at a time. Larger blocks read no faster, and those of one part are still there while the
 * next ones are worked on.
 */
const BLOCK_BYTES = 2 ** 18;

/**
 * Reads and measures one part of a file.
 * @param onFrames told now and then how many more of the part's own frames are done: over all parts
 *   they add up to the file's
 * @throws InputError `bad-sample` where it hears a sample that is no finite number or far beyond
 *   full scale. Parts hear a little of each other, so of several that throw the first one in the
 *   file has the file's first such frame.
 */
export async function analysePart(
  wav: OpenWav,
  settings: Settings,
  part: Part,
  onFrames: (frames: number) => void = () => {},
): Promise<PartMotion> {
  const { format, frames } = wav.file;
  const analyser = await createPartAnalyser(format, frames, part, settings);
  const ownBefore = (frame: number): number =>
    Math.min(Math.max(frame, part.firstFrame), part.endFrame);
  let frame = part.readFrom;
  const range = {
    firstFrame: part.readFrom,
    endFrame: part.readUntil,
    blockBytes: BLOCK_BYTES,
  };
  for await (const block of readFrames(wav, range)) {
    const unfit = analyser.push(block);
    if (unfit >= 0) throw badSample(wav.file, unfit);
    const next = frame + block.length / frameBytes(format);
    onFrames(ownBefore(next) - ownBefore(frame));
    frame = next;
  }
  return analyser.finish();
}
