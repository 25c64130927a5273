import type { ChalkInstance } from 'chalk';
import { asciiText } from './ascii-text.js';
import { widthOf } from './folder-clusters.js';
import { folderColumns } from './folder-columns.js';
import { folderLabels } from './folder-labels.js';
import { type FolderLayout, folderLayout, headLines, MARK_WIDTH, padded } from './folder-layout.js';
import { type FolderFailure, type FolderLine, folderLines } from './folder-lines.js';
import { paintVerdict } from './folder-paint.js';
import { folderRank } from './folder-rank.js';
import type { FolderRow } from './folder-row.js';
import { folderSummary, SUMMARY_WIDTH } from './folder-summary.js';
import type { Units } from './length-text.js';

export interface FolderTableOptions {
  readonly units: Units;
  readonly paint: ChalkInstance;
  /** Of the terminal; 80 where there is none. Less than 80 is not used, nor more than 100. */
  readonly columns?: number;
  /** Nothing beyond ASCII, but for names. */
  readonly ascii?: boolean;
}

const NARROWEST = 80;
const WIDEST = 100;
/** From this on there is room to say where the worst finding is. */
const WIDE = 96;

/** Many sides as one table, a line a side in input order, and what stands out among them. */
export function folderTable(
  rows: readonly FolderRow[],
  failures: readonly FolderFailure[],
  { units, paint, columns = NARROWEST, ascii = false }: FolderTableOptions,
): string {
  const room = Math.min(WIDEST, Math.max(NARROWEST, columns));
  const lines = folderLines(rows, failures);
  const rank = folderRank(rows);
  const executes = commonOf(rows.map((row) => row.executes));
  const facts = { units, executes, tightest: rank.tightest, withPlace: room >= WIDE };
  const labelsIn = (width: number) => folderLabels(lines, width, ascii ? '~' : '…');
  const longest = Math.max(0, ...labelsIn(Number.POSITIVE_INFINITY).map((name) => widthOf(name)));
  const layout = folderLayout(folderColumns(facts), rows, longest, room);
  const labels = labelsIn(layout.nameWidth);
  const names = rowNames(lines, labelsIn(room - SUMMARY_WIDTH));
  const text = [
    ...(rows.length === 0 ? [] : headLines(layout)),
    ...lines.map((line, index) =>
      lineText(line, labels[index] ?? '', rank.worst, layout, paint).trimEnd(),
    ),
    '',
    ...folderSummary({ rows, failures: failures.length, rank, units, names }),
    '',
  ].join('\n');
  return ascii ? asciiText(text) : text;
}

function rowNames(lines: readonly FolderLine[], names: readonly string[]): Map<FolderRow, string> {
  const ofRow = new Map<FolderRow, string>();
  for (const [index, line] of lines.entries()) {
    if (line.kind === 'side') ofRow.set(line.row, names[index] ?? '');
  }
  return ofRow;
}

function lineText(
  line: FolderLine,
  label: string,
  worst: FolderRow | null,
  { columns, widths, nameWidth, gap }: FolderLayout,
  paint: ChalkInstance,
): string {
  const name = padded(label, nameWidth, 'left');
  const between = ' '.repeat(gap);
  if (line.kind === 'failure') {
    const reason = paint.bold.red(`could not be read: ${line.failure.code}`);
    return `${' '.repeat(MARK_WIDTH)}${name}${between}${reason}`;
  }
  const { row } = line;
  const cells = columns.map(({ head, align, cell }, column) => {
    const text = padded(cell(row), widths[column] ?? 0, align);
    return head[1] === 'verdict' ? paintVerdict(row.verdict, paint)(text) : text;
  });
  const start = row === worst ? `> ${paint.bold(name)}` : `${' '.repeat(MARK_WIDTH)}${name}`;
  return [start, ...cells].join(between);
}

/** What all have in common; null where they differ or there are none. */
function commonOf<Value>(values: readonly Value[]): Value | null {
  const [first = null] = values;
  return values.every((value) => value === first) ? first : null;
}
