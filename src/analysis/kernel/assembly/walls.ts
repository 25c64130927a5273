import { isLocalMaximum, lookAtRing, peakNear, peakPlace, valueAt } from './interpolate';
import { acceleration, velocity, wallMask } from './rings';
import { anyLarger, frameAt } from './vector';

const BINS_PER_QUARTER: i32 = 16;
const LOWEST_CLASS: i32 = -64;
const CLASSES: i32 = 192;
/** Most quarters between two visits of the host. */
const QUARTER_CAPACITY: i32 = 64;
/** Velocity peak, acceleration peak, their mean squares; left and right of each. */
const FIGURES: i32 = 8;
/** Bytes of a quarter's counts. */
const COUNT_BYTES: usize = 4 * CLASSES * 4;

export const quarterFigures: usize = memory.data((QUARTER_CAPACITY + 1) * FIGURES * 8, 16);
/** Per quarter: counts of velocity left, right, acceleration left, right. */
export const quarterCounts: usize = memory.data((QUARTER_CAPACITY + 1) * 4 * CLASSES * 4, 16);
export let quarterCount: i32 = 0;

const velocitySquare: usize = memory.data(16, 16);
const accelerationSquare: usize = memory.data(16, 16);
let frames: f64 = 0;
/** Places between which peaks count: the quarter's own edges. */
let peaksFrom: f64 = 0;
let peaksUntil: f64 = 0;

/**
 * Square of how much higher a peak may be than the largest frame around it: a signal limited to B
 * and sampled at f is nowhere higher than 1/cos(πB/f) times its largest sample, 1.53 times for
 * 24.1 kHz at 88.2 kHz.
 */
export const PEAK_POWER: f64 = 2.5;
/**
 * Share of the curvature at a frame that no peak next to it rises above it by; a tone at the band
 * end needs 0.23.
 */
export const PEAK_SHARE: f64 = 0.3;
/** Frames that share one look for a peak. */
const STRIDE: i32 = 32;
/** Binary exponents of an f64 without its sign, and the bytes of their counts. */
const EXPONENTS: i32 = 2048;
const EXPONENT_BYTES: usize = EXPONENTS * 4;
const EXPONENT_OF_ONE: i32 = 1023;
/** Counts of the quarter in hand by exponent: velocity left, right, acceleration left, right. */
const exponentCounts: usize = memory.data(8 * EXPONENTS * 4, 16);
/**
 * Bytes to a second set of counts, which every other frame goes to: neighbours mostly fall into one
 * class, and a count that was just stored is slow to load again.
 */
const ODD_BYTES: usize = 4 * EXPONENT_BYTES;

/** Lets the complete quarters go; the figures of the one in hand move to the front. */
export function takeQuarters(): void {
  memory.copy(quarterFigures, figures(), FIGURES * 8);
  memory.fill(quarterCounts, 0, <usize>quarterCount * COUNT_BYTES);
  quarterCount = 0;
}

// @ts-ignore: decorator
@inline
function figures(): usize {
  return quarterFigures + <usize>(quarterCount * FIGURES * 8);
}

// @ts-ignore: decorator
@inline
function counts(): usize {
  return quarterCounts + <usize>quarterCount * COUNT_BYTES;
}

/** Takes a bin's velocity and acceleration; every sixteenth ends a quarter. */
export function measureWalls(from: f64, until: f64, bin: i32): void {
  const first = <i32>Math.ceil(from);
  const end = <i32>Math.ceil(until);
  const within = bin % BINS_PER_QUARTER;
  const isLast = within == BINS_PER_QUARTER - 1;
  peaksUntil = isLast ? until : Infinity;
  if (within == 0) {
    peaksFrom = from;
    memory.fill(figures(), 0, FIGURES * 8);
    peakAtEdge(from, first - 1);
  }
  measure(velocity, velocitySquare, first, end, figures(), exponentCounts);
  const accelerations = exponentCounts + 2 * EXPONENT_BYTES;
  measure(acceleration, accelerationSquare, first, end, figures() + 16, accelerations);
  frames += <f64>(end - first);
  if (isLast) {
    peakAtEdge(until, end);
    endQuarter();
  }
}

function endQuarter(): void {
  const count = f64x2.splat(frames);
  v128.store(figures(), f64x2.div(v128.load(velocitySquare), count), 32);
  v128.store(figures(), f64x2.div(v128.load(accelerationSquare), count), 48);
  v128.store(velocitySquare, f64x2.splat(0));
  v128.store(accelerationSquare, f64x2.splat(0));
  frames = 0;
  for (let row = 0; row < 4; row++) fileClasses(row);
  memory.fill(exponentCounts, 0, 2 * ODD_BYTES);
  quarterCount++;
}

/** Sorts a row's exponents into the classes that are kept apart. */
function fileClasses(row: i32): void {
  const from = exponentCounts + <usize>row * EXPONENT_BYTES;
  const to = counts() + <usize>(row * CLASSES * 4);
  for (let exponent = 0; exponent < EXPONENTS; exponent++) {
    const held = max<i32>(exponent - EXPONENT_OF_ONE, LOWEST_CLASS) - LOWEST_CLASS;
    const at = to + (<usize>min<i32>(held, CLASSES - 1) << 2);
    const counted = from + (<usize>exponent << 2);
    store<u32>(at, load<u32>(at) + load<u32>(counted) + load<u32>(counted + ODD_BYTES));
  }
}

/** Value at an edge of the quarter, and the peak that lies within it next to a frame beyond. */
function peakAtEdge(place: f64, beyond: i32): void {
  for (let channel = 0; channel < 2; channel++) {
    edgeOf(velocity, channel, place, figures());
    edgeOf(acceleration, channel, place, figures() + 16);
    seekPeak(velocity, beyond, channel, figures());
    seekPeak(acceleration, beyond, channel, figures() + 16);
  }
}

function edgeOf(ring: usize, channel: i32, place: f64, peaks: usize): void {
  lookAtRing(ring, wallMask, channel == 0 ? 1 : 0, channel == 0 ? 0 : 1);
  const at = peaks + (<usize>channel << 3);
  store<f64>(at, max<f64>(load<f64>(at), abs(valueAt(place))));
}

/** Counts both walls by their squares. */
// @ts-ignore: decorator
@inline
function countBoth(exponents: usize, square: v128): void {
  const fourth = f64x2.mul(square, square);
  count(exponents, i64x2.extract_lane(fourth, 0));
  count(exponents + EXPONENT_BYTES, i64x2.extract_lane(fourth, 1));
}

/** Counts a magnitude by the binary exponent of its fourth power. */
// @ts-ignore: decorator
@inline
function count(row: usize, fourthBits: i64): void {
  const at = row + (<usize>(fourthBits >> 52) << 2);
  store<u32>(at, load<u32>(at) + 1);
}

/** Squares, classes and peaks of one quantity of both walls. */
function measure(
  ring: usize, squareSum: usize, first: i32, end: i32, peaks: usize, exponents: usize,
): void {
  let total = v128.load(squareSum);
  for (let start = first; start < end; start += STRIDE) {
    const stop = min<i32>(start + STRIDE, end);
    const run = frameAt(ring, start & wallMask);
    let most = f64x2.splat(0);
    const frames = stop - start;
    for (let n = 0; n < frames; n += 2) {
      const at = v128.load(frameAt(run, n));
      const square = f64x2.mul(at, at);
      total = f64x2.add(total, square);
      most = f64x2.pmax(most, square);
      countBoth(exponents, square);
      if (n + 1 == frames) break;
      const next = v128.load(frameAt(run, n), 16);
      const nextSquare = f64x2.mul(next, next);
      total = f64x2.add(total, nextSquare);
      most = f64x2.pmax(most, nextSquare);
      countBoth(exponents + ODD_BYTES, nextSquare);
    }
    const best = v128.load(peaks);
    const reach = f64x2.mul(f64x2.splat(PEAK_POWER), most);
    if (anyLarger(reach, f64x2.mul(best, best))) seekPeaks(ring, start, stop, peaks);
  }
  v128.store(squareSum, total);
}

/** Looks closer at the frames of a stride whose bound is higher than a peak so far. */
function seekPeaks(ring: usize, from: i32, until: i32, peaks: usize): void {
  const share = f64x2.splat(PEAK_SHARE);
  let best = v128.load(peaks);
  for (let n = from; n < until; n++) {
    const before = v128.load(frameAt(ring, (n - 1) & wallMask));
    const at = v128.load(frameAt(ring, n & wallMask));
    const after = v128.load(frameAt(ring, (n + 1) & wallMask));
    const curvature = f64x2.abs(f64x2.sub(f64x2.add(at, at), f64x2.add(before, after)));
    const bound = f64x2.add(f64x2.abs(at), f64x2.mul(share, curvature));
    const larger = i64x2.bitmask(f64x2.gt(bound, best));
    if (larger == 0) continue;
    if ((larger & 1) != 0) seekPeak(ring, n, 0, peaks);
    if ((larger & 2) != 0) seekPeak(ring, n, 1, peaks);
    best = v128.load(peaks);
  }
}

/** Raises a peak to the magnitude at a frame or next to it, as far as that lies in the quarter. */
function seekPeak(ring: usize, frame: i32, channel: i32, peaks: usize): void {
  const value = load<f64>(frameAt(ring, frame & wallMask) + (<usize>channel << 3));
  const sign: f64 = value < 0 ? -1 : 1;
  lookAtRing(ring, wallMask, channel == 0 ? sign : 0, channel == 0 ? 0 : sign);
  const at = peaks + (<usize>channel << 3);
  if (<f64>frame >= peaksFrom && <f64>frame <= peaksUntil) {
    store<f64>(at, max<f64>(load<f64>(at), sign * value));
  }
  if (!isLocalMaximum(frame)) return;
  const peak = peakNear(frame);
  if (peakPlace >= peaksFrom && peakPlace <= peaksUntil) {
    store<f64>(at, max<f64>(load<f64>(at), peak));
  }
}
