/** What JSON.stringify leaves as it is and a terminal, an editor or a reader of lines may act on. */
const UNSAFE = /[\u007f-\u009f\p{Bidi_Control}\u2028\u2029]/gu;

/**
 * A value as JSON in which nothing can act on a terminal, turn the reading direction or look like
 * the end of a line; whoever parses it gets the same value.
 * @param indent blanks a level; none: one line
 * Source: RFC 8259, 7: any character may be escaped, controls below U+0020 must be; all of these
 * are in the Basic Multilingual Plane.
 */
export function jsonText(value: unknown, indent?: number): string {
  return JSON.stringify(value, null, indent).replace(UNSAFE, escaped);
}

function escaped(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}
