import {
  CLASSES, countAt, countFour, countPlaces, newClasses, reserveCounts, takeCounts,
} from './classes';
import { STEP_FRAMES } from './low-band';
import { acceleration, velocity, wallMask } from './rings';
import { firstOf, frameAt, largerFrame, secondOf } from './vector';
import { countPeaksFrom, countPeaksUntil, mayBePeak, peakAtEdge, seekPeaks } from './wall-peaks';

const BINS_PER_QUARTER: i32 = 16;
/** Most quarters between two visits of the host. */
const QUARTER_CAPACITY: i32 = 64;
/** Velocity peak, acceleration peak, their mean squares; left and right of each. */
const FIGURES: i32 = 8;
/** Bytes of a quarter's counts. */
const COUNT_BYTES: usize = 4 * CLASSES * 4;
/** Accelerations are squared in units of 1024 m/s², so that their classes are those of velocities. */
const ACCELERATION_UNIT: f32 = 1024;

export const quarterFigures: usize = memory.data((QUARTER_CAPACITY + 1) * FIGURES * 8, 16);
/** Per quarter: counts of velocity left, right, acceleration left, right. */
export const quarterCounts: usize = memory.data((QUARTER_CAPACITY + 1) * 4 * CLASSES * 4, 16);
export let quarterCount: i32 = 0;

const velocitySquare: usize = memory.data(16, 16);
const accelerationSquare: usize = memory.data(16, 16);
const velocityClasses = newClasses();
const accelerationClasses = newClasses();
let frames: f64 = 0;
/** First frame that is not measured yet. */
let next: i32 = 0;

/** Lets the complete quarters go; the figures of the one in hand move to the front. */
export function takeQuarters(): void {
  memory.copy(quarterFigures, figures(), FIGURES * 8);
  quarterCount = 0;
}

// @ts-ignore: decorator
@inline
function figures(): usize {
  return quarterFigures + <usize>(quarterCount * FIGURES * 8);
}

/**
 * Takes a bin's velocity and acceleration; every sixteenth ends a quarter. What a bin holds of the
 * step that it ends in waits for the next bin of the quarter.
 */
export function measureWalls(from: f64, until: f64, bin: i32): void {
  const within = bin % BINS_PER_QUARTER;
  const isLast = within == BINS_PER_QUARTER - 1;
  const first = within == 0 ? <i32>Math.ceil(from) : next;
  const end = isLast ? <i32>Math.ceil(until) : <i32>until & ~(STEP_FRAMES - 1);
  next = end;
  countPeaksUntil(isLast ? until : Infinity);
  if (within == 0) {
    countPeaksFrom(from);
    memory.fill(figures(), 0, FIGURES * 8);
    peakAtEdge(velocity, from, first - 1, figures());
    peakAtEdge(acceleration, from, first - 1, figures() + 16);
  }
  measure(first, end);
  frames += <f64>(end - first);
  if (isLast) {
    peakAtEdge(velocity, until, end, figures());
    peakAtEdge(acceleration, until, end, figures() + 16);
    endQuarter();
  }
}

function endQuarter(): void {
  const unit = f64x2.splat(<f64>ACCELERATION_UNIT * ACCELERATION_UNIT / frames);
  v128.store(figures(), f64x2.div(v128.load(velocitySquare), f64x2.splat(frames)), 32);
  v128.store(figures(), f64x2.mul(v128.load(accelerationSquare), unit), 48);
  v128.store(velocitySquare, f64x2.splat(0));
  v128.store(accelerationSquare, f64x2.splat(0));
  frames = 0;
  const counts = quarterCounts + <usize>quarterCount * COUNT_BYTES;
  takeCounts(velocityClasses, counts);
  takeCounts(accelerationClasses, counts + COUNT_BYTES / 2);
  quarterCount++;
}

/**
 * Squares, classes and peaks of both quantities of both walls, a step or the rest of one at a time.
 * Both in one loop, since a count that was just stored is slow to load again.
 */
function measure(first: i32, end: i32): void {
  reserveCounts(velocityClasses, end - first);
  reserveCounts(accelerationClasses, end - first);
  for (let start = first; start < end; ) {
    const stop = min<i32>((start | (STEP_FRAMES - 1)) + 1, end);
    if (stop - start == STEP_FRAMES) measureStep(start);
    else measureRest(start, stop);
    start = stop;
  }
}

function measureStep(start: i32): void {
  const velocities = frameAt(velocity, start & wallMask);
  const accelerations = frameAt(acceleration, start & wallMask);
  const velocityTables = velocityClasses.tables;
  const accelerationTables = accelerationClasses.tables;
  let velocityTotal = f32x4.splat(0);
  let accelerationTotal = velocityTotal;
  let velocityMost = velocityTotal;
  let accelerationMost = velocityTotal;
  for (let n = 0; n < STEP_FRAMES; n += 4) {
    const v = velocitySquares(v128.load(frameAt(velocities, n)));
    const nextV = velocitySquares(v128.load(frameAt(velocities, n), 16));
    velocityTotal = f32x4.add(f32x4.add(velocityTotal, v), nextV);
    velocityMost = f32x4.pmax(velocityMost, f32x4.pmax(v, nextV));
    countFour(velocityTables, countPlaces(v, nextV));
    const a = accelerationSquares(v128.load(frameAt(accelerations, n)));
    const nextA = accelerationSquares(v128.load(frameAt(accelerations, n), 16));
    accelerationTotal = f32x4.add(f32x4.add(accelerationTotal, a), nextA);
    accelerationMost = f32x4.pmax(accelerationMost, f32x4.pmax(a, nextA));
    countFour(accelerationTables, countPlaces(a, nextA));
  }
  addSquares(velocityTotal, accelerationTotal);
  seekPeaksOf(start, start + STEP_FRAMES, velocityMost, accelerationMost);
}

/** Frames that are no whole step, one after the other; as above, even ones are summed apart from odd. */
function measureRest(start: i32, stop: i32): void {
  let velocityTotal = f32x4.splat(0);
  let accelerationTotal = velocityTotal;
  let velocityMost = velocityTotal;
  let accelerationMost = velocityTotal;
  for (let n = start; n < stop; n++) {
    const v = velocitySquares(v128.load64_zero(frameAt(velocity, n & wallMask)));
    const a = accelerationSquares(v128.load64_zero(frameAt(acceleration, n & wallMask)));
    velocityMost = f32x4.pmax(velocityMost, v);
    accelerationMost = f32x4.pmax(accelerationMost, a);
    countAt(velocityClasses.tables, i32x4.extract_lane(countPlaces(v, v), 0), 0);
    countAt(accelerationClasses.tables, i32x4.extract_lane(countPlaces(a, a), 0), 0);
    const isOdd = (n & 1) != 0;
    velocityTotal = f32x4.add(velocityTotal, isOdd ? v128.shuffle<i64>(v, v, 1, 0) : v);
    accelerationTotal = f32x4.add(accelerationTotal, isOdd ? v128.shuffle<i64>(a, a, 1, 0) : a);
  }
  addSquares(velocityTotal, accelerationTotal);
  seekPeaksOf(start, stop, velocityMost, accelerationMost);
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
function seekPeaksOf(start: i32, stop: i32, velocities: v128, accelerations: v128): void {
  const peaks = figures();
  if (mayBePeak(largerFrame(velocities), 1, peaks)) seekPeaks(velocity, start, stop, peaks);
  const unit: f32 = 1 / ACCELERATION_UNIT;
  if (mayBePeak(largerFrame(accelerations), unit, peaks + 16)) {
    seekPeaks(acceleration, start, stop, peaks + 16);
  }
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
