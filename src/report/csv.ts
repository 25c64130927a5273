import { safeText } from './safe-text.js';

export type Cell = string | number | boolean | null;

/** What stands in each column of a row, under the column's name. */
export type Columns<Row> = Readonly<Record<string, (row: Row) => Cell>>;

/**
 * In front of a CSV that may hold letters beyond ASCII: without it a spreadsheet takes UTF-8 for
 * the local 8-bit code. Scripts read such a file as `utf-8-sig`; one that is ASCII needs none.
 */
export const BYTE_ORDER_MARK = '\uFEFF';

/** Begins a formula in some spreadsheet, the wide forms in East Asian ones. */
const FORMULA = /^([\s"'`]*)(?=[=+\-@＝＋－＠])/u;
/** Where commas are decimal points a spreadsheet splits at semicolons, whatever the quotes. */
const FORMULA_BEHIND_SEMICOLON = /;([\s"'`]*)(?=[=+\-@＝＋－＠])/gu;
const NEEDS_QUOTES = /[",;]|^\s|\s$/;

/**
 * A table as CSV: a line of names, then a line a row, each ended by CR LF. null and what is not
 * finite are empty cells; numbers have a point. A text cannot act on who opens it: control
 * characters are shown, and what would be a formula has an apostrophe in front.
 * Source: RFC 4180; formulas: common practice, no published source.
 */
export function csvText<Row>(columns: Columns<Row>, rows: Iterable<Row>): string {
  const values = Object.values(columns);
  const lines = [lineOf(Object.keys(columns))];
  for (const row of rows) lines.push(lineOf(values.map((value) => value(row))));
  return lines.join('');
}

function lineOf(cells: readonly Cell[]): string {
  return `${cells.map(cellText).join(',')}\r\n`;
}

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  if (typeof cell === 'boolean') return String(cell);
  const text = guarded(safeText(cell));
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A tab or a line break that would begin a formula is a `\u{…}` by now. */
function guarded(text: string): string {
  return text.replace(FORMULA, "'$1").replace(FORMULA_BEHIND_SEMICOLON, ";'$1");
}
