import { basename, resolve } from 'node:path';
import { type AcceptedPlace, acceptedPlace } from '../accepted/accepted-place.js';
import type { AcceptedEntry } from '../accepted/accepted-schema.js';
import { applyAccepted } from '../accepted/apply-accepted.js';
import {
  type AcceptedFile,
  entriesFor,
  entriesOfSound,
  readAccepted,
} from '../accepted/read-accepted.js';
import type { ForecastedFile } from '../forecast-result.js';
import type { SideInput } from '../open-side.js';
import { acceptanceNotes } from '../report/acceptance-text.js';
import type { ToldFile } from '../report/told-file.js';
import type { StandardError } from './standard-error.js';

/** What the house has accepted of sides, from the `furrow.accepted.json` beside each file or sheet. */
export interface HouseAcceptances {
  /** Whether anything is said of a side, so that its hash is needed. */
  readonly concerns: (input: SideInput) => boolean;
  /** A forecast with its accepted findings marked; what does not hold is said. */
  readonly apply: (input: SideInput, file: ForecastedFile) => ToldFile;
}

/** @throws UsageError where such a file is wrong */
export async function houseAcceptances(
  inputs: readonly SideInput[],
  cwd: string,
  errors: StandardError,
): Promise<HouseAcceptances> {
  const folders = new Map<string, AcceptedFile | null>();
  for (const folder of new Set(inputs.map((input) => acceptedPlace(input).folder))) {
    folders.set(folder, await readAccepted(resolve(cwd, folder), folder));
  }
  const listOf = ({ folder }: AcceptedPlace) => folders.get(folder) ?? null;
  const entriesOf = (place: AcceptedPlace): AcceptedEntry[] =>
    entriesFor(listOf(place), place.side);
  /** What was accepted of the sound is known by the name it had, else by its hash. */
  const ofMotion = (
    place: AcceptedPlace,
    { name, audioSha256 }: ForecastedFile,
  ): AcceptedEntry[] => {
    const names = new Set([place.side, basename(name)]);
    const named = [...names].flatMap((each) => entriesFor(listOf(place), each));
    return named.length > 0 ? named : entriesOfSound(listOf(place), audioSha256);
  };
  return {
    concerns: (input) => entriesOf(acceptedPlace(input)).length > 0,
    apply: (input, file) => {
      const place = acceptedPlace(input);
      const entries = file.readFrom === 'motion' ? ofMotion(place, file) : entriesOf(place);
      if (entries.length === 0) return file;
      const applied = applyAccepted(file, entries);
      for (const note of acceptanceNotes(applied)) errors.notice(note);
      return { ...applied.file, voidAcceptances: applied.voided };
    },
  };
}
