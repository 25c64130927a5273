import { CLASSES } from './counts';

/** Biased exponent of an f32 fourth power in the lowest class. */
const LOWEST_EXPONENT: i32 = 127 - 64;
/** Classes by which accelerations lie above velocities; see histogram.ts of the analysis. */
const ACCELERATION_CLASSES: i32 = 40;

/**
 * Per byte, velocities first: the lowest exponent, the highest class, and a mask of left. Loops load
 * them once; a constant in a loop would be made anew in each round.
 */
const byteLimits: usize = memory.data(3 * 16, 16);

/** Writes what the loops load. */
export function writeByteLimits(): void {
  const velocities = i8x16.splat(<i8>LOWEST_EXPONENT);
  const accelerations = i8x16.splat(<i8>(LOWEST_EXPONENT + ACCELERATION_CLASSES));
  v128.store(byteLimits, v128.shuffle<i64>(velocities, accelerations, 0, 2));
  v128.store(byteLimits, i8x16.splat(<i8>(CLASSES - 1)), 16);
  v128.store(byteLimits, i16x8.splat(0xff), 32);
}

// @ts-ignore: decorator
@inline
export function lowestExponents(): v128 {
  return v128.load(byteLimits);
}

// @ts-ignore: decorator
@inline
export function highestClasses(): v128 {
  return v128.load(byteLimits, 16);
}

// @ts-ignore: decorator
@inline
export function leftBytes(): v128 {
  return v128.load(byteLimits, 32);
}

/**
 * Bytes to the counts of four frames by the squares of their velocities, then of their accelerations,
 * from the start of a table.
 * @param lowest of `lowestExponents()`, which the caller keeps, and so on
 */
// @ts-ignore: decorator
@inline
export function placesOf(
  v: v128, nextV: v128, a: v128, nextA: v128, lowest: v128, highest: v128, lefts: v128,
): v128 {
  const exponents = i8x16.narrow_i16x8_u(
    i16x8.narrow_i32x4_s(exponentsOf(v), exponentsOf(nextV)),
    i16x8.narrow_i32x4_s(exponentsOf(a), exponentsOf(nextA)));
  const classes = i8x16.min_u(i8x16.sub_sat_u(exponents, lowest), highest);
  // Right is the upper byte already, a row; left is to be doubled.
  return i8x16.add(classes, v128.and(classes, lefts));
}

/** Biased exponents of the fourth powers. */
// @ts-ignore: decorator
@inline
function exponentsOf(squares: v128): v128 {
  return i32x4.shr_u(f32x4.mul(squares, squares), 23);
}
