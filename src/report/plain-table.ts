import Table from 'cli-table3';

export interface Column {
  readonly align: 'left' | 'right';
  /** Blanks before it. */
  readonly gap: number;
}

/** Rows of cells set in columns by blanks alone, without what would trail; one line a row. */
export function plainTable(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
): string[] {
  const gaps = columns.map(({ gap }) => ' '.repeat(gap));
  const table = new Table({
    chars: NO_LINES,
    colAligns: columns.map(({ align }) => align),
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0 },
  });
  const widths = columns.map((_, at) => Math.max(...rows.map((row) => (row[at] ?? '').length)));
  const isUsed = widths.map((width) => width > 0);
  for (const row of rows) {
    table.push(row.map((cell, at) => (isUsed[at] === true ? `${gaps[at] ?? ''}${cell}` : '')));
  }
  return table
    .toString()
    .split('\n')
    .map((line) => line.trimEnd());
}

const NO_LINES = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
  middle: '',
};
