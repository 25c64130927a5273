/**
 * A number of 80 bits: sign and exponent in 16, biased by 16383, then 64 bits of mantissa with its
 * leading 1 written out: (−1)^s · m/2^63 · 2^(e − 16383).
 * @param at byte of its first, big endian
 * @returns exact where a double can be; infinite or NaN as it stands
 * Source: IEEE 754 double extended as in AIFF 1.3 (from memory).
 */
export function readExtended(view: DataView, at: number): number {
  const head = view.getUint16(at);
  const mantissa = view.getBigUint64(at + 2);
  const sign = head >= 0x8000 ? -1 : 1;
  const exponent = head % 0x8000;
  if (exponent === 0x7fff) {
    return BigInt.asUintN(63, mantissa) === 0n ? sign * Number.POSITIVE_INFINITY : Number.NaN;
  }
  return sign * Number(mantissa) * 2 ** (exponent - 16_383 - 63);
}
