import type { IntakeResult } from '../intake/intake-result.js';
import type { MixedFolder } from '../intake/mixed-folders.js';
import type { Severity } from '../model/forecast-types.js';
import type { Failure } from './failure.js';
import { failureCells, fileCells, folderCells } from './intake-columns.js';
import { folderToJson, type IntakeCounts, intakeDocument, intakeLine } from './intake-document.js';
import { intakeFindingText } from './intake-finding-text.js';
import { intakeToJson } from './intake-json.js';
import type { IntakeLayout } from './intake-layout.js';
import type { IntakeFileJson } from './intake-schema.js';
import type { Units } from './length-text.js';
import { folderFormatsText } from './mixed-formats-text.js';
import { safeText } from './safe-text.js';
import { wrapText } from './wrap-text.js';

/** Turns judgements, in the order they are told, into text. */
export interface IntakeReporter {
  /** What comes before the first. */
  start(): string;
  file(result: IntakeResult): string;
  failure(failure: Failure): string;
  /** After the last file: a folder whose files differ in format. */
  folder(folder: MixedFolder): string;
  /** What comes after the last. */
  end(counts: IntakeCounts): string;
}

export interface IntakeTextOptions {
  readonly layout: IntakeLayout;
  readonly units: Units;
  readonly details: boolean;
  /** Of the terminal; left out where there is none. */
  readonly columns?: number;
}

const LONGEST_SEVERITY = 'caution'.length;

/**
 * A line a file; with details its findings under it, in words. What would mend one is said once an id
 * and file.
 */
export function intakeTextReporter(options: IntakeTextOptions): IntakeReporter {
  const { layout, units, details, columns } = options;
  let at = 0;
  return {
    start: () => layout.head,
    file: (result) => {
      const line = layout.line(at++, fileCells(result, units));
      return details ? `${line}${detailText(result, options)}` : line;
    },
    failure: (failure) => layout.line(at++, failureCells(failure)),
    folder: ({ folder, severity, mixed }) => {
      const line = layout.line(at, folderCells({ severity }), folder);
      if (!details) return line;
      return `${line}${detailLine(severity, folderFormatsText(folder, mixed), columns)}`;
    },
    end: () => '',
  };
}

function detailText(
  { findings, settings }: IntakeResult,
  { units, columns }: IntakeTextOptions,
): string {
  return findings
    .map((finding, at) => {
      const { message, remedy } = intakeFindingText(finding, { settings, units });
      const isFirst = findings.findIndex(({ id }) => id === finding.id) === at;
      return detailLine(finding.severity, isFirst ? `${message} ${remedy}` : message, columns);
    })
    .join('');
}

/** On one line where a program reads, else in lines of the terminal. */
function detailLine(severity: Severity, text: string, columns = Number.POSITIVE_INFINITY): string {
  const first = `  ${severity.padEnd(LONGEST_SEVERITY)}  `;
  return `${wrapText(safeText(text), first, ' '.repeat(first.length), columns)}\n`;
}

/** One document, written when all is known. */
export function intakeJsonReporter(version: string): IntakeReporter {
  const files: IntakeFileJson[] = [];
  const failures: Failure[] = [];
  const folders: MixedFolder[] = [];
  return {
    start: () => '',
    file: (result) => {
      files.push(intakeToJson(result));
      return '';
    },
    failure: (failure) => {
      failures.push(failure);
      return '';
    },
    folder: (folder) => {
      folders.push(folder);
      return '';
    },
    end: () => intakeDocument({ files, failures, folders }, version),
  };
}

/** A line a file, as soon as its turn has come; then a summary. */
export function intakeNdjsonReporter(version: string): IntakeReporter {
  return {
    start: () => '',
    file: (result) => intakeLine({ type: 'file', ...intakeToJson(result) }),
    failure: ({ path, code, message }) => intakeLine({ type: 'failure', path, code, message }),
    folder: (folder) => intakeLine({ type: 'folder', ...folderToJson(folder) }),
    end: (counts) => intakeLine({ type: 'summary', furrow: version, ...counts }),
  };
}
