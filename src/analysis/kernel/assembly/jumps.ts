import { frameAt, largerMagnitude, magnitudeBits } from './vector';

// As in jumps.ts of the host.
const REACH: i32 = 32;
const NEAR: i32 = 2;
const ISOLATION: f64 = 6;
const BESIDE: f64 = 1.0 / 3.0;

/**
 * Frames whose second differences share a maximum. Of the groups beside the one that a jump lies in
 * at least one is compared with it as a whole, whatever its place in its own, so that the maxima of
 * neighbours are as far apart as the jump stands out: only there single samples are looked at.
 */
const GROUP: i32 = 16;
/** A little less, for what single precision rounds. */
const CONTRAST: f32 = 5.9;
/** Frames before the ones in hand, for those that are judged late. */
const PAST: i32 = 128;

const pastFrames: usize = memory.data(PAST * 8, 16);
/** Of the group that is not complete, and of the one before it: both channels, twice. */
const openMost: usize = memory.data(16, 16);
const lastMost: usize = memory.data(16, 16);
/** Where groups begin that differ much from the one before them, from the frames in hand on. */
const marked: usize = memory.data(96 * 4, 16);
let markedCount: i32 = 0;
/** First frame that has not been judged yet, likewise. */
let judgedUntil: i32 = -PAST;
/** Frames of the open group. */
let openFrames: i32 = 0;
let framesBefore: f64 = 0;
let leastDifference: f64 = 1;

/** Frame, channel, difference and the largest around it of each, since the last push. */
export const jumps: usize = memory.data(4096 * 32, 16);
export let jumpCount: i32 = 0;

const silence: usize = memory.data(64 * 8, 16);

export function setJumps(least: f64): void {
  leastDifference = least;
}

export function forgetJumps(): void {
  jumpCount = 0;
}

/** Silence after the program, which ends what its last frames are compared with. */
export function endJumps(): void {
  jumpCount = 0;
  followJumps(silence, 64);
}

/** Looks for jumps in the next frames, at most a chunk of them. */
export function followJumps(frames: usize, count: i32): void {
  const least = f32x4.splat(<f32>(leastDifference * 0.999));
  const contrast = f32x4.splat(CONTRAST);
  const bits = v128.load(magnitudeBits);
  let previous = v128.load(frameAt(pastFrames, PAST - 2));
  let last = v128.load(lastMost);
  let n = 0;
  while (n < count) {
    let most: v128;
    if (openFrames == 0 && count - n >= GROUP) {
      most = f32x4.splat(0);
      let at = frameAt(frames, n);
      n += GROUP;
      for (let stop = frameAt(frames, n); at < stop; at += 64) {
        const first = v128.load(at);
        const second = v128.load(at, 16);
        const third = v128.load(at, 32);
        const ofFirst = v128.and(differences(previous, first), bits);
        previous = v128.load(at, 48);
        const ofSecond = v128.and(differences(first, second), bits);
        const ofThird = v128.and(differences(second, third), bits);
        const ofLast = v128.and(differences(third, previous), bits);
        const others = largerMagnitude(ofSecond, largerMagnitude(ofThird, ofLast));
        most = largerMagnitude(largerMagnitude(most, ofFirst), others);
      }
      most = f32x4.pmax(most, v128.shuffle<i64>(most, most, 1, 0));
    } else {
      const frame = v128.load64_zero(frameAt(frames, n));
      const difference = f32x4.abs(differences(previous, frame));
      const both = v128.shuffle<i64>(difference, difference, 0, 0);
      most = openFrames == 0 ? both : f32x4.pmax(v128.load(openMost), both);
      previous = v128.shuffle<i64>(previous, frame, 1, 2);
      openFrames = (openFrames + 1) & (GROUP - 1);
      n += 1;
      v128.store(openMost, most);
      if (openFrames != 0) continue;
    }
    const larger = f32x4.pmax(most, last);
    const smaller = f32x4.mul(f32x4.pmin(most, last), contrast);
    if (v128.any_true(f32x4.ge(larger, f32x4.pmax(smaller, least)))) mark(n - GROUP);
    last = most;
  }
  v128.store(lastMost, last);
  judgeMarked(frames, count);
  keepPast(frames, count);
}

/** Second differences of two frames, those before the last two of the four. */
// @ts-ignore: decorator
@inline
function differences(previous: v128, pair: v128): v128 {
  const middle = v128.shuffle<i64>(previous, pair, 1, 2);
  return f32x4.sub(f32x4.add(previous, pair), f32x4.add(middle, middle));
}

function mark(start: i32): void {
  store<i32>(marked + (<usize>markedCount << 2), start);
  markedCount += 1;
}

/** Judges the frames of marked groups and of those before them, as far as what follows is there. */
function judgeMarked(frames: usize, count: i32): void {
  let judged = 0;
  for (; judged < markedCount; judged++) {
    const start = load<i32>(marked + (<usize>judged << 2));
    // A group's differences are of the frames before those that it takes.
    const until = start + GROUP - 1;
    if (until + REACH + 1 > count) break;
    for (let n = max<i32>(start - GROUP - 1, judgedUntil); n < until; n++) {
      judge(frames, n, 0);
      judge(frames, n, 1);
    }
    judgedUntil = until;
  }
  markedCount -= judged;
  for (let place = 0; place < markedCount; place++) {
    const start = load<i32>(marked + (<usize>(place + judged) << 2));
    store<i32>(marked + (<usize>place << 2), start - count);
  }
  judgedUntil = max<i32>(judgedUntil - count, -PAST);
  framesBefore += <f64>count;
}

function judge(frames: usize, n: i32, channel: usize): void {
  const difference = differenceAt(frames, n, channel);
  if (difference < leastDifference) return;
  for (let distance = 1; distance <= NEAR; distance++) {
    if (differenceAt(frames, n - distance, channel) >= difference) return;
    if (differenceAt(frames, n + distance, channel) > difference) return;
  }
  const before = differenceAt(frames, n - 1, channel);
  const beside = max<f64>(before, differenceAt(frames, n + 1, channel));
  if (beside < BESIDE * difference) return;
  let around: f64 = 0;
  for (let distance = NEAR + 1; distance <= REACH; distance++) {
    around = max<f64>(around, differenceAt(frames, n - distance, channel));
    around = max<f64>(around, differenceAt(frames, n + distance, channel));
  }
  if (difference < ISOLATION * around) return;
  const at = jumps + (<usize>jumpCount << 5);
  store<f64>(at, framesBefore + <f64>n);
  store<f64>(at, <f64>channel, 8);
  store<f64>(at, difference, 16);
  store<f64>(at, around, 24);
  jumpCount += 1;
}

function differenceAt(frames: usize, n: i32, channel: usize): f64 {
  return abs(
    sampleAt(frames, n - 1, channel) -
      2 * sampleAt(frames, n, channel) +
      sampleAt(frames, n + 1, channel));
}

function sampleAt(frames: usize, n: i32, channel: usize): f64 {
  const at = n < 0 ? frameAt(pastFrames, PAST + n) : frameAt(frames, n);
  return <f64>load<f32>(at + (channel << 2));
}

/** Keeps the last of the frames. */
function keepPast(frames: usize, count: i32): void {
  const kept = max<i32>(PAST - count, 0);
  for (let n = 0; n < kept; n++) {
    store<i64>(frameAt(pastFrames, n), load<i64>(frameAt(pastFrames, n + count)));
  }
  for (let n = kept; n < PAST; n++) {
    store<i64>(frameAt(pastFrames, n), load<i64>(frameAt(frames, n + count - PAST)));
  }
}
