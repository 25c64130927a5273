import { type Markup, markup, type Piece } from '../markup.js';
import { scroller } from './scroller.js';

export interface CellTable {
  /** For who cannot see it. */
  readonly name: string;
  readonly caption: Piece;
  /** The first row its heads, the first column what each row is about. */
  readonly cells: readonly (readonly Piece[])[];
  /** How many columns are texts; the others are figures. */
  readonly left?: number;
  /** Whether a row, counted without the heads, is on paper too; all are by default. */
  readonly isPrinted?: (row: number) => boolean;
}

export function cellTable({
  name,
  caption,
  cells: [heads = [], ...rows],
  left = 1,
  isPrinted = () => true,
}: CellTable): Markup {
  const side = (column: number) => (column > 0 && column < left ? 'left' : 'cell');
  const head = heads.map((cell, at) => markup`<th scope="col" class="${side(at)}">${cell}</th>`);
  const body = rows.map(([first = null, ...cells], row) => {
    const others = cells.map((cell, at) => markup`<td class="${side(at + 1)}">${cell}</td>`);
    return markup`<tr${!isPrinted(row) && markup` class="screen-only"`}><th scope="row">${first}</th>${others}</tr>`;
  });
  const table = markup`<table class="figures"><caption>${caption}</caption>
<thead><tr>${head}</tr></thead><tbody>${body}</tbody></table>`;
  return scroller(name, table, 'tall');
}
