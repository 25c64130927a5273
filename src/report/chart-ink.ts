/** How dots are put on a terminal's cells. */
export interface Ink {
  /** Dots of a cell across and down. */
  readonly across: number;
  readonly down: number;
  /** The character with these dots, as bits: row by row from the top, left first; 0 is blank. */
  readonly glyph: (dots: number) => string;
  /** What the other pitch is drawn with, in cells the judged one leaves free. */
  readonly other: string;
  readonly fault: string;
}

/**
 * Braille patterns: two dots across, four down. A pattern is U+2800 plus a bit a dot.
 * Source: The Unicode Standard, Braille Patterns: dots 1, 2, 3, 7 down the left, 4, 5, 6, 8 down the
 * right, dot n being bit n − 1.
 */
const DOTS: Ink = {
  across: 2,
  down: 4,
  glyph: (dots) => {
    const bits = BRAILLE_BITS.reduce((sum, bit, at) => sum + (((dots >> at) & 1) << bit), 0);
    return bits === 0 ? ' ' : String.fromCodePoint(0x2800 + bits);
  },
  other: '·',
  fault: '×',
};

const BRAILLE_BITS = [0, 3, 1, 4, 2, 5, 6, 7];

/** A dot above another, with what every terminal has. */
const PLAIN: Ink = {
  across: 1,
  down: 2,
  glyph: (dots) => [' ', "'", '.', ':'][dots] ?? ' ',
  other: '~',
  fault: 'x',
};

export function inkOf(ascii: boolean): Ink {
  return ascii ? PLAIN : DOTS;
}
