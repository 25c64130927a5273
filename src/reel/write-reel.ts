import type { ForecastedFile } from '../forecast-result.js';
import { type SideInput, withSide } from '../open-side.js';
import { writeBytes } from '../report/cue-copy/copy-bytes.js';
import { cueChunks } from '../report/cue-copy/cue-chunks.js';
import type { Units } from '../report/length-text.js';
import { writeAtomic, writeFileAtomic } from '../report/write-atomic.js';
import { reelOf } from './reel.js';
import { reelForm } from './reel-form.js';
import { reelFormat, reelFrames } from './reel-frames.js';
import { reelMarks } from './reel-marks.js';
import { reelText } from './reel-text.js';
import { reelTextPath } from './reel-text-path.js';

/** No marks but ours. */
const NO_CUES = { pieces: [], points: [], labels: [], texts: [], names: new Set<number>() };

/**
 * Writes the hardest passages of a side as a WAV, to cut as a test, and beside it a text that says
 * how to cut each and what to find under the microscope.
 * @param input what the forecast is of; its sound is read again, as far as it is wanted
 * @returns how many passages there are; with none nothing is written
 * @throws InputError if the sound cannot be read, OutputError if a file cannot be written
 */
export async function writeReel(
  input: SideInput,
  file: ForecastedFile,
  path: string,
  units: Units,
): Promise<number> {
  return await withSide(input, file.settings, async (side) => {
    const reel = await reelOf(side, file);
    const { layout, passages } = reel;
    if (passages.length === 0) return 0;
    const marks = cueChunks(NO_CUES, reelMarks(reel, units), { path, frames: layout.frames });
    const form = reelForm(reelFormat(side.source), layout.frames, marks);
    await writeAtomic(path, async (handle) => {
      await writeBytes(handle, form.head);
      for await (const block of reelFrames(side.source, layout)) await writeBytes(handle, block);
      await writeBytes(handle, form.tail);
    });
    await writeFileAtomic(reelTextPath(path), reelText(reel, units));
    return passages.length;
  });
}
