import { type Markup, markup, type Piece } from '../markup.js';
import { scroller } from './scroller.js';

/**
 * A table of cells, the first row its heads and the first column what each row is about.
 * @param left how many columns are texts; the others are figures
 */
export function cellTable(
  name: string,
  caption: string,
  [heads = [], ...rows]: readonly (readonly Piece[])[],
  left = 1,
): Markup {
  const side = (column: number) => (column > 0 && column < left ? 'left' : 'cell');
  const head = heads.map((cell, at) => markup`<th scope="col" class="${side(at)}">${cell}</th>`);
  const body = rows.map(([first = null, ...cells]) => {
    const others = cells.map((cell, at) => markup`<td class="${side(at + 1)}">${cell}</td>`);
    return markup`<tr><th scope="row">${first}</th>${others}</tr>`;
  });
  const table = markup`<table class="figures"><caption>${caption}</caption>
<thead><tr>${head}</tr></thead><tbody>${body}</tbody></table>`;
  return scroller(name, table);
}
