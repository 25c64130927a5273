import {
  CLASSES, countAt, countFour, countPlaces, newClasses, reserveCounts, takeCounts,
} from './classes';
import { STEP_FRAMES } from './low-band';
import { BINS_PER_QUARTER, edge } from './rings';
import { firstOf, frameAt, largerFrame, secondOf } from './vector';
import { boundPeaks, seekQuarterPeaks } from './wall-peaks';

/** Most quarters between two visits of the host. */
const QUARTER_CAPACITY: i32 = 64;
/** Velocity peak, acceleration peak, their mean squares; left and right of each. */
const FIGURES: i32 = 8;
/** Bytes of a quarter's counts. */
const COUNT_BYTES: usize = 4 * CLASSES * 4;
/** Accelerations are squared in units of 1024 m/s², so that their classes are those of velocities. */
const ACCELERATION_UNIT: f32 = 1024;

export const quarterFigures: usize = memory.data(QUARTER_CAPACITY * FIGURES * 8, 16);
/** Per quarter: counts of velocity left, right, acceleration left, right. */
export const quarterCounts: usize = memory.data(QUARTER_CAPACITY * 4 * CLASSES * 4, 16);
export let quarterCount: i32 = 0;

/** Velocity and acceleration of the step in hand. */
export const stepVelocities: usize = memory.data(STEP_FRAMES * 8, 16);
export const stepAccelerations: usize = memory.data(STEP_FRAMES * 8, 16);

const velocitySquare: usize = memory.data(16, 16);
const accelerationSquare: usize = memory.data(16, 16);
const velocityClasses = newClasses();
const accelerationClasses = newClasses();
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
  measureRest(max<i32>(first, start), min<i32>(stop, end));
  if (stop < end) return;
  endQuarter();
  measureRest(start, stop);
}

function endQuarter(): void {
  const from = edge(quarter * BINS_PER_QUARTER);
  const until = edge((quarter + 1) * BINS_PER_QUARTER);
  const frames = <f64>(end - start);
  const figures = quarterFigures + <usize>(quarterCount * FIGURES * 8);
  const unit = f64x2.splat(<f64>ACCELERATION_UNIT * ACCELERATION_UNIT / frames);
  seekQuarterPeaks(from, until, ACCELERATION_UNIT, figures);
  v128.store(figures, f64x2.div(v128.load(velocitySquare), f64x2.splat(frames)), 32);
  v128.store(figures, f64x2.mul(v128.load(accelerationSquare), unit), 48);
  v128.store(velocitySquare, f64x2.splat(0));
  v128.store(accelerationSquare, f64x2.splat(0));
  const counts = quarterCounts + <usize>quarterCount * COUNT_BYTES;
  takeCounts(velocityClasses, counts);
  takeCounts(accelerationClasses, counts + COUNT_BYTES / 2);
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
  reserveCounts(velocityClasses, STEP_FRAMES);
  reserveCounts(accelerationClasses, STEP_FRAMES);
  const velocityTables = velocityClasses.tables;
  const accelerationTables = accelerationClasses.tables;
  let velocityTotal = f32x4.splat(0);
  let accelerationTotal = velocityTotal;
  let velocityMost = velocityTotal;
  let accelerationMost = velocityTotal;
  for (let n = 0; n < STEP_FRAMES; n += 4) {
    const v = velocitySquares(v128.load(frameAt(stepVelocities, n)));
    const nextV = velocitySquares(v128.load(frameAt(stepVelocities, n), 16));
    velocityTotal = f32x4.add(f32x4.add(velocityTotal, v), nextV);
    velocityMost = f32x4.pmax(velocityMost, f32x4.pmax(v, nextV));
    countFour(velocityTables, countPlaces(v, nextV));
    const a = accelerationSquares(v128.load(frameAt(stepAccelerations, n)));
    const nextA = accelerationSquares(v128.load(frameAt(stepAccelerations, n), 16));
    accelerationTotal = f32x4.add(f32x4.add(accelerationTotal, a), nextA);
    accelerationMost = f32x4.pmax(accelerationMost, f32x4.pmax(a, nextA));
    countFour(accelerationTables, countPlaces(a, nextA));
  }
  addSquares(velocityTotal, accelerationTotal);
  boundPeaks(first, largerFrame(velocityMost), largerFrame(accelerationMost));
}

/** The largest magnitudes alone, of a step that is not all of one quarter. */
function boundStep(first: i32): void {
  let velocityMost = f32x4.splat(0);
  let accelerationMost = velocityMost;
  for (let n = 0; n < STEP_FRAMES; n += 2) {
    const v = velocitySquares(v128.load(frameAt(stepVelocities, n)));
    const a = accelerationSquares(v128.load(frameAt(stepAccelerations, n)));
    velocityMost = f32x4.pmax(velocityMost, v);
    accelerationMost = f32x4.pmax(accelerationMost, a);
  }
  boundPeaks(first, largerFrame(velocityMost), largerFrame(accelerationMost));
}

/** Frames of the step one after the other; as above, even ones are summed apart from odd. */
function measureRest(start: i32, stop: i32): void {
  if (start >= stop) return;
  reserveCounts(velocityClasses, stop - start);
  reserveCounts(accelerationClasses, stop - start);
  let velocityTotal = f32x4.splat(0);
  let accelerationTotal = velocityTotal;
  for (let n = start; n < stop; n++) {
    const within = n & (STEP_FRAMES - 1);
    const v = velocitySquares(v128.load64_zero(frameAt(stepVelocities, within)));
    const a = accelerationSquares(v128.load64_zero(frameAt(stepAccelerations, within)));
    countAt(velocityClasses.tables, i32x4.extract_lane(countPlaces(v, v), 0), 0);
    countAt(accelerationClasses.tables, i32x4.extract_lane(countPlaces(a, a), 0), 0);
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
function velocitySquares(frames: v128): v128 {
  return f32x4.mul(frames, frames);
}

// @ts-ignore: decorator
@inline
function accelerationSquares(frames: v128): v128 {
  const scaled = f32x4.mul(frames, f32x4.splat(1 / ACCELERATION_UNIT));
  return f32x4.mul(scaled, scaled);
}
