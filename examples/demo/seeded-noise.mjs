// @ts-check
/**
 * Even noise in −1 … 1 by a 32-bit xorshift: the demo's sides are the same on every machine.
 * @param {number} seed not 0
 * Source: G. Marsaglia, Xorshift RNGs, 2003.
 */
export function seededNoise(seed) {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state / 2 ** 31;
  };
}
