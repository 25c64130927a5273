import { Classes, CLASSES, countAt, countPlaces, newClasses, reserveCounts, takeCounts } from './classes';
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
  measure(velocity, 1, velocitySquare, velocityClasses, first, end, figures());
  measure(
    acceleration, 1 / ACCELERATION_UNIT, accelerationSquare, accelerationClasses, first, end,
    figures() + 16);
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

/** Squares, classes and peaks of one quantity of both walls, a step or the rest of one at a time. */
// @ts-ignore: decorator
@inline
function measure(
  ring: usize, scale: f32, squareSum: usize, classes: Classes, first: i32, end: i32, peaks: usize,
): void {
  reserveCounts(classes, end - first);
  for (let start = first; start < end; ) {
    const stop = min<i32>((start | (STEP_FRAMES - 1)) + 1, end);
    const run = frameAt(ring, start & wallMask);
    let total = f32x4.splat(0);
    let most = total;
    if (stop - start == STEP_FRAMES) {
      for (let n = 0; n < STEP_FRAMES; n += 4) {
        const squares = squareOf(v128.load(frameAt(run, n)), scale);
        const next = squareOf(v128.load(frameAt(run, n), 16), scale);
        total = f32x4.add(f32x4.add(total, squares), next);
        most = f32x4.pmax(most, f32x4.pmax(squares, next));
        const places = countPlaces(squares, next);
        countAt(classes.tables, i32x4.extract_lane(places, 0), 0);
        countAt(classes.tables, i32x4.extract_lane(places, 1), 1);
        countAt(classes.tables, i32x4.extract_lane(places, 2), 0);
        countAt(classes.tables, i32x4.extract_lane(places, 3), 1);
      }
    } else {
      for (let n = start; n < stop; n++) {
        const frame = v128.load64_zero(frameAt(run, n - start));
        const squares = squareOf(frame, scale);
        countAt(classes.tables, i32x4.extract_lane(countPlaces(squares, squares), 0), 0);
        most = f32x4.pmax(most, squares);
        // Even frames are summed apart from odd ones, as above.
        const shift = v128.shuffle<i64>(squares, squares, 1, 0);
        total = f32x4.add(total, (n & 1) == 0 ? squares : shift);
      }
    }
    const sum = f64x2.add(firstOf(total), secondOf(total));
    v128.store(squareSum, f64x2.add(v128.load(squareSum), sum));
    if (mayBePeak(largerFrame(most), scale, peaks)) seekPeaks(ring, start, stop, peaks);
    start = stop;
  }
}

// @ts-ignore: decorator
@inline
function squareOf(frames: v128, scale: f32): v128 {
  const scaled = scale == 1 ? frames : f32x4.mul(frames, f32x4.splat(scale));
  return f32x4.mul(scaled, scaled);
}
