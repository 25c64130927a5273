/** Classes that are kept apart, the lowest from 2^−16 of the unit on; see histogram.ts of the analysis. */
export const CLASSES: i32 = 128;
/** Biased exponent of an f32 fourth power in the lowest class. */
const LOWEST_EXPONENT: i32 = 127 - 64;
/** Classes by which accelerations lie above velocities; see histogram.ts of the analysis. */
const ACCELERATION_CLASSES: i32 = 40;

/**
 * Frames are counted by the classes of both walls at once, row right, column left: one count a
 * frame instead of two. Counts are of 16 bits, so that what a quarter touches stays in the nearest
 * cache. Every other frame goes to a second table: neighbours mostly fall into one class, and a
 * count that was just stored is slow to load again.
 */
const TABLE_BYTES: i32 = CLASSES * CLASSES * 2;
const ROW_BYTES: i32 = CLASSES * 2;
/** Most frames that a count holds. */
const MOST_COUNTED: i32 = 65535;

/** Tables of even and odd frames of velocity, then of acceleration. */
const tables: usize = memory.data(4 * TABLE_BYTES, 16);
/** The counts that were filed from them: left, right of velocity, left, right of acceleration. */
const filed: usize = memory.data(4 * CLASSES * 4, 16);
/** Where the frames in hand are counted. */
const places: usize = memory.data(16, 16);
let counted: i32 = 0;

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

/** Makes room for some frames more. */
export function reserveCounts(frames: i32): void {
  if (counted + frames > MOST_COUNTED) fileCounts();
  counted += frames;
}

/**
 * Counts four frames by the squares of their velocities and accelerations.
 * @param lowest of `lowestExponents()`, which the caller keeps, and so on
 */
// @ts-ignore: decorator
@inline
export function countFour(
  v: v128, nextV: v128, a: v128, nextA: v128, lowest: v128, highest: v128, lefts: v128,
): void {
  v128.store(places, countPlaces(v, nextV, a, nextA, lowest, highest, lefts));
  countAt(0, 0);
  countAt(2, TABLE_BYTES);
  countAt(4, 0);
  countAt(6, TABLE_BYTES);
  countAt(8, 2 * TABLE_BYTES);
  countAt(10, 3 * TABLE_BYTES);
  countAt(12, 2 * TABLE_BYTES);
  countAt(14, 3 * TABLE_BYTES);
}

/** Counts the first of some frames alone. */
export function countOne(v: v128, a: v128): void {
  const lowest = lowestExponents();
  v128.store(places, countPlaces(v, v, a, a, lowest, highestClasses(), leftBytes()));
  countAt(0, 0);
  countAt(8, 2 * TABLE_BYTES);
}

/** Bytes to the counts of four frames by velocity, then by acceleration, from the start of a table. */
// @ts-ignore: decorator
@inline
function countPlaces(
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

// @ts-ignore: decorator
@inline
function countAt(frame: usize, table: usize): void {
  const place = <usize>load<u16>(places + frame);
  const at = place + tables + table;
  store<u16>(at, load<u16>(at) + 1);
}

/** Hands out a quarter's counts, left and right of velocity and of acceleration, and begins anew. */
export function takeCounts(out: usize): void {
  fileCounts();
  memory.copy(out, filed, 4 * CLASSES * 4);
  memory.fill(filed, 0, 4 * CLASSES * 4);
}

/** Moves what the tables hold to each wall's own counts. */
function fileCounts(): void {
  fileTables(tables, filed);
  fileTables(tables + 2 * TABLE_BYTES, filed + 2 * CLASSES * 4);
  counted = 0;
}

function fileTables(tables: usize, filed: usize): void {
  for (let row = 0; row < CLASSES; row++) {
    const even = tables + <usize>(row * ROW_BYTES);
    let any = i16x8.splat(0);
    for (let at = even, end = even + ROW_BYTES; at < end; at += 16) {
      any = v128.or(any, v128.or(v128.load(at), v128.load(at, TABLE_BYTES)));
    }
    if (v128.any_true(any)) fileRow(filed, row, even);
  }
}

function fileRow(lefts: usize, row: i32, even: usize): void {
  const none = i32x4.splat(0);
  let total = none;
  for (let column = 0; column < CLASSES; column += 8) {
    const at = even + <usize>(column << 1);
    const evens = v128.load(at);
    const odds = v128.load(at, TABLE_BYTES);
    const low = i32x4.add(i32x4.extend_low_i16x8_u(evens), i32x4.extend_low_i16x8_u(odds));
    const high = i32x4.add(i32x4.extend_high_i16x8_u(evens), i32x4.extend_high_i16x8_u(odds));
    const left = lefts + <usize>(column << 2);
    v128.store(left, i32x4.add(v128.load(left), low));
    v128.store(left, i32x4.add(v128.load(left, 16), high), 16);
    total = i32x4.add(total, i32x4.add(low, high));
    v128.store(at, none);
    v128.store(at, none, TABLE_BYTES);
  }
  const pair = i32x4.add(total, v128.shuffle<i64>(total, total, 1, 0));
  const right = lefts + CLASSES * 4 + <usize>(row << 2);
  const counted = i32x4.extract_lane(pair, 0) + i32x4.extract_lane(pair, 1);
  store<i32>(right, load<i32>(right) + counted);
}
