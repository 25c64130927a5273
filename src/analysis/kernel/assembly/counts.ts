import { STEP_FRAMES } from './low-band';

/** Classes that are kept apart, the lowest from 2^−16 of the unit on; see histogram.ts of the analysis. */
export const CLASSES: i32 = 128;
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
let counted: i32 = 0;

/**
 * Places of a step that is counted with the next one: a number that was stored as part of a vector is
 * slow to load by itself soon after.
 */
export const stepPlaces: usize = memory.data(STEP_FRAMES * 4, 16);
let isWaiting: bool = false;
/** Places of a frame that is counted alone. */
const framePlaces: usize = memory.data(16, 16);

/** Makes room for some frames more. */
export function reserveCounts(frames: i32): void {
  if (counted + frames > MOST_COUNTED) fileCounts();
  counted += frames;
}

/** Lets the places of a step wait, of which those that waited are counted. */
export function letWait(): void {
  isWaiting = true;
}

/** Counts the step that waits. */
export function countWaiting(): void {
  if (!isWaiting) return;
  isWaiting = false;
  for (let four = stepPlaces, end = stepPlaces + STEP_FRAMES * 4; four < end; four += 16) {
    countAt(load<u16>(four), 0);
    countAt(load<u16>(four, 2), TABLE_BYTES);
    countAt(load<u16>(four, 4), 0);
    countAt(load<u16>(four, 6), TABLE_BYTES);
    countAt(load<u16>(four, 8), 2 * TABLE_BYTES);
    countAt(load<u16>(four, 10), 3 * TABLE_BYTES);
    countAt(load<u16>(four, 12), 2 * TABLE_BYTES);
    countAt(load<u16>(four, 14), 3 * TABLE_BYTES);
  }
}

/** Counts the first of four frames alone, by the places of all. */
export function countFirst(places: v128): void {
  v128.store(framePlaces, places);
  countAt(load<u16>(framePlaces), 0);
  countAt(load<u16>(framePlaces, 8), 2 * TABLE_BYTES);
}

// @ts-ignore: decorator
@inline
function countAt(place: u32, table: usize): void {
  const at = <usize>place + tables + table;
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
  countWaiting();
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
