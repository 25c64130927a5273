import { halve } from './half-band';
import { CHUNK_FRAMES } from './source';
import { frameAt, moveBack } from './vector';

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
/** Power that the first halving keeps out, which nobody asks for. */
const firstPower: usize = memory.data(16, 16);
export let bandEndPairs: i32 = 0;

function prepare(stage: Halving, pairs: i32): void {
  stage.evens = heap.alloc(ROOM * 8);
  stage.odds = heap.alloc(ROOM * 8);
  stage.single = heap.alloc(8);
  memory.fill(stage.odds, 0, ROOM * 8);
  stage.reach = pairs;
}

export function setBandEnd(pairs: i32): void {
  bandEndPairs = pairs;
  prepare(first, FIRST_PAIRS);
  prepare(second, pairs);
}

/** Halves by the gentle half-band; returns the frames that came out. There is a frame before `frames`. */
export function halveFirst(frames: usize, count: i32, out: usize): i32 {
  part(first, frames, count);
  return halveStage(first, firstHalvingTaps, FIRST_PAIRS, out, firstPower);
}

/** Halves by the band-end half-band. */
export function halveToBase(frames: usize, count: i32, out: usize): i32 {
  part(second, frames, count);
  return halveStage(second, bandEndTaps, bandEndPairs, out, ultrasonicPower);
}

/** Parts frames into those of even and of odd numbers. */
function part(stage: Halving, frames: usize, count: i32): void {
  if (stage.hasSingle) {
    frames -= 8;
    count++;
    store<u64>(frames, load<u64>(stage.single));
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
  if (stage.hasSingle) store<u64>(stage.single, load<u64>(frameAt(frames, count - 1)));
}

function drop(stage: Halving, count: i32): void {
  stage.fill -= count;
  moveBack(stage.evens, frameAt(stage.evens, count), stage.fill << 3);
  moveBack(stage.odds, frameAt(stage.odds, count), (stage.fill + stage.reach) << 3);
}

function halveStage(stage: Halving, taps: usize, pairs: i32, out: usize, power: usize): i32 {
  const count = stage.fill - pairs + 1;
  if (count <= 0) return 0;
  halve(frameAt(stage.odds, pairs), stage.evens, count, taps, pairs, out, power);
  drop(stage, count);
  return count;
}
