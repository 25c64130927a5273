import type { FolderRow } from './folder-row.js';

/** The rows that stand out; null where there is nothing to compare or nothing wrong. */
export interface FolderRank {
  readonly worst: FolderRow | null;
  readonly tightest: FolderRow | null;
  readonly longest: FolderRow | null;
}

const WORST_FIRST = ['fault', 'caution', 'clear'] as const;

/**
 * Worst: by verdict, then by how far the level that holds is under the planned one, then by land;
 * none if all are clear. Tightest: the least spare radius of what the lathe executes. Of equals the
 * first.
 */
export function folderRank(rows: readonly FolderRow[]): FolderRank {
  if (rows.length < 2) return { worst: null, tightest: null, longest: null };
  const first = (order: (one: FolderRow, other: FolderRow) => number) =>
    rows.reduce((best, row) => (order(row, best) < 0 ? row : best));
  const worst = first(
    (one, other) =>
      WORST_FIRST.indexOf(one.verdict) - WORST_FIRST.indexOf(other.verdict) ||
      compared(levelLeft(one), levelLeft(other)) ||
      one.landMin - other.landMin,
  );
  return {
    worst: worst.verdict === 'clear' ? null : worst,
    tightest: first((one, other) => one.executed.spare - other.executed.spare),
    longest: first((one, other) => other.durationSeconds - one.durationSeconds),
  };
}

function levelLeft({ headroom, levelDb }: FolderRow): number {
  return (headroom.recommendedDb ?? Number.NEGATIVE_INFINITY) - levelDb;
}

/** Order of two numbers that may both be −∞. */
function compared(one: number, other: number): number {
  return one === other ? 0 : one - other;
}
