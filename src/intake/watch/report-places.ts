import { createHash } from 'node:crypto';
import { keyOf, safeName } from '../../report/output-names.js';

export const REPORT_EXTENSION = '.furrow.json';
/** Digits of a hash that keep apart what would have one name. */
const HASH_DIGITS = 12;

/** Who has which place in the folder of reports. */
export interface ReportPlaces {
  /**
   * Where the report of a file goes, in the folder of reports: folders as they are where the file
   * lies, and its whole name, so that `a.wav` and `a.flac` differ. Names that not every system takes
   * are cleaned, and end in a hash of what they were. The place is the file's from then on.
   * @param path of the file in its folder, with /
   */
  readonly claim: (path: string) => string;
  /** Gives a place to the file whose report is there already. */
  readonly grant: (place: string, path: string) => void;
}

/** No two files have one place, also where a file system sees no case. */
export function reportPlaces(): ReportPlaces {
  const owners = new Map<string, string>();
  return {
    claim: (path) => {
      for (let attempt = 0; ; attempt++) {
        const place = placeOf(path, attempt);
        const owner = owners.get(keyOf(place));
        if (owner !== undefined && owner !== path) continue;
        owners.set(keyOf(place), path);
        return place;
      }
    },
    grant: (place, path) => owners.set(keyOf(place), path),
  };
}

/** Whether a file's report is written there, if need be because another has its first place. */
export function isPlaceOf(place: string, path: string): boolean {
  return place === placeOf(path, 0) || place === placeOf(path, 1);
}

function placeOf(path: string, attempt: number): string {
  const parts = path.split('/');
  const name = parts.pop() ?? '';
  const folders = parts.map((part) => cleaned(part, part));
  const own = attempt === 0 ? cleaned(name, name) : hashed(name, `${path}\0${attempt}`);
  return [...folders, `${own}${REPORT_EXTENSION}`].join('/');
}

function cleaned(name: string, whole: string): string {
  // A folder of a report's name would stand in the way of the report.
  const isClean = safeName(name) === name && !keyOf(name).endsWith(REPORT_EXTENSION);
  return isClean ? name : hashed(name, whole);
}

function hashed(name: string, whole: string): string {
  const digits = createHash('sha256').update(whole).digest('hex').slice(0, HASH_DIGITS);
  return `${safeName(name)}-${digits}`;
}
