import type { Look } from './look.js';
import { reportPlaces } from './report-places.js';

/** A file that has a report. */
export interface KnownFile {
  /** In the folder that is watched. */
  readonly path: string;
  /** Of its report, in the folder of reports. */
  readonly place: string;
  readonly look: Look;
  readonly sha256: string | null;
  /** A result, what will fail again as long as the file stays as it is, or what may not. */
  readonly outcome: 'result' | 'failure' | 'passing-failure';
  /** Whether the report was made with what is in force now. */
  readonly isCurrent: boolean;
  /** Whether its report was written since the watch began. */
  readonly isOfThisRun: boolean;
  /** Whether the file was there when it was last looked for; null before that. */
  readonly isThere: boolean | null;
}

/** The files that have a report, by their paths and by what is in them. */
export interface KnownFiles {
  readonly size: number;
  readonly get: (path: string) => KnownFile | undefined;
  readonly all: () => Iterable<KnownFile>;
  /** One that has a result in force of the same bytes. */
  readonly withContent: (sha256: string) => KnownFile | undefined;
  readonly set: (file: KnownFile) => void;
  /** Where the report of a file goes. */
  readonly placeOf: (path: string) => string;
}

/** @param isReusable whether a name leaves what is said of its bytes to be said of others */
export function knownFiles(isReusable: (path: string) => boolean): KnownFiles {
  const byPath = new Map<string, KnownFile>();
  const byContent = new Map<string, string>();
  const places = reportPlaces();
  const get = (path: string) => byPath.get(path);
  return {
    get size() {
      return byPath.size;
    },
    get,
    all: () => byPath.values(),
    withContent: (sha256) => {
      const path = byContent.get(sha256);
      const file = path === undefined ? undefined : get(path);
      const holds = file?.sha256 === sha256 && file.outcome === 'result' && file.isCurrent;
      return holds ? file : undefined;
    },
    set: (file) => {
      byPath.set(file.path, file);
      places.grant(file.place, file.path);
      if (file.sha256 !== null && file.outcome === 'result' && isReusable(file.path)) {
        byContent.set(file.sha256, file.path);
      }
    },
    placeOf: (path) => get(path)?.place ?? places.claim(path),
  };
}
