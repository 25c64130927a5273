import type { Severity } from '../model/forecast-types.js';
import { type FormatSource, type MixedFormat, mixedFormats } from '../report/mixed-formats.js';
import type { Rules } from './rules.js';

/** A folder whose files differ in rate, depth, channels or container. */
export interface MixedFolder {
  readonly folder: string;
  readonly severity: Severity;
  /** At least one. */
  readonly mixed: readonly MixedFormat[];
}

/** A delivery in several formats is unusual and often a mistake, but each file can be cut. */
const SEVERITY = 'note';

/**
 * The folders whose files differ in format, in the order they were given; none where the rules
 * ignore it.
 */
export function mixedFolders(
  sources: readonly FormatSource[],
  { severity: ruled }: Rules,
): MixedFolder[] {
  const severity = ruled['mixed-formats'] ?? SEVERITY;
  if (severity === 'ignore') return [];
  const all = mixedFormats(sources);
  const folders = [...new Set(all.map(({ folder }) => folder))];
  return folders.map((folder) => ({
    folder,
    severity,
    mixed: all.filter((one) => one.folder === folder),
  }));
}
