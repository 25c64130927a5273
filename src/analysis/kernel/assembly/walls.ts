import { highestClasses, leftBytes, lowestExponents, placesOf, writeByteLimits } from './classes';
import {
  CLASSES, countFirst, countWaiting, letWait, reserveCounts, stepPlaces, takeCounts,
} from './counts';
import { STEP_FRAMES } from './low-band';
import { BINS_PER_QUARTER, edge } from './rings';
import { firstOf, frameAt, largerFrame, secondOf } from './vector';
import { boundPeaks, seekQuarterPeaks } from './wall-peaks';

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

export const HALF_STEP: i32 = STEP_FRAMES / 2;
/** Velocity and acceleration of the step in hand: of its even frames, then of its odd ones. */
export const stepVelocities: usize = memory.data(STEP_FRAMES * 8, 16);
export const stepAccelerations: usize = memory.data(STEP_FRAMES * 8, 16);

const velocitySquare: usize = memory.data(16, 16);
const accelerationSquare: usize = memory.data(16, 16);
/** The quarter in hand, among those that are measured. */
let quarter: i32 = 0;
/** Its first frame and the one after its last. */
let start: i32 = 0;
let end: i32 = 0;
/** Lets the complete quarters go. */
export function takeQuarters(): void {
  quarterCount = 0;
}

/** Lets the first quarter begin, once the rings' clock is set. */
export function startQuarters(): void {
  writeByteLimits();
  start = <i32>Math.ceil(edge(0));
  end = <i32>Math.ceil(edge(BINS_PER_QUARTER));
}

/** Takes the step in hand; the quarter that ends in it ends here. */
export function measureStep(first: i32): void {
  const stop = first + STEP_FRAMES;
  if (first >= start && stop < end) measureWhole(first);
  else measureParts(first, stop);
}

/** A step of which some frames are of another quarter, or of none. */
function measureParts(first: i32, stop: i32): void {
  boundStep(first);
  measureRest(first, start, min<i32>(stop, end));
  if (stop < end) return;
  endQuarter();
  measureRest(first, start, stop);
}

function endQuarter(): void {
  const from = edge(quarter * BINS_PER_QUARTER);
  const until = edge((quarter + 1) * BINS_PER_QUARTER);
  const frames = <f64>(end - start);
  const figures = quarterFigures + <usize>(quarterCount * FIGURES * 8);
  seekQuarterPeaks(from, until, figures);
  v128.store(figures, f64x2.div(v128.load(velocitySquare), f64x2.splat(frames)), 32);
  v128.store(figures, f64x2.div(v128.load(accelerationSquare), f64x2.splat(frames)), 48);
  v128.store(velocitySquare, f64x2.splat(0));
  v128.store(accelerationSquare, f64x2.splat(0));
  takeCounts(quarterCounts + <usize>quarterCount * COUNT_BYTES);
  quarterCount++;
  quarter++;
  start = end;
  end = <i32>Math.ceil(edge((quarter + 1) * BINS_PER_QUARTER));
}

/**
 * Squares, classes and largest magnitudes of both quantities of both walls over a step. Both in one
 * loop, since a count that was just stored is slow to load again.
 */
function measureWhole(first: i32): void {
  reserveCounts(STEP_FRAMES);
  countWaiting();
  const lowest = lowestExponents();
  const highest = highestClasses();
  const lefts = leftBytes();
  let velocityTotal = f32x4.splat(0);
  let accelerationTotal = velocityTotal;
  let velocityMost = velocityTotal;
  let accelerationMost = velocityTotal;
  for (let n = 0; n < STEP_FRAMES; n += 4) {
    const v = squares(v128.load(frameAt(stepVelocities, n)));
    const nextV = squares(v128.load(frameAt(stepVelocities, n), 16));
    const a = squares(v128.load(frameAt(stepAccelerations, n)));
    const nextA = squares(v128.load(frameAt(stepAccelerations, n), 16));
    velocityTotal = f32x4.add(f32x4.add(velocityTotal, v), nextV);
    accelerationTotal = f32x4.add(f32x4.add(accelerationTotal, a), nextA);
    velocityMost = f32x4.pmax(velocityMost, f32x4.pmax(v, nextV));
    accelerationMost = f32x4.pmax(accelerationMost, f32x4.pmax(a, nextA));
    const places = placesOf(v, nextV, a, nextA, lowest, highest, lefts);
    v128.store(stepPlaces + (<usize>n << 2), places);
  }
  letWait();
  addSquares(velocityTotal, accelerationTotal);
  boundPeaks(first, largerFrame(velocityMost), largerFrame(accelerationMost));
}

/** The largest magnitudes alone, of a step that is not all of one quarter. */
function boundStep(first: i32): void {
  let velocityMost = f32x4.splat(0);
  let accelerationMost = velocityMost;
  for (let n = 0; n < STEP_FRAMES; n += 2) {
    velocityMost = f32x4.pmax(velocityMost, squares(v128.load(frameAt(stepVelocities, n))));
    accelerationMost = f32x4.pmax(
      accelerationMost, squares(v128.load(frameAt(stepAccelerations, n))));
  }
  boundPeaks(first, largerFrame(velocityMost), largerFrame(accelerationMost));
}

/**
 * The step's frames from one to another, one after the other: its even ones, then its odd ones; as
 * above, of each every other is summed apart.
 */
function measureRest(first: i32, begin: i32, stop: i32): void {
  if (begin >= stop) return;
  reserveCounts(STEP_FRAMES);
  let velocityTotal = f32x4.splat(0);
  let accelerationTotal = velocityTotal;
  for (let n = 0; n < STEP_FRAMES; n++) {
    const frame = first + (n < HALF_STEP ? 2 * n : 2 * (n - HALF_STEP) + 1);
    if (frame < begin || frame >= stop) continue;
    const v = squares(v128.load64_zero(frameAt(stepVelocities, n)));
    const a = squares(v128.load64_zero(frameAt(stepAccelerations, n)));
    countFirst(placesOf(v, v, a, a, lowestExponents(), highestClasses(), leftBytes()));
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
