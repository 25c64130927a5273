import { dirname, isAbsolute, join } from 'node:path';
import { withSound } from '../analysis/open-sound.js';
import type { SoundFile } from '../analysis/sound-file.js';
import { InputError, UsageError } from '../errors.js';
import type { ProgramSide, TrackFile } from '../program/program-side.js';
import type { Settings } from '../settings.js';
import { cutTrack } from './cut-track.js';
import { filterMisfits } from './filter-misfits.js';
import { handSettings, type Misfit } from './hand-settings.js';
import { type CutTrack, layTracks } from './lay-tracks.js';
import type { SheetFile } from './read-sheet.js';

/** A side that can be forecast, or why not: a failure for each file that cannot be read. */
export type LaidOutSide =
  | { readonly side: ProgramSide }
  | { readonly failures: readonly InputError[] };

/**
 * One side of a sheet as a program, with the heads of its files read.
 * @param levelDb what the command line says of its level; it wins
 * @throws UsageError where the sheet asks for what is not in a file, or does not fit together
 */
export async function layOutSide(
  file: SheetFile,
  index: number,
  settings: Settings,
  levelDb?: number,
): Promise<LaidOutSide> {
  const side = file.sheet.sides[index];
  if (side === undefined) throw new RangeError(`side ${index} of ${file.sheet.sides.length}`);
  const misfits: Misfit[] = [];
  const cut: CutTrack[] = [];
  const failures: InputError[] = [];
  const heads = new Map<string, TrackFile | InputError>();
  for (const [at, track] of side.tracks.entries()) {
    const path = isAbsolute(track.file) ? track.file : join(dirname(file.path), track.file);
    const head = heads.get(path) ?? (await headOf(path));
    if (head instanceof InputError && !heads.has(path)) failures.push(head);
    heads.set(path, head);
    if (head instanceof InputError) continue;
    cut.push(cutTrack(track, at, head, misfits));
  }
  if (failures.length > 0) return { failures };
  const laid = layTracks(cut, settings);
  misfits.push(...filterMisfits(cut, settings));
  const hand = handSettings(cut, laid, misfits);
  if (misfits.length > 0) {
    const texts = misfits.map(
      ({ track, path, text }) =>
        `${file.placeOf(['sides', index, 'tracks', track, ...path])}: ${text}`,
    );
    throw new UsageError(texts.join('\n'));
  }
  return {
    side: {
      name: side.name,
      sheet: file.path,
      levelDb: levelDb ?? side.levelDb ?? 0,
      ...laid,
      hand,
    },
  };
}

async function headOf(path: string): Promise<TrackFile | InputError> {
  try {
    return await withSound(path, async ({ file, bytesPerFrame }) => ({
      ...headOnly(file),
      bytesPerFrame,
    }));
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
}

/** Nothing that only one kind of file has: it has to cross threads. */
function headOnly({ path, container, format, validBits, frames, truncated }: SoundFile): SoundFile {
  return { path, container, format, validBits, frames, truncated };
}
