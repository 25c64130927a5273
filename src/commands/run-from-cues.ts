import { basename, resolve } from 'node:path';
import { withWav } from '../analysis/wav-file.js';
import { readLayout } from '../analysis/wav-layout.js';
import { InputError, UsageError } from '../errors.js';
import { existingCues } from '../report/cue-copy/existing-cues.js';
import { safeText } from '../report/safe-text.js';
import { cuePlaces } from '../sheet/cue-places.js';
import { sheetFromCues } from '../sheet/sheet-from-cues.js';
import { DONE, UNREADABLE } from './exit-code.js';
import type { Run } from './run.js';
import { standardError } from './standard-error.js';

/** Writes a sheet with the tracks that a WAV file's own marks make, and gives the exit code. */
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
    const { cues, frames } = await withWav(resolve(surroundings.cwd, path), async (wav) => {
      const { pieces } = await readLayout(wav);
      return { cues: await existingCues(wav, pieces), frames: wav.file.frames };
    });
    const places = cuePlaces(cues, frames);
    if (places.length === 0) {
      throw new UsageError(`--from-cues: ${path}: found no cue points, expected at least one`);
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
