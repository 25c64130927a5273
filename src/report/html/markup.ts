import { safeText } from '../safe-text.js';

/** HTML that is safe to put into a page: made by `markup`, in which every other text is escaped. */
export class Markup {
  readonly #html: string;

  constructor(html: string) {
    this.#html = html;
  }

  get html(): string {
    return this.#html;
  }
}

/** What may stand in a template; null and false leave nothing. */
export type Piece = Markup | string | number | null | false | readonly Piece[];

/**
 * Template of HTML: what is put in is text and is escaped, unless it is markup itself. Values of
 * attributes stand in double quotes, in the template; nothing is put in anywhere else.
 */
export function markup(strings: TemplateStringsArray, ...pieces: readonly Piece[]): Markup {
  return new Markup(
    strings
      .map((text, at) => text + (at < pieces.length ? htmlOf(pieces[at] ?? null) : ''))
      .join(''),
  );
}

/**
 * Text as HTML, the same inside an element and inside quotes. What moves a terminal's cursor or
 * turns the reading direction is shown as such, see safeText.
 */
export function escaped(text: string): string {
  return safeText(text).replace(/[&<>"'`]/g, (character) => `&#${character.charCodeAt(0)};`);
}

function htmlOf(piece: Piece): string {
  if (piece === null || piece === false) return '';
  if (piece instanceof Markup) return piece.html;
  if (typeof piece === 'string' || typeof piece === 'number') return escaped(String(piece));
  return piece.map(htmlOf).join('');
}
