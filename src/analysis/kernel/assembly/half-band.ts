import { frameAt } from './vector';

/**
 * Σ h(k)·(x(n − 1 − k) + x(n + k)) for some n, what a half-band has of the frames at odd distances.
 * @param x address of x(0); there are as many frames before it as there are pairs
 * @param taps each in all lanes; an even number
 * @param out room for three sums more
 */
export function sumPairs(x: usize, count: i32, taps: usize, pairs: i32, out: usize): void {
  sum(x, count, taps, pairs, out, false);
}

/**
 * Σ g(k)·(x(n + 1 + k) − x(n − 1 − k)) for some n, what the doubling has of the steps beside one.
 * @param pairs an odd number of taps
 */
export function sumSteps(x: usize, count: i32, taps: usize, pairs: i32, out: usize): void {
  sum(x, count, taps, pairs, out, true);
}

/**
 * Four sums at a time, two a vector: what the first has before it at a distance the second has two
 * frames further on, and after it two frames earlier, so that each frame is loaded once for both.
 */
// @ts-ignore: decorator
@inline
function sum(
  x: usize, count: i32, taps: usize, pairs: i32, out: usize, isOfSteps: bool,
): void {
  const end = taps + (<usize>(pairs & ~1) << 4);
  for (let n = 0; n < count; n += 4) {
    const at = frameAt(x, n);
    let after = isOfSteps ? at + 8 : at;
    let before = at - 8;
    let sum = f32x4.splat(0);
    let sum2 = sum;
    let afterEven = v128.load(after);
    let afterOdd = v128.load(after, 8);
    let beforeEven = v128.load(at, 8);
    let beforeOdd = v128.load(at);
    for (let tap = taps; tap < end; tap += 32) {
      before -= 8;
      const weight = v128.load(tap);
      const nextBefore = v128.load(before, 8);
      const nextAfter = v128.load(after, 16);
      sum = plusPair(sum, weight, nextBefore, afterEven, isOfSteps);
      sum2 = plusPair(sum2, weight, beforeEven, nextAfter, isOfSteps);
      beforeEven = nextBefore;
      afterEven = nextAfter;
      const other = v128.load(tap, 16);
      const otherBefore = v128.load(before);
      const otherAfter = v128.load(after, 24);
      sum = plusPair(sum, other, otherBefore, afterOdd, isOfSteps);
      sum2 = plusPair(sum2, other, beforeOdd, otherAfter, isOfSteps);
      beforeOdd = otherBefore;
      afterOdd = otherAfter;
      before -= 8;
      after += 16;
    }
    if (isOfSteps) {
      const weight = v128.load(end);
      sum = plusPair(sum, weight, v128.load(before), afterEven, true);
      sum2 = plusPair(sum2, weight, beforeEven, v128.load(after, 16), true);
    }
    v128.store(frameAt(out, n), sum);
    v128.store(frameAt(out, n), sum2, 16);
  }
}

/** A sum and a pair of frames of equal weight, or of opposite ones. */
// @ts-ignore: decorator
@inline
function plusPair(
  sum: v128, weight: v128, before: v128, after: v128, isOfSteps: bool,
): v128 {
  const pair = isOfSteps ? f32x4.sub(after, before) : f32x4.add(before, after);
  return f32x4.add(sum, f32x4.mul(weight, pair));
}
