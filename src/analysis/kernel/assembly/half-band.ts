import { firstOf, frameAt, secondOf } from './vector';

/** ½ in all lanes, which V8 would make anew for every four sums. */
const halves: usize = memory.data<f32>([0.5, 0.5, 0.5, 0.5], 16);

/** What becomes of the sums. */
const ALONE: i32 = 0;
const HALVED: i32 = 1;
const STEPS: i32 = 2;

/**
 * Σ h(k)·(x(n − 1 − k) + x(n + k)) for some n, what a half-band has of the frames at odd distances.
 * @param x address of x(0); there are as many frames before it as there are pairs
 * @param taps each in all lanes; an even number
 * @param out room for three sums more
 */
export function sumPairs(x: usize, count: i32, taps: usize, pairs: i32, out: usize): void {
  sum(ALONE, x, count, taps, pairs, 0, out, 0);
}

/**
 * Halves a rate: half of each even frame and the sum of the odd ones around it.
 * @param out room for three frames more
 * @param power where the power that is kept out is added, two lanes of f64
 */
export function halve(
  odds: usize, evens: usize, count: i32, taps: usize, pairs: i32, out: usize, power: usize,
): void {
  sum(HALVED, odds, count, taps, pairs, evens, out, power);
}

/**
 * Doubles the rate of steps, x(n) being the step from one frame to the next. Of its two halves the
 * first is half of it and Σ g(k)·(x(n + 1 + k) − x(n − 1 − k)), the second what is left.
 * @param pairs an odd number of taps
 * @param firstHalves room for three more, and as much in `secondHalves`
 */
export function halveSteps(
  x: usize, count: i32, taps: usize, pairs: i32, firstHalves: usize, secondHalves: usize,
): void {
  sum(STEPS, x, count, taps, pairs, x, firstHalves, secondHalves);
}

/**
 * Four sums at a time, two a vector. B(i) being the frames i and i + 1 from the first of them, tap k
 * of the first vector weighs B(−1 − k) and B(k), of the second B(1 − k) and B(k + 2): the second
 * has what the first has two taps later or had two taps before, so that each is loaded once.
 */
// @ts-ignore: decorator
@inline
function sum(
  use: i32, x: usize, count: i32, taps: usize, pairs: i32, middles: usize, out: usize, also: usize,
): void {
  const half = v128.load(halves);
  // The pairs of steps leave out the middle one.
  const apart: usize = use == STEPS ? 8 : 0;
  const twos = taps + (<usize>(pairs & ~1) << 4);
  let power = use == HALVED ? v128.load(also) : f64x2.splat(0);
  for (let n = 0; n < count; n += 4) {
    let before = frameAt(x, n) - 16;
    let after = frameAt(x, n) + apart;
    let sum = f32x4.splat(0);
    let sum2 = sum;
    let low = v128.load(before, 24);
    let nextLow = v128.load(before, 16);
    let high = v128.load(after);
    let nextHigh = v128.load(after, 8);
    for (let tap = taps; tap < twos; tap += 32) {
      const weight = v128.load(tap);
      const lower = v128.load(before, 8);
      const higher = v128.load(after, 16);
      sum = plusPair(use, sum, weight, lower, high);
      sum2 = plusPair(use, sum2, weight, low, higher);
      low = lower;
      high = higher;
      const nextWeight = v128.load(tap, 16);
      const nextLower = v128.load(before);
      const nextHigher = v128.load(after, 24);
      sum = plusPair(use, sum, nextWeight, nextLower, nextHigh);
      sum2 = plusPair(use, sum2, nextWeight, nextLow, nextHigher);
      nextLow = nextLower;
      nextHigh = nextHigher;
      before -= 16;
      after += 16;
    }
    if (use == STEPS) {
      const weight = v128.load(twos);
      sum = plusPair(use, sum, weight, v128.load(before, 8), high);
      sum2 = plusPair(use, sum2, weight, low, v128.load(after, 16));
    }
    if (use != ALONE) {
      const middle = v128.load(frameAt(middles, n));
      const middle2 = v128.load(frameAt(middles, n), 16);
      const around = sum;
      const around2 = sum2;
      sum = f32x4.add(f32x4.mul(half, middle), around);
      sum2 = f32x4.add(f32x4.mul(half, middle2), around2);
      if (use == STEPS) {
        v128.store(frameAt(also, n), f32x4.sub(middle, sum));
        v128.store(frameAt(also, n), f32x4.sub(middle2, sum2), 16);
      } else {
        power = plusPower(power, f32x4.sub(f32x4.mul(half, middle), around), count - n);
        power = plusPower(power, f32x4.sub(f32x4.mul(half, middle2), around2), count - n - 2);
      }
    }
    v128.store(frameAt(out, n), sum);
    v128.store(frameAt(out, n), sum2, 16);
  }
  if (use == HALVED) v128.store(also, power);
}

/** A power and that of two frames, as many of them as there are. */
// @ts-ignore: decorator
@inline
function plusPower(power: v128, pair: v128, there: i32): v128 {
  const squares = f32x4.mul(pair, pair);
  if (there >= 2) return f64x2.add(f64x2.add(power, firstOf(squares)), secondOf(squares));
  return there == 1 ? f64x2.add(power, firstOf(squares)) : power;
}

/** A sum and a pair of frames of equal weight, or of steps of opposite ones. */
// @ts-ignore: decorator
@inline
function plusPair(use: i32, sum: v128, weight: v128, before: v128, after: v128): v128 {
  const pair = use == STEPS ? f32x4.sub(after, before) : f32x4.add(before, after);
  return f32x4.add(sum, f32x4.mul(weight, pair));
}
