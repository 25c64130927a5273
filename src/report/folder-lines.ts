import type { Failure } from './failure.js';
import type { FolderRow } from './folder-row.js';

/** An input that gave no forecast, and how many sides came before it. */
export interface FolderFailure extends Failure {
  readonly sidesBefore: number;
}

/** A line of the table. */
export type FolderLine =
  | { readonly kind: 'side'; readonly name: string; readonly path: string; readonly row: FolderRow }
  | {
      readonly kind: 'failure';
      readonly name: string;
      readonly path: string;
      readonly failure: FolderFailure;
    };

/** Sides and failures in input order. */
export function folderLines(
  rows: readonly FolderRow[],
  failures: readonly FolderFailure[],
): FolderLine[] {
  const lines: FolderLine[] = [];
  let told = 0;
  for (const failure of failures) {
    lines.push(...rows.slice(told, failure.sidesBefore).map(sideLine));
    told = Math.max(told, failure.sidesBefore);
    lines.push(failureLine(failure));
  }
  return [...lines, ...rows.slice(told).map(sideLine)];
}

function sideLine(row: FolderRow): FolderLine {
  return { kind: 'side', name: row.name, path: row.path, row };
}

function failureLine(failure: FolderFailure): FolderLine {
  const name = failure.path.split('/').at(-1) ?? '';
  return { kind: 'failure', name: name === '' ? failure.path : name, path: failure.path, failure };
}
