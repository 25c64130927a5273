import { CHUNK_FRAMES } from './source';
import { firstOf, frameAt, secondOf } from './vector';

const FIRST_PAIRS: i32 = 6;
/** Most pairs of the band end; always an even number of them. */
const MOST_PAIRS: i32 = 24;

/** Taps of the two half-bands, each in all lanes. */
export const firstHalvingTaps: usize = memory.data(FIRST_PAIRS * 16, 16);
export const bandEndTaps: usize = memory.data(MOST_PAIRS * 16, 16);
/** Power that the last halving kept out, two lanes. */
export const ultrasonicPower: usize = memory.data(16, 16);

/** Frames that wait for later ones, those of even and of odd numbers apart. */
@unmanaged
class Halving {
  evens: usize;
  odds: usize;
  /** Odd frames before the first even one that is there. */
  reach: i32;
  /** Even frames that wait. */
  fill: i32;
  /** An even frame without its odd one. */
  single: usize;
  hasSingle: bool;
}

const ROOM: i32 = CHUNK_FRAMES + 128;
const first = changetype<Halving>(memory.data(32, 16));
const second = changetype<Halving>(memory.data(32, 16));
let between: usize = memory.data((2 * ROOM + MOST_PAIRS * 2) * 8, 16);
let betweenFill: i32 = 0;
let bandEndPairs: i32 = 0;

function prepare(stage: Halving, pairs: i32): void {
  stage.evens = heap.alloc(ROOM * 8);
  stage.odds = heap.alloc(ROOM * 8);
  stage.single = heap.alloc(8);
  memory.fill(stage.odds, 0, ROOM * 8);
  stage.reach = pairs;
}

export function setBandEnd(pairs: i32): void {
  bandEndPairs = pairs;
  betweenFill = pairs - 1;
  prepare(first, FIRST_PAIRS);
  prepare(second, pairs);
}

/** Halves by the gentle half-band; returns the frames that came out. There is a frame before `frames`. */
export function halveFirst(frames: usize, count: i32, out: usize): i32 {
  part(first, frames, count);
  return halve(first, firstHalvingTaps, FIRST_PAIRS, out, false);
}

/** Halves by the band-end half-band. */
export function halveToBase(frames: usize, count: i32, out: usize): i32 {
  part(second, frames, count);
  return halve(second, bandEndTaps, bandEndPairs, out, true);
}

/** Parts frames into those of even and of odd numbers. */
function part(stage: Halving, frames: usize, count: i32): void {
  if (stage.hasSingle) {
    frames -= 8;
    count++;
    memory.copy(frames, stage.single, 8);
  }
  const evens = frameAt(stage.evens, stage.fill);
  const odds = frameAt(stage.odds, stage.fill + stage.reach);
  const pairs = count >> 1;
  for (let n = 0; n < pairs; n += 2) {
    const from = frameAt(frames, 2 * n);
    const one = v128.load(from);
    const next = v128.load(from, 16);
    v128.store(frameAt(evens, n), v128.shuffle<i64>(one, next, 0, 2));
    v128.store(frameAt(odds, n), v128.shuffle<i64>(one, next, 1, 3));
  }
  stage.fill += pairs;
  stage.hasSingle = (count & 1) != 0;
  if (stage.hasSingle) memory.copy(stage.single, frameAt(frames, count - 1), 8);
}

function drop(stage: Halving, count: i32): void {
  stage.fill -= count;
  memory.copy(stage.evens, frameAt(stage.evens, count), <usize>stage.fill << 3);
  memory.copy(stage.odds, frameAt(stage.odds, count), <usize>(stage.fill + stage.reach) << 3);
}

// Four outputs at a time, two a vector, share the taps: halving and doubling may write up to three
// frames more than they return.

// @ts-ignore: decorator
@inline
function halve(stage: Halving, taps: usize, pairs: i32, out: usize, measure: bool): i32 {
  const count = stage.fill - pairs + 1;
  if (count <= 0) return 0;
  const half = f32x4.splat(0.5);
  const end = taps + (<usize>pairs << 4);
  let power = v128.load(ultrasonicPower);
  for (let n = 0; n < count; n += 4) {
    let after = frameAt(stage.odds, n + pairs);
    let before = after - 8;
    let around = f32x4.splat(0);
    let around2 = around;
    for (let tap = taps; tap < end; tap += 32) {
      const weight = v128.load(tap);
      around = plusPair(around, weight, v128.load(before), v128.load(after));
      around2 = plusPair(around2, weight, v128.load(before, 16), v128.load(after, 16));
      before -= 16;
      const next = v128.load(tap, 16);
      around = plusPair(around, next, v128.load(before, 8), v128.load(after, 8));
      around2 = plusPair(around2, next, v128.load(before, 24), v128.load(after, 24));
      after += 16;
    }
    const centre = frameAt(stage.evens, n);
    const middle = f32x4.mul(half, v128.load(centre));
    const middle2 = f32x4.mul(half, v128.load(centre, 16));
    v128.store(frameAt(out, n), f32x4.add(middle, around));
    v128.store(frameAt(out, n), f32x4.add(middle2, around2), 16);
    if (measure) {
      power = plusPower(power, f32x4.sub(middle, around), count - n);
      power = plusPower(power, f32x4.sub(middle2, around2), count - n - 2);
    }
  }
  if (measure) v128.store(ultrasonicPower, power);
  drop(stage, count);
  return count;
}

/** A sum and a pair of frames of equal weight. */
// @ts-ignore: decorator
@inline
function plusPair(sum: v128, weight: v128, before: v128, after: v128): v128 {
  return f32x4.add(sum, f32x4.mul(weight, f32x4.add(before, after)));
}

/** A power and that of two frames, as many of them as there are. */
// @ts-ignore: decorator
@inline
function plusPower(power: v128, pair: v128, there: i32): v128 {
  if (there <= 0) return power;
  const one = firstOf(pair);
  const sum = f64x2.add(power, f64x2.mul(one, one));
  if (there == 1) return sum;
  const next = secondOf(pair);
  return f64x2.add(sum, f64x2.mul(next, next));
}

/** Where the next frames of the base rate are to be written. */
export function baseRoom(): usize {
  return frameAt(between, betweenFill);
}

/** Doubles the rate of `count` frames in `baseRoom()` into `out`; returns the frames that came out. */
export function doubleRate(count: i32, out: usize): i32 {
  betweenFill += count;
  const ready = betweenFill - (2 * bandEndPairs - 1);
  if (ready <= 0) return 0;
  const end = bandEndTaps + (<usize>bandEndPairs << 4);
  for (let n = 0; n < ready; n += 4) {
    const at = frameAt(between, bandEndPairs - 1 + n);
    let before = at;
    let after = at + 8;
    let sum = f32x4.splat(0);
    let sum2 = sum;
    for (let tap = bandEndTaps; tap < end; tap += 32) {
      const weight = v128.load(tap);
      sum = plusPair(sum, weight, v128.load(before), v128.load(after));
      sum2 = plusPair(sum2, weight, v128.load(before, 16), v128.load(after, 16));
      before -= 16;
      const next = v128.load(tap, 16);
      sum = plusPair(sum, next, v128.load(before, 8), v128.load(after, 8));
      sum2 = plusPair(sum2, next, v128.load(before, 24), v128.load(after, 24));
      after += 16;
    }
    const target = frameAt(out, 2 * n);
    interleave(target, v128.load(at), f32x4.add(sum, sum));
    interleave(target + 32, v128.load(at, 16), f32x4.add(sum2, sum2));
  }
  betweenFill -= ready;
  memory.copy(between, frameAt(between, ready), <usize>betweenFill << 3);
  return 2 * ready;
}

// @ts-ignore: decorator
@inline
function interleave(target: usize, evens: v128, odds: v128): void {
  v128.store(target, v128.shuffle<i64>(evens, odds, 0, 2));
  v128.store(target, v128.shuffle<i64>(evens, odds, 1, 3), 16);
}
