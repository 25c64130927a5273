import {
  CLASSES, countFour, countOne, highestClasses, leftBytes, lowestExponents, reserveCounts, setClasses,
  takeCounts,
} from './classes';
import { STEP_FRAMES } from './low-band';
import { BINS_PER_QUARTER, edge } from './rings';
import { firstOf, frameAt, secondOf } from './vector';
import { seekQuarterPeaks } from './wall-peaks';

/** Most quarters between two visits of the host. */
export const QUARTER_CAPACITY: i32 = 64;
/** Velocity peak, acceleration peak, their mean squares; left and right of each. */
export const FIGURES: i32 = 8;
/** Bytes of a quarter's counts. */
const COUNT_BYTES: usize = 4 * CLASSES * 4;

export const quarterFigures: usize = memory.data(QUARTER_CAPACITY * FIGURES * 8, 16);
/** Per quarter: counts of velocity left, right, acceleration left, right. */
export const quarterCounts: usize = memory.data(QUARTER_CAPACITY * 4 * CLASSES * 4, 16);
export let quarterCount: i32 = 0;

/** Frames of a step whose squares and classes are taken: every other one. */
export const COUNTED: i32 = STEP_FRAMES / 2;
/** Velocity and acceleration of those of the step in hand. */
export const stepVelocities: usize = memory.data(COUNTED * 8, 16);
export const stepAccelerations: usize = memory.data(COUNTED * 8, 16);

const velocitySquare: usize = memory.data(16, 16);
const accelerationSquare: usize = memory.data(16, 16);
/** The quarter in hand, among those that are measured. */
let quarter: i32 = 0;
/** Its first frame and the one after its last. */
let start: i32 = 0;
let end: i32 = 0;
/** Frames of it that are counted. */
let counted: i32 = 0;

/** Lets the complete quarters go. */
export function takeQuarters(): void {
  quarterCount = 0;
}

/** Lets the first quarter begin, once the rings' clock is set. */
export function startQuarters(): void {
  setClasses();
  start = <i32>Math.ceil(edge(0));
  end = <i32>Math.ceil(edge(BINS_PER_QUARTER));
}

/**
 * Takes the step in hand; the quarter that ends in it ends here.
 * @param from first of its frames that are counted
 */
export function measureStep(first: i32, from: i32): void {
  const stop = first + STEP_FRAMES;
  if (first >= start && stop < end) measureWhole();
  else measureParts(from, stop);
}

/** A step of which some frames are of another quarter, or of none. */
function measureParts(from: i32, stop: i32): void {
  measureRest(from, start, min<i32>(stop, end));
  if (stop < end) return;
  endQuarter();
  measureRest(from, start, stop);
}

function endQuarter(): void {
  const from = edge(quarter * BINS_PER_QUARTER);
  const until = edge((quarter + 1) * BINS_PER_QUARTER);
  const frames = <f64>counted;
  const figures = quarterFigures + <usize>(quarterCount * FIGURES * 8);
  seekQuarterPeaks(from, until, figures);
  v128.store(figures, f64x2.div(v128.load(velocitySquare), f64x2.splat(frames)), 32);
  v128.store(figures, f64x2.div(v128.load(accelerationSquare), f64x2.splat(frames)), 48);
  v128.store(velocitySquare, f64x2.splat(0));
  v128.store(accelerationSquare, f64x2.splat(0));
  takeCounts(quarterCounts + <usize>quarterCount * COUNT_BYTES);
  counted = 0;
  quarterCount++;
  quarter++;
  start = end;
  end = <i32>Math.ceil(edge((quarter + 1) * BINS_PER_QUARTER));
}

/**
 * Squares and classes of both quantities of both walls over a step. Both in one loop, since a count
 * that was just stored is slow to load again.
 */
function measureWhole(): void {
  reserveCounts(COUNTED);
  counted += COUNTED;
  const lowest = lowestExponents();
  const highest = highestClasses();
  const lefts = leftBytes();
  let velocityTotal = f32x4.splat(0);
  let accelerationTotal = velocityTotal;
  for (let n = 0; n < COUNTED; n += 4) {
    const v = squares(v128.load(frameAt(stepVelocities, n)));
    const nextV = squares(v128.load(frameAt(stepVelocities, n), 16));
    const a = squares(v128.load(frameAt(stepAccelerations, n)));
    const nextA = squares(v128.load(frameAt(stepAccelerations, n), 16));
    velocityTotal = f32x4.add(f32x4.add(velocityTotal, v), nextV);
    accelerationTotal = f32x4.add(f32x4.add(accelerationTotal, a), nextA);
    countFour(v, nextV, a, nextA, lowest, highest, lefts);
  }
  addSquares(velocityTotal, accelerationTotal);
}

/** Those from one frame to another, one after the other; as above, every other one is summed apart. */
function measureRest(from: i32, begin: i32, stop: i32): void {
  if (begin >= stop) return;
  let velocityTotal = f32x4.splat(0);
  let accelerationTotal = velocityTotal;
  for (let n = 0; n < COUNTED; n++) {
    const frame = from + 2 * n;
    if (frame < begin || frame >= stop) continue;
    reserveCounts(1);
    counted++;
    const v = squares(v128.load64_zero(frameAt(stepVelocities, n)));
    const a = squares(v128.load64_zero(frameAt(stepAccelerations, n)));
    countOne(v, a);
    const isOdd = (n & 1) != 0;
    velocityTotal = f32x4.add(velocityTotal, isOdd ? v128.shuffle<i64>(v, v, 1, 0) : v);
    accelerationTotal = f32x4.add(accelerationTotal, isOdd ? v128.shuffle<i64>(a, a, 1, 0) : a);
  }
  addSquares(velocityTotal, accelerationTotal);
}

// @ts-ignore: decorator
@inline
function addSquares(velocities: v128, accelerations: v128): void {
  const v = f64x2.add(firstOf(velocities), secondOf(velocities));
  const a = f64x2.add(firstOf(accelerations), secondOf(accelerations));
  v128.store(velocitySquare, f64x2.add(v128.load(velocitySquare), v));
  v128.store(accelerationSquare, f64x2.add(v128.load(accelerationSquare), a));
}

// @ts-ignore: decorator
@inline
function squares(frames: v128): v128 {
  return f32x4.mul(frames, frames);
}
