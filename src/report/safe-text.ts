import { stripVTControlCharacters } from 'node:util';

/** Control characters, what turns the reading direction, line separators, halves of a surrogate. */
const UNSAFE = /[\p{Cc}\p{Bidi_Control}\p{Cs}\u2028\u2029]/gu;

/**
 * Text from outside (a file name, a tag, a message that holds one) made fit for one line of a
 * terminal: escape sequences are taken out, and every character that could move the cursor, change
 * colours, begin a line or reverse the reading direction is shown as \u{…}. Applied twice it gives
 * the same.
 * Source: Unicode properties Cc, Cs and Bidi_Control; ECMA-48 sequences as Node strips them.
 */
export function safeText(text: string): string {
  return stripVTControlCharacters(text).replace(UNSAFE, escaped);
}

function escaped(character: string): string {
  return `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`;
}
