import type { FrameSource } from '../analysis/frame-source.js';
import { withSound } from '../analysis/open-sound.js';
import { InputError } from '../errors.js';
import { programOf } from './program-frames.js';
import type { ProgramSide, TrackFile } from './program-side.js';

/**
 * Opens the files of a side, hands its stream of frames to `use` and closes them, whatever happens.
 * @throws InputError `changed-while-read` where a file is no longer what the side was laid out with
 */
export async function withProgram<T>(
  side: ProgramSide,
  use: (source: FrameSource) => Promise<T>,
): Promise<T> {
  return await withEach(
    side.tracks.map(({ file }) => file),
    [],
    async (sources) => await use(programOf(side, sources)),
  );
}

/** Tracks of one file share it. */
async function withEach<T>(
  files: readonly TrackFile[],
  sources: readonly FrameSource[],
  use: (sources: readonly FrameSource[]) => Promise<T>,
): Promise<T> {
  const [file, ...others] = files;
  if (file === undefined) return await use(sources);
  const known = sources.find(({ path }) => path === file.path);
  if (known !== undefined) return await withEach(others, [...sources, known], use);
  return await withSound(file.path, async ({ source }) => {
    if (!isSame(source, file)) throw changed(file.path);
    return await withEach(others, [...sources, source], use);
  });
}

function isSame(found: FrameSource, known: TrackFile): boolean {
  return (
    found.frames === known.frames && JSON.stringify(found.format) === JSON.stringify(known.format)
  );
}

function changed(path: string): InputError {
  const message = `${path}: found another sound than a moment ago, expected the same`;
  const remedy = 'it was written while it was read: wait until it is written, then try again';
  return new InputError(path, 'changed-while-read', `${message}; ${remedy}`);
}
