/** Signs of our texts that ASCII has no letter for. */
const SPELLED: ReadonlyMap<string, string> = new Map([
  ['µ', 'u'],
  ['μ', 'u'],
  ['−', '-'],
  ['–', '-'],
  ['—', '-'],
  ['²', '2'],
  ['×', 'x'],
  ['±', '+-'],
]);

/**
 * A text in printable ASCII, on one line. The texts in a WAV file say nowhere how they are coded:
 * by the specification Latin-1 unless a chunk says otherwise, by today's programs mostly UTF-8, and
 * this is what both read alike. Accents are taken off, controls become spaces, what then is no
 * ASCII becomes a question mark.
 */
export function asciiText(text: string): string {
  const spelled = text.replace(/./gsu, (letter) => SPELLED.get(letter) ?? letter);
  const plain = spelled.normalize('NFKD').replace(/\p{M}/gu, '');
  return plain
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]+/gu, ' ')
    .replace(/[^\x20-\x7e]/gu, '?');
}
