import { exchanged, frameAt } from './vector';

/** Frames taken at a time, so that what is in hand stays in the nearest cache. */
export const CHUNK_FRAMES: i32 = 1024;
/** Frames that the host may hand over at once, so that no table of results overflows. */
export const SOURCE_FRAMES: i32 = 32768;
/** Bytes of as many frames in the widest format, two channels of 64 bits. */
const SOURCE_CAPACITY: i32 = SOURCE_FRAMES * 16;

/** Raw frames as the host wrote them; four spare bytes before, for reading 24 bits as 32. */
const spare: usize = memory.data(SOURCE_CAPACITY + 64, 16);
export const sourceBytes: usize = spare + 16;

/** Σx, Σx², Σ left·right, max |x|: two lanes each. */
export const sums: usize = memory.data(64, 16);
export let clippedRuns: f64 = 0;
export let firstClipFrame: f64 = -1;
export let identical: bool = true;

const CLIPPED_RUN: i32 = 3;
/** The frame before, for a run in float. */
const before: usize = memory.data(16, 16);

let bytesPerSample: i32 = 0;
let isFloat: bool = false;
let channels: i32 = 2;
let scale: f64 = 1;
let fullScale: f64 = 1;
let sampleLimit: f64 = 1;
let leftRun: i32 = 0;
let rightRun: i32 = 0;
let framesDone: f64 = 0;

export function setSource(float: bool, bits: i32, channelCount: i32, full: f64, limit: f64): void {
  isFloat = float;
  bytesPerSample = bits >> 3;
  channels = channelCount;
  scale = Math.pow(2, 1 - <f64>bits);
  fullScale = full;
  sampleLimit = limit;
}

export function bytesPerFrame(): i32 {
  return bytesPerSample * channels;
}

// @ts-ignore: decorator
@inline
function sampleAt(address: usize): f64 {
  if (isFloat) return bytesPerSample == 4 ? <f64>load<f32>(address) : load<f64>(address);
  if (bytesPerSample == 3) return <f64>(load<i32>(address - 1) >> 8) * scale;
  if (bytesPerSample == 2) return <f64>load<i16>(address) * scale;
  if (bytesPerSample == 4) return <f64>load<i32>(address) * scale;
  return <f64>(<i32>load<u8>(address) - 128) * scale;
}

/**
 * The commonest premaster, 24 bits and two channels: two frames from one load, their words moved to
 * the upper bytes of 32 bits.
 */
function convertStereo24(address: usize, count: i32, out: usize): void {
  const scales = f64x2.splat(scale / 256);
  for (let n = 0; n < count; n += 2) {
    const bytes = v128.load(address + <usize>(n * 6));
    const words = v128.swizzle(
      bytes, i8x16(-1, 0, 1, 2, -1, 3, 4, 5, -1, 6, 7, 8, -1, 9, 10, 11));
    const second = v128.shuffle<i64>(words, words, 1, 0);
    v128.store(frameAt(out, n), f64x2.mul(f64x2.convert_low_i32x4_s(words), scales));
    v128.store(frameAt(out, n + 1), f64x2.mul(f64x2.convert_low_i32x4_s(second), scales));
  }
}

function convertAny(address: usize, count: i32, out: usize): void {
  const rightOffset: usize = channels == 2 ? <usize>bytesPerSample : 0;
  const step = <usize>bytesPerFrame();
  for (let n = 0; n < count; n++) {
    const at = address + <usize>n * step;
    v128.store(frameAt(out, n), f64x2(sampleAt(at), sampleAt(at + rightOffset)));
  }
}

/**
 * Converts raw frames and adds them to the sums.
 * @param out room for one frame more
 * @returns the first frame of these that is not finite or too large; −1 if all are fit
 */
export function convertFrames(address: usize, count: i32, out: usize): i32 {
  if (bytesPerSample == 3 && channels == 2) convertStereo24(address, count, out);
  else convertAny(address, count, out);
  if (isFloat) {
    const unfit = firstUnfit(out, count);
    if (unfit >= 0) return unfit;
  }
  sumFrames(out, count);
  framesDone += <f64>count;
  return -1;
}

function firstUnfit(frames: usize, count: i32): i32 {
  const limit = f64x2.splat(sampleLimit);
  for (let n = 0; n < count; n++) {
    const magnitude = f64x2.abs(v128.load(frameAt(frames, n)));
    if (!v128.all_true<i64>(f64x2.le(magnitude, limit))) return n;
  }
  return -1;
}

function sumFrames(frames: usize, count: i32): void {
  let sum = v128.load(sums, 0);
  let square = v128.load(sums, 16);
  let cross = v128.load(sums, 32);
  let differing = f64x2.splat(0);
  let largest = f64x2.splat(0);
  for (let n = 0; n < count; n++) {
    const frame = v128.load(frameAt(frames, n));
    const other = exchanged(frame);
    sum = f64x2.add(sum, frame);
    square = f64x2.add(square, f64x2.mul(frame, frame));
    cross = f64x2.add(cross, f64x2.mul(frame, other));
    largest = f64x2.pmax(largest, f64x2.abs(frame));
    differing = v128.or(differing, f64x2.ne(frame, other));
  }
  v128.store(sums, sum, 0);
  v128.store(sums, square, 16);
  v128.store(sums, cross, 32);
  v128.store(sums, f64x2.pmax(v128.load(sums, 48), largest), 48);
  if (v128.any_true(differing)) identical = false;
  const mayClip = v128.any_true(f64x2.ge(largest, f64x2.splat(fullScale)));
  if (mayClip || (leftRun | rightRun) != 0) countRuns(frames, count);
}

/** Follows the runs at full scale through frames that may hold some; in float only plateaus. */
function countRuns(frames: usize, count: i32): void {
  const full = f64x2.splat(fullScale);
  let previous = v128.load(before);
  for (let n = 0; n < count; n++) {
    const frame = v128.load(frameAt(frames, n));
    const clipped = i64x2.bitmask(f64x2.ge(f64x2.abs(frame), full));
    const level = isFloat ? i64x2.bitmask(f64x2.eq(frame, previous)) : 3;
    leftRun = countRun((clipped & 1) != 0, (level & 1) != 0 ? leftRun + 1 : 1, n);
    rightRun = countRun((clipped & 2) != 0, (level & 2) != 0 ? rightRun + 1 : 1, n);
    previous = frame;
  }
  v128.store(before, previous);
}

function countRun(clipped: bool, run: i32, n: i32): i32 {
  if (!clipped) return 0;
  if (run == CLIPPED_RUN) {
    if (clippedRuns == 0) firstClipFrame = framesDone + <f64>(n - CLIPPED_RUN + 1);
    clippedRuns += 1;
  }
  return run;
}
