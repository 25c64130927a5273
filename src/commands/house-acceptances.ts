import { basename, dirname, resolve } from 'node:path';
import type { AcceptedEntry } from '../accepted/accepted-schema.js';
import { applyAccepted } from '../accepted/apply-accepted.js';
import {
  type AcceptedFile,
  entriesFor,
  entriesOfSound,
  readAccepted,
} from '../accepted/read-accepted.js';
import type { ForecastedFile } from '../forecast-result.js';
import { acceptanceNotes } from '../report/acceptance-text.js';
import type { ToldFile } from '../report/told-file.js';
import type { StandardError } from './standard-error.js';

/** What the house has accepted of files, from the `furrow.accepted.json` beside each. */
export interface HouseAcceptances {
  /** Whether anything is said of a file, so that its hash is needed. */
  readonly concerns: (path: string) => boolean;
  /** A forecast with its accepted findings marked; what does not hold is said. */
  readonly apply: (path: string, file: ForecastedFile) => ToldFile;
}

/** @throws UsageError where such a file is wrong */
export async function houseAcceptances(
  files: readonly string[],
  cwd: string,
  errors: StandardError,
): Promise<HouseAcceptances> {
  const folders = new Map<string, AcceptedFile | null>();
  for (const folder of new Set(files.map((file) => dirname(file)))) {
    folders.set(folder, await readAccepted(resolve(cwd, folder), folder));
  }
  const listOf = (path: string) => folders.get(dirname(path)) ?? null;
  const entriesOf = (path: string): AcceptedEntry[] => entriesFor(listOf(path), basename(path));
  /** What was accepted of the sound is known by the name it had, else by its hash. */
  const ofMotion = (path: string, { name, audioSha256 }: ForecastedFile): AcceptedEntry[] => {
    const names = new Set([basename(path), basename(name)]);
    const named = [...names].flatMap((each) => entriesFor(listOf(path), each));
    return named.length > 0 ? named : entriesOfSound(listOf(path), audioSha256);
  };
  return {
    concerns: (path) => entriesOf(path).length > 0,
    apply: (path, file) => {
      const entries = file.readFrom === 'motion' ? ofMotion(path, file) : entriesOf(path);
      if (entries.length === 0) return file;
      const applied = applyAccepted(file, entries);
      for (const note of acceptanceNotes(applied)) errors.notice(note);
      return { ...applied.file, voidAcceptances: applied.voided };
    },
  };
}
