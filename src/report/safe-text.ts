/** Control characters, what turns the reading direction, line separators, halves of a surrogate. */
const UNSAFE = /[\p{Cc}\p{Bidi_Control}\p{Cs}\u2028\u2029]/gu;

/**
 * Text from outside (a file name, a tag, a message that holds one) made fit for one line of a
 * terminal: every character that could move the cursor, change colours, begin a line or reverse the
 * reading direction is shown as \u{…}, and nothing is taken out: two names that differ look
 * different. Applied twice it gives the same.
 * Source: Unicode properties Cc (which holds ESC and the other controls of ECMA-48), Cs and
 * Bidi_Control.
 */
export function safeText(text: string): string {
  return text.replace(UNSAFE, escaped);
}

function escaped(character: string): string {
  return `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`;
}
