import type { FrameSource } from '../analysis/frame-source.js';
import { type OpenWav, type WavFile, withWav } from '../analysis/wav-file.js';
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
    async (wavs) => await use(programOf(side, wavs)),
  );
}

/** Tracks of one file share it. */
async function withEach<T>(
  files: readonly TrackFile[],
  wavs: readonly OpenWav[],
  use: (wavs: readonly OpenWav[]) => Promise<T>,
): Promise<T> {
  const [file, ...others] = files;
  if (file === undefined) return await use(wavs);
  const known = wavs.find((wav) => wav.file.path === file.path);
  if (known !== undefined) return await withEach(others, [...wavs, known], use);
  return await withWav(file.path, async (wav) => {
    if (!isSame(wav.file, file)) throw changed(file.path);
    return await withEach(others, [...wavs, wav], use);
  });
}

function isSame(found: WavFile, known: TrackFile): boolean {
  return (
    found.frames === known.frames &&
    found.dataOffset === known.dataOffset &&
    JSON.stringify(found.format) === JSON.stringify(known.format)
  );
}

function changed(path: string): InputError {
  const message = `${path}: found another sound than a moment ago, expected the same`;
  const remedy = 'it was written while it was read: wait until it is written, then try again';
  return new InputError(path, 'changed-while-read', `${message}; ${remedy}`);
}
