import { type Markup, markup } from '../markup.js';

/** A table that scrolls by itself where it is wider or higher than its place; keys can do it too. */
export function scroller(name: string, table: Markup, kind = ''): Markup {
  return markup`<div class="scroller ${kind}" role="region" tabindex="0" aria-label="${name}, table">${table}</div>`;
}
