/**
 * Printable ASCII but what HTML reads in its own way, & < and `: 91 characters, so that two of them
 * hold 13 bits and one holds 6. Base64 holds 12 in two, and a page is 8 % larger by it.
 */
const CHARACTERS = Array.from({ length: 94 }, (_, at) => String.fromCharCode(33 + at)).filter(
  (character) => !'&<`'.includes(character),
);
const BASE = CHARACTERS.length;
const PAIR_BITS = 13;
const LAST_BITS = 6;

/** Bytes as text; the bits of each follow those before, the lowest first. */
export function toPrintable(bytes: Uint8Array): string {
  let text = '';
  let bits = 0;
  let held = 0;
  const put = () => {
    const pair = bits & (2 ** PAIR_BITS - 1);
    text += `${CHARACTERS[pair % BASE] ?? ''}${CHARACTERS[Math.floor(pair / BASE)] ?? ''}`;
    bits >>>= PAIR_BITS;
    held -= PAIR_BITS;
  };
  for (const byte of bytes) {
    bits |= byte << held;
    held += 8;
    if (held >= PAIR_BITS) put();
  }
  if (held > LAST_BITS) put();
  // So few bits that a pair could be taken for a byte more.
  else if (held > 0) text += CHARACTERS[bits] ?? '';
  return text;
}

/** The bytes again. @throws RangeError for what `toPrintable` does not write */
export function fromPrintable(text: string): Uint8Array<ArrayBuffer> {
  const values = new Int8Array(128).fill(-1);
  for (const [at, character] of CHARACTERS.entries()) values[character.charCodeAt(0)] = at;
  const valueAt = (place: number) => {
    const value = values[text.charCodeAt(place)] ?? -1;
    if (value === -1) throw new RangeError('the data of the page are damaged');
    return value;
  };
  const pairs = text.length >> 1;
  const bytes = new Uint8Array((pairs * PAIR_BITS + (text.length % 2) * LAST_BITS) >> 3);
  let at = 0;
  let bits = 0;
  let held = 0;
  const take = (value: number, count: number) => {
    bits |= value << held;
    held += count;
    while (held >= 8 && at < bytes.length) {
      bytes[at++] = bits & 255;
      bits >>>= 8;
      held -= 8;
    }
  };
  for (let pair = 0; pair < pairs; pair++) {
    take(valueAt(2 * pair) + BASE * valueAt(2 * pair + 1), PAIR_BITS);
  }
  if (text.length % 2 === 1) take(valueAt(text.length - 1), LAST_BITS);
  return bytes;
}
