import { convertAny, setAny } from './any-source';
import { countRuns, setClipping } from './clipping';
import { followSilence } from './silence';
import { exchanged, frameAt } from './vector';

/** Frames taken at a time, so that what is in hand stays in the nearest cache. */
export const CHUNK_FRAMES: i32 = 1024;
/** Frames that the host may hand over at once, so that no table of results overflows. */
export const SOURCE_FRAMES: i32 = 65536;
/** Bytes of as many frames in the widest format, two channels of 64 bits. */
const SOURCE_CAPACITY: i32 = SOURCE_FRAMES * 16;

/** Raw frames as the host wrote them; spare bytes before and after, for reading 24 bits as 32. */
const spare: usize = memory.data(SOURCE_CAPACITY + 64, 16);
export const sourceBytes: usize = spare + 16;

/**
 * Σx, Σx², Σ left·right, max |x|: two lanes each. Behind them, for words, Σx of left and of right,
 * Σx² likewise and Σ left·right: of the frames that are every other from the next one on, and of
 * those between.
 */
export const sums: usize = memory.data(64 + 80, 16);
export let identical: bool = true;

/** The same frames as doubles, where more than 24 bits count. */
const doubles: usize = memory.data(CHUNK_FRAMES * 16, 16);

/** Full scale of a word that lies in the upper bytes of 32 bits. */
const WORD: f64 = 2147483648;
/** Its inverse, f32 in all lanes. */
const wordShare: usize = memory.data(16, 16);

let bytesPerSample: i32 = 0;
let isFloat: bool = false;
let channels: i32 = 2;
let sampleLimit: f64 = 1;

export function setSource(float: bool, bits: i32, channelCount: i32, full: f64, limit: f64): void {
  isFloat = float;
  bytesPerSample = bits >> 3;
  channels = channelCount;
  sampleLimit = limit;
  v128.store(wordShare, f32x4.splat(<f32>(1 / WORD)));
  setAny(float, bytesPerSample, channelCount);
  setClipping(float, full);
}

export function bytesPerFrame(): i32 {
  return bytesPerSample * channels;
}

/**
 * Converts raw frames and adds them to the sums.
 * @param out room for one frame more
 * @returns the first frame of these that is not finite or too large; −1 if all are fit
 */
export function convertFrames(address: usize, count: i32, out: usize): i32 {
  const isWord = !isFloat && channels == 2;
  let largest: v128;
  if (isWord && bytesPerSample == 3) {
    largest = convertWords(address, count, out, 3);
  } else if (isWord && bytesPerSample == 2) {
    largest = convertWords(address, count, out, 2);
  } else {
    convertAny(address, count, doubles);
    const unfit = isFloat ? firstUnfit(count) : -1;
    if (unfit >= 0) return unfit;
    largest = sumDoubles(count);
    for (let n = 0; n < count; n++) {
      const narrow = f32x4.demote_f64x2_zero(v128.load(doubles + (<usize>n << 4)));
      v128.store64_lane(frameAt(out, n), narrow, 0);
    }
  }
  v128.store(sums, f64x2.pmax(v128.load(sums, 48), largest), 48);
  const isExact = isWord && bytesPerSample < 4;
  countRuns(largest, out, doubles, count, isExact);
  followSilence(!v128.any_true(largest), out, doubles, count, isExact);
  return -1;
}

/** Two frames of words, moved to the upper bytes of 32 bits. */
// @ts-ignore: decorator
@inline
function wordsAt(address: usize, bytes: i32): v128 {
  if (bytes == 2) return i32x4.shl(v128.load16x4_s(address), 16);
  return v128.swizzle(
    v128.load(address), i8x16(-1, 0, 1, 2, -1, 3, 4, 5, -1, 6, 7, 8, -1, 9, 10, 11));
}

/**
 * The commonest premasters, 24 or 16 bits and two channels: two frames from one load. The sums are
 * those of whole words, a power of two more than those of samples, until they are handed out.
 * @returns the largest magnitudes
 */
// @ts-ignore: decorator
@inline
function convertWords(address: usize, count: i32, frames: usize, bytes: i32): v128 {
  const sample = v128.load(wordShare);
  // Every other frame apart, a lane each.
  let lefts = v128.load(sums, 64);
  let rights = v128.load(sums, 80);
  let leftSquares = v128.load(sums, 96);
  let rightSquares = v128.load(sums, 112);
  let cross = v128.load(sums, 128);
  let largest = i32x4.splat(0);
  let out = frames;
  for (const end = frameAt(frames, count); out < end; out += 16) {
    let pair = wordsAt(address, bytes);
    address += 4 * bytes;
    v128.store(out, f32x4.mul(f32x4.convert_i32x4_s(pair), sample));
    // Nothing is added for a frame that there is not.
    if (end - out == 8) pair = v128.and(pair, i64x2(-1, 0));
    largest = i32x4.max_u(largest, i32x4.abs(pair));
    const channels = v128.shuffle<i32>(pair, pair, 0, 2, 1, 3);
    const left = f64x2.convert_low_i32x4_s(channels);
    const right = f64x2.convert_low_i32x4_s(v128.shuffle<i64>(channels, channels, 1, 0));
    lefts = f64x2.add(lefts, left);
    rights = f64x2.add(rights, right);
    leftSquares = f64x2.add(leftSquares, f64x2.mul(left, left));
    rightSquares = f64x2.add(rightSquares, f64x2.mul(right, right));
    cross = f64x2.add(cross, f64x2.mul(left, right));
  }
  const word = f64x2.splat(1 / WORD);
  const squaredWord = f64x2.splat(1 / WORD / WORD);
  v128.store(sums, f64x2.mul(addedUp(lefts, rights), word), 0);
  v128.store(sums, f64x2.mul(addedUp(leftSquares, rightSquares), squaredWord), 16);
  v128.store(sums, f64x2.mul(addedUp(cross, cross), squaredWord), 32);
  const isOdd = (count & 1) != 0;
  keep(64, lefts, isOdd);
  keep(80, rights, isOdd);
  keep(96, leftSquares, isOdd);
  keep(112, rightSquares, isOdd);
  keep(128, cross, isOdd);
  if (identical) identical = areIdentical(frames, count);
  const most = i32x4.max_u(largest, v128.shuffle<i64>(largest, largest, 1, 0));
  return f64x2.mul(f64x2.convert_low_i32x4_u(most), f64x2.splat(1 / WORD));
}

/** What both lanes of left add up to, and of right. */
// @ts-ignore: decorator
@inline
function addedUp(left: v128, right: v128): v128 {
  return f64x2.add(v128.shuffle<f64>(left, right, 0, 2), v128.shuffle<f64>(left, right, 1, 3));
}

/** Keeps a sum; after an odd number of frames its lanes change places. */
function keep(offset: usize, sum: v128, isOdd: bool): void {
  v128.store(sums + offset, isOdd ? exchanged(sum) : sum);
}

/** True if the channels are the same. */
function areIdentical(frames: usize, count: i32): bool {
  let differing = i32x4.splat(0);
  for (let n = 0; n < count; n++) {
    const frame = v128.load64_zero(frameAt(frames, n));
    differing = v128.or(differing, v128.xor(frame, v128.shuffle<i32>(frame, frame, 1, 0, 3, 2)));
  }
  return !v128.any_true(differing);
}

function firstUnfit(count: i32): i32 {
  const limit = f64x2.splat(sampleLimit);
  for (let n = 0; n < count; n++) {
    const magnitude = f64x2.abs(v128.load(doubles + (<usize>n << 4)));
    if (!v128.all_true<i64>(f64x2.le(magnitude, limit))) return n;
  }
  return -1;
}

function sumDoubles(count: i32): v128 {
  let sum = v128.load(sums, 0);
  let square = v128.load(sums, 16);
  let cross = v128.load(sums, 32);
  let differing = f64x2.splat(0);
  let largest = f64x2.splat(0);
  for (let n = 0; n < count; n++) {
    const frame = v128.load(doubles + (<usize>n << 4));
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
  if (v128.any_true(differing)) identical = false;
  return largest;
}
