import { widthOf } from './folder-clusters.js';
import type { FolderColumn } from './folder-columns.js';
import type { FolderRow } from './folder-row.js';

/** Where the columns of a table stand. */
export interface FolderLayout {
  readonly columns: readonly FolderColumn[];
  readonly widths: readonly number[];
  /** Columns of the names, and of the blanks between two columns. */
  readonly nameWidth: number;
  readonly gap: number;
}

/** Before each name: `> ` or blanks. */
export const MARK_WIDTH = 2;
/** Over the names. */
const NAME_HEAD = 'side';
/** Less would not tell names apart. */
const NARROWEST_NAME = 10;

/**
 * Columns as wide as what is in them, names in what is left of `room`. Columns stand two blanks
 * apart where all names then fit whole, else one.
 */
export function folderLayout(
  columns: readonly FolderColumn[],
  rows: readonly FolderRow[],
  longestName: number,
  room: number,
): FolderLayout {
  const widths = columns.map(({ head, cell, isPair }) =>
    rows.reduce(
      (widest, row) => Math.max(widest, cell(row).length),
      Math.max(...head.slice(isPair === true ? 1 : 0).map((word) => word.length)),
    ),
  );
  const sum = widths.reduce((total, width) => total + width, MARK_WIDTH);
  const left = (gap: number) => room - sum - gap * columns.length;
  const gap = left(2) >= longestName ? 2 : 1;
  const ofNames = Math.min(longestName, Math.max(NARROWEST_NAME, left(gap)));
  const nameWidth = Math.max(NAME_HEAD.length, ofNames);
  return { columns, widths, nameWidth, gap };
}

/** The lines over the table; what is for two columns ends with the second. */
export function headLines({ columns, widths, nameWidth, gap }: FolderLayout): string[] {
  return [0, 1, 2].map((line) => {
    let text = line === 1 ? `  ${NAME_HEAD}` : '';
    let end = MARK_WIDTH + nameWidth;
    for (const [column, { head, align }] of columns.entries()) {
      const word = head[line] ?? '';
      const width = widths[column] ?? 0;
      end += gap + width;
      if (word.trim() !== '') {
        text =
          align === 'right'
            ? `${text.padEnd(end - word.length)}${word}`
            : `${text.padEnd(end - width)}${word}`;
      }
    }
    return text.trimEnd();
  });
}

/** A cell at its place, by the columns it takes on a terminal. */
export function padded(text: string, width: number, align: 'left' | 'right'): string {
  const blanks = ' '.repeat(Math.max(0, width - widthOf(text)));
  return align === 'right' ? `${blanks}${text}` : `${text}${blanks}`;
}
