import type { SourceFile } from '../forecast-result.js';
import type { IntakeResult } from '../intake/intake-result.js';
import { type MixedFolder, mixedFolders } from '../intake/mixed-folders.js';
import type { Rules } from '../intake/rules.js';
import type { Severity } from '../model/forecast-types.js';
import type { Failure } from '../report/failure.js';
import { counted, type IntakeCounts, NO_FILES } from '../report/intake-document.js';

/** What a run has found so far: little a file, whatever its findings are. */
export interface IntakeTally {
  readonly take: (result: IntakeResult | Failure) => void;
  /** After the last file: the folders whose files differ in format, which then count too. */
  readonly folders: () => readonly MixedFolder[];
  readonly counts: () => IntakeCounts;
  readonly failures: readonly Failure[];
  readonly severities: ReadonlySet<Severity>;
}

export function intakeTally(rules: Rules): IntakeTally {
  const severities = new Set<Severity>();
  const failures: Failure[] = [];
  const sources: SourceFile[] = [];
  let counts = NO_FILES;
  return {
    take: (result) => {
      counts = counted(counts, result);
      if ('code' in result) {
        failures.push(result);
        return;
      }
      if (result.source !== null) sources.push(result.source);
      for (const { severity } of result.findings) severities.add(severity);
    },
    folders: () => {
      const mixed = mixedFolders(sources, rules);
      for (const { severity } of mixed) severities.add(severity);
      return mixed;
    },
    counts: () => counts,
    failures,
    severities,
  };
}
