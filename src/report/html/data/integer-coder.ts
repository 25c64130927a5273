import { type BitCoder, type Chances, chances } from './range-coder.js';

/** Bits that tell how many bits a magnitude has, 0 to 31. */
const LENGTH_BITS = 5;
const LENGTHS = 2 ** LENGTH_BITS;
/** Bits behind the leading one whose chances are learned; the rest of them are noise. */
const LEARNED_BITS = 3;

/** The most that a coder takes at once. */
const EVEN_BITS = 16;

/** Codes an integer of less than 31 bits, where something of its kind, `context`, is known. */
export type CodeInteger = (context: number, value: number) => number;

/** Codes integers by their length, sign and bits, learned for each of `contexts` by itself. */
export function integerCoder(coder: BitCoder, contexts: number): CodeInteger {
  const lengths = chances(contexts * LENGTHS);
  const signs = chances(contexts);
  const bits = chances(contexts * LENGTHS * 2 ** LEARNED_BITS);
  return (context, value) => {
    const magnitude = Math.abs(value);
    const length = codeTree(coder, lengths, context * LENGTHS, lengthOf(magnitude));
    if (length === 0) return 0;
    const sign = coder.learned(signs, context, value < 0 ? 1 : 0);
    const from = (context * LENGTHS + length) * 2 ** LEARNED_BITS;
    let known = 1;
    let left = length - 1;
    for (; left > 0 && known < 2 ** LEARNED_BITS; left--) {
      known = 2 * known + coder.learned(bits, from + known, (magnitude >> (left - 1)) & 1);
    }
    while (left > 0) {
      const next = Math.min(left, EVEN_BITS);
      left -= next;
      known = known * 2 ** next + coder.even(next, (magnitude >> left) & (2 ** next - 1));
    }
    return sign === 1 ? -known : known;
  };
}

function codeTree(coder: BitCoder, learning: Chances, from: number, value: number): number {
  let known = 1;
  for (let bit = LENGTH_BITS - 1; bit >= 0; bit--) {
    known = 2 * known + coder.learned(learning, from + known, (value >> bit) & 1);
  }
  return known - LENGTHS;
}

/** Bits of a magnitude, none of 0. */
export function lengthOf(magnitude: number): number {
  return 32 - Math.clz32(magnitude);
}

/** How large a magnitude is, in half octaves: 0, 1, then two for each length. */
export function halfOctaves(magnitude: number): number {
  const length = lengthOf(magnitude);
  return length < 2 ? length : 2 * length - 2 + ((magnitude >> (length - 2)) & 1);
}
