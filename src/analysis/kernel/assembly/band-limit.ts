import { CHUNK_FRAMES } from './source';
import { frameAt } from './vector';

const FIRST_PAIRS: i32 = 6;
/** Most pairs of the band end; always an even number of them. */
const MOST_PAIRS: i32 = 24;

/** Taps of the two half-bands, each in both lanes. */
export const firstHalvingTaps: usize = memory.data(FIRST_PAIRS * 16, 16);
export const bandEndTaps: usize = memory.data(MOST_PAIRS * 16, 16);
/** Power that the last halving kept out, two lanes. */
export const ultrasonicPower: usize = memory.data(16, 16);

/** Frames that wait for later ones; the next output needs those from the first on. */
@unmanaged
class Waiting {
  buffer: usize;
  fill: i32;
}

const ROOM: i32 = 2 * CHUNK_FRAMES + 256;
const first = changetype<Waiting>(memory.data(16, 16));
const second = changetype<Waiting>(memory.data(16, 16));
const between = changetype<Waiting>(memory.data(16, 16));
first.buffer = memory.data(ROOM * 16, 16);
first.fill = 2 * FIRST_PAIRS - 1;
second.buffer = memory.data(ROOM * 16, 16);
between.buffer = memory.data(ROOM * 16, 16);

let bandEndPairs: i32 = 0;

export function setBandEnd(pairs: i32): void {
  bandEndPairs = pairs;
  second.fill = 2 * pairs - 1;
  between.fill = pairs - 1;
}

function append(stage: Waiting, frames: usize, count: i32): void {
  memory.copy(frameAt(stage.buffer, stage.fill), frames, <usize>count << 4);
  stage.fill += count;
}

function drop(stage: Waiting, count: i32): void {
  stage.fill -= count;
  memory.copy(stage.buffer, frameAt(stage.buffer, count), <usize>stage.fill << 4);
}

// Two outputs at a time share the taps: halving and doubling may write up to two frames more than
// they return.

/** Halves by the gentle half-band in place; returns the frames that came out. */
export function halveFirst(frames: usize, count: i32): i32 {
  append(first, frames, count);
  return halve(first, firstHalvingTaps, FIRST_PAIRS, frames, false);
}

/** Halves by the band-end half-band in place. */
export function halveToBase(frames: usize, count: i32): i32 {
  append(second, frames, count);
  return halve(second, bandEndTaps, bandEndPairs, frames, true);
}

function halve(stage: Waiting, taps: usize, pairs: i32, out: usize, measure: bool): i32 {
  const reach = 2 * pairs - 1;
  const ready = stage.fill - 2 * reach;
  if (ready <= 0) return 0;
  const count = (ready + 1) >> 1;
  const half = f64x2.splat(0.5);
  let power = v128.load(ultrasonicPower);
  for (let n = 0; n < count; n += 2) {
    const centre = frameAt(stage.buffer, reach + 2 * n);
    let around = f64x2.splat(0);
    let around2 = f64x2.splat(0);
    let before = centre - 16;
    let after = centre + 16;
    for (let tap = taps, end = taps + (<usize>pairs << 4); tap < end; tap += 32) {
      const weight = v128.load(tap);
      const next = v128.load(tap, 16);
      const shared = v128.load(before);
      const sharedAfter = v128.load(after, 32);
      around = f64x2.add(around, f64x2.mul(weight, f64x2.add(shared, v128.load(after))));
      around2 = f64x2.add(
        around2, f64x2.mul(weight, f64x2.add(v128.load(before, 32), sharedAfter)));
      before -= 32;
      around = f64x2.add(around, f64x2.mul(next, f64x2.add(v128.load(before), sharedAfter)));
      around2 = f64x2.add(around2, f64x2.mul(next, f64x2.add(shared, v128.load(after, 64))));
      before -= 32;
      after += 64;
    }
    const middle = f64x2.mul(half, v128.load(centre));
    const middle2 = f64x2.mul(half, v128.load(centre, 32));
    v128.store(frameAt(out, n), f64x2.add(middle, around));
    v128.store(frameAt(out, n + 1), f64x2.add(middle2, around2));
    const high = f64x2.sub(middle, around);
    power = f64x2.add(power, f64x2.mul(high, high));
    if (n + 1 == count) break;
    const high2 = f64x2.sub(middle2, around2);
    power = f64x2.add(power, f64x2.mul(high2, high2));
  }
  if (measure) v128.store(ultrasonicPower, power);
  drop(stage, 2 * count);
  return count;
}

/** Doubles the rate of `count` frames into `out`; returns the frames that came out. */
export function doubleRate(frames: usize, count: i32, out: usize): i32 {
  append(between, frames, count);
  const ready = between.fill - (2 * bandEndPairs - 1);
  if (ready <= 0) return 0;
  const end = bandEndTaps + (<usize>bandEndPairs << 4);
  for (let n = 0; n < ready; n += 2) {
    const at = frameAt(between.buffer, bandEndPairs - 1 + n);
    let sum = f64x2.splat(0);
    let sum2 = f64x2.splat(0);
    let before = at;
    let after = at + 16;
    for (let tap = bandEndTaps; tap < end; tap += 32) {
      const weight = v128.load(tap);
      const next = v128.load(tap, 16);
      const shared = v128.load(before);
      const sharedAfter = v128.load(after, 16);
      sum = f64x2.add(sum, f64x2.mul(weight, f64x2.add(shared, v128.load(after))));
      sum2 = f64x2.add(sum2, f64x2.mul(weight, f64x2.add(v128.load(before, 16), sharedAfter)));
      before -= 16;
      sum = f64x2.add(sum, f64x2.mul(next, f64x2.add(v128.load(before), sharedAfter)));
      sum2 = f64x2.add(sum2, f64x2.mul(next, f64x2.add(shared, v128.load(after, 32))));
      before -= 16;
      after += 32;
    }
    const target = frameAt(out, 2 * n);
    v128.store(target, v128.load(at), 0);
    v128.store(target, f64x2.add(sum, sum), 16);
    v128.store(target, v128.load(at, 16), 32);
    v128.store(target, f64x2.add(sum2, sum2), 48);
  }
  drop(between, ready);
  return 2 * ready;
}
