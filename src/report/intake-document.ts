import type { IntakeResult } from '../intake/intake-result.js';
import type { MixedFolder } from '../intake/mixed-folders.js';
import type { Failure } from './failure.js';
import {
  INTAKE_FORMAT,
  type IntakeFileJson,
  type IntakeFolderJson,
  type IntakeJson,
  type IntakeLine,
} from './intake-schema.js';
import { jsonText } from './json-text.js';
import { folderFormatsText } from './mixed-formats-text.js';

/** How many files a run had of what. */
export interface IntakeCounts {
  readonly files: number;
  readonly clear: number;
  readonly caution: number;
  readonly fault: number;
  readonly failures: number;
}

export const NO_FILES: IntakeCounts = { files: 0, clear: 0, caution: 0, fault: 0, failures: 0 };

/** The counts with one more; `files` are those that were judged. */
export function counted(counts: IntakeCounts, result: IntakeResult | Failure): IntakeCounts {
  if ('code' in result) return { ...counts, failures: counts.failures + 1 };
  const { verdict } = result;
  return { ...counts, files: counts.files + 1, [verdict]: counts[verdict] + 1 };
}

/** What a run told of. */
interface IntakeRecords {
  readonly files: readonly IntakeFileJson[];
  readonly failures: readonly Failure[];
  readonly folders: readonly MixedFolder[];
}

/** The document `furrow.intake/1`. */
export function intakeDocument(
  { files, failures, folders }: IntakeRecords,
  version: string,
): string {
  const document: IntakeJson = {
    format: INTAKE_FORMAT,
    furrow: version,
    files: [...files],
    failures: failures.map(({ path, code, message }) => ({ path, code, message })),
    folders: folders.map(folderToJson),
  };
  return `${jsonText(document, 2)}\n`;
}

/** A folder whose files differ in format, as the output writes it. */
export function folderToJson({ folder, severity, mixed }: MixedFolder): IntakeFolderJson {
  return {
    path: folder,
    id: 'mixed-formats',
    severity,
    message: folderFormatsText(folder, mixed),
    mixed: mixed.map(({ aspect, shares }) => ({
      aspect,
      shares: shares.map(({ value, paths }) => ({ value, paths: [...paths] })),
    })),
  };
}

/** One line of the run as objects. */
export function intakeLine(line: IntakeLine): string {
  return `${jsonText({ format: INTAKE_FORMAT, ...line })}\n`;
}
