/** Classes that are kept apart, the lowest from 2^−16 of the unit on; see histogram.ts of the analysis. */
export const CLASSES: i32 = 128;
/** Biased exponent of an f32 fourth power in the lowest class. */
const LOWEST_EXPONENT: i32 = 127 - 64;
const HIGHEST_EXPONENT: i32 = LOWEST_EXPONENT + CLASSES - 1;
/** Square under which all is in the lowest class; its own square is no subnormal number. */
const LOWEST_SQUARE: f32 = 2.3283064365386963e-10;

/**
 * Frames are counted by the classes of both walls at once, row left, column right: one count a
 * frame instead of two. Counts are of 16 bits, so that what a quarter touches stays in the nearest
 * cache. Every other frame goes to a second table: neighbours mostly fall into one class, and a
 * count that was just stored is slow to load again.
 */
const TABLE_BYTES: i32 = CLASSES * CLASSES * 2;
/** Bytes from the count of a pair of exponents, one frame's or the other's, to that of the next. */
const ROW_BYTES: i32 = CLASSES * 2;
/** What the exponents of the first count add up to. */
const ORIGIN: i32 = LOWEST_EXPONENT * (ROW_BYTES + 2);
/** Most frames that a count holds. */
const MOST_COUNTED: i32 = 65535;

/** Tables of one quantity, and the counts that were filed from them: left, then right. */
@unmanaged
export class Classes {
  tables: usize;
  filed: usize;
  counted: i32;
}

export function newClasses(): Classes {
  const classes = changetype<Classes>(heap.alloc(16));
  classes.tables = heap.alloc(2 * TABLE_BYTES);
  classes.filed = heap.alloc(2 * CLASSES * 4);
  classes.counted = 0;
  memory.fill(classes.tables, 0, 2 * TABLE_BYTES);
  memory.fill(classes.filed, 0, 2 * CLASSES * 4);
  return classes;
}

/** Makes room for some frames more. */
export function reserveCounts(classes: Classes, frames: i32): void {
  if (classes.counted + frames > MOST_COUNTED) fileCounts(classes);
  classes.counted += frames;
}

/** Where the counts of four frames are, by their squares. */
// @ts-ignore: decorator
@inline
export function countPlaces(squares: v128, next: v128): v128 {
  const exponents = i16x8.min_s(
    i16x8.narrow_i32x4_s(exponentsOf(squares), exponentsOf(next)),
    i16x8.splat(<i16>HIGHEST_EXPONENT));
  return i32x4.dot_i16x8_s(
    exponents, i32x4.splat(ROW_BYTES | (2 << 16)));
}

// @ts-ignore: decorator
@inline
function exponentsOf(squares: v128): v128 {
  const held = f32x4.pmax(squares, f32x4.splat(LOWEST_SQUARE));
  return i32x4.shr_u(f32x4.mul(held, held), 23);
}

/** Counts a frame of even or odd number at its place. */
// @ts-ignore: decorator
@inline
export function countAt(tables: usize, place: i32, isOdd: i32): void {
  const at = tables + <usize>(isOdd * TABLE_BYTES - ORIGIN) + <usize>place;
  store<u16>(at, load<u16>(at) + 1);
}

/** Counts four frames at their places. */
// @ts-ignore: decorator
@inline
export function countFour(tables: usize, places: v128): void {
  countAt(tables, i32x4.extract_lane(places, 0), 0);
  countAt(tables, i32x4.extract_lane(places, 1), 1);
  countAt(tables, i32x4.extract_lane(places, 2), 0);
  countAt(tables, i32x4.extract_lane(places, 3), 1);
}

/** Hands out a quarter's counts, left and then right, and begins anew. */
export function takeCounts(classes: Classes, out: usize): void {
  fileCounts(classes);
  memory.copy(out, classes.filed, 2 * CLASSES * 4);
  memory.fill(classes.filed, 0, 2 * CLASSES * 4);
}

/** Moves what the tables hold to each wall's own counts. */
function fileCounts(classes: Classes): void {
  for (let row = 0; row < CLASSES; row++) {
    const even = classes.tables + <usize>(row * ROW_BYTES);
    let any = i16x8.splat(0);
    for (let at = even, end = even + ROW_BYTES; at < end; at += 16) {
      any = v128.or(any, v128.or(v128.load(at), v128.load(at, TABLE_BYTES)));
    }
    if (v128.any_true(any)) fileRow(classes, row, even);
  }
  classes.counted = 0;
}

function fileRow(classes: Classes, row: i32, even: usize): void {
  const rights = classes.filed + CLASSES * 4;
  let total: u32 = 0;
  for (let column = 0; column < CLASSES; column++) {
    const at = even + <usize>(column << 1);
    const count = <u32>load<u16>(at) + <u32>load<u16>(at, TABLE_BYTES);
    const right = rights + <usize>(column << 2);
    store<u32>(right, load<u32>(right) + count);
    total += count;
  }
  const left = classes.filed + <usize>(row << 2);
  store<u32>(left, load<u32>(left) + total);
  memory.fill(even, 0, ROW_BYTES);
  memory.fill(even + TABLE_BYTES, 0, ROW_BYTES);
}
