import { basename, resolve } from 'node:path';
import { InputError, UsageError } from '../errors.js';
import { safeText } from '../report/safe-text.js';
import { fileMarks } from '../sheet/file-marks.js';
import { sheetFromCues } from '../sheet/sheet-from-cues.js';
import { DONE, UNREADABLE } from './exit-code.js';
import type { Run } from './run.js';
import { standardError } from './standard-error.js';

/** Writes a sheet with the tracks that a file's own marks make, and gives the exit code. */
export async function runFromCues(
  sheets: readonly string[],
  path: string,
  { surroundings, output }: Run,
): Promise<number> {
  const [sheet] = sheets;
  if (sheet !== undefined) {
    throw new UsageError(`--from-cues: writes a sheet, found ${sheet} to forecast beside it`);
  }
  try {
    const { places, frames } = await fileMarks(resolve(surroundings.cwd, path));
    if (places.length === 0) {
      const where = 'WAV has them as "cue ", AIFF as "MARK", FLAC as a cue sheet';
      throw new UsageError(
        `--from-cues: ${path}: found no cue points, expected at least one: ${where}`,
      );
    }
    await output.write(sheetFromCues(path, basename(path), places, frames));
    return DONE;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const errors = standardError(surroundings.stderr, { isQuiet: false, isTerminal: false });
    errors.error(safeText(error.message));
    return UNREADABLE;
  }
}
