import { readSoundHead } from '../analysis/open-sound.js';
import { withWav } from '../analysis/wav-file.js';
import { readLayout } from '../analysis/wav-layout.js';
import { withSource } from '../analysis/wav-source.js';
import { existingCues } from '../report/cue-copy/existing-cues.js';
import { aiffMarks } from './aiff-marks.js';
import { type CuePlace, cuePlaces, placesOf } from './cue-places.js';
import { flacMarks } from './flac-marks.js';

/** The marks of a file of sound in the order of time, one a sample, and its length. */
export interface FileMarks {
  readonly places: readonly CuePlace[];
  readonly frames: number;
}

/**
 * What a file says of places in it: cue points of a WAV, markers of an AIFF, and of a FLAC file the
 * tracks of its cue sheet.
 * @throws InputError if it cannot be read
 */
export async function fileMarks(path: string): Promise<FileMarks> {
  const { container, frames } = await readSoundHead(path);
  if (container === 'FLAC' || container === 'AIFF' || container === 'AIFF-C') {
    const marksIn = container === 'FLAC' ? flacMarks : aiffMarks;
    return { places: placesOf(await withSource(path, marksIn), frames), frames };
  }
  return await withWav(path, async (wav) => {
    const { pieces } = await readLayout(wav);
    return { places: cuePlaces(await existingCues(wav, pieces), frames), frames };
  });
}
