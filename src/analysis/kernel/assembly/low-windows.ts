import { forgetLow, lowCount, lowFirst, lowFrames, silenceLead, startLow } from './low-band';
import { spectrum, spectrumAt, transformWindow, WINDOW_FRAMES } from './low-transform';
import { exchanged, left, right } from './vector';

/** Most quarters between two visits of the host. */
const QUARTER_CAPACITY: i32 = 256;
/** Σ left·left, right·right, real and imaginary part of left·conj(right), and the strongest bin. */
const NUMBERS: i32 = 5;
export const lowQuarters: usize = memory.data(QUARTER_CAPACITY * NUMBERS * 8, 16);
export let lowQuarterCount: i32 = 0;

/** The first four of the quarter in hand. */
const sums: usize = memory.data(32, 16);

/** What each bin's power weighs. */
export const lowGains: usize = memory.data((WINDOW_FRAMES / 2 + 1) * 8, 16);
/** Power of both walls by bin, over the windows of the quarter in hand; one more is always 0. */
const powers: usize = memory.data((WINDOW_FRAMES / 2 + 2) * 8, 16);

let lastBin: i32 = 0;
let quarterFrames: f64 = 0;
let quarter: f64 = 0;
/** Windows of the quarter in hand that are measured: 0 or 1. */
let window: i32 = 0;

/**
 * @param lead decimated frames of the lead
 * @param firstFrame number of the decimated frame after it
 * @param length of a quarter, decimated frames
 * @param firstQuarter that is measured
 * @param last bin of the low band
 */
export function setLowBand(
  lead: i32, firstFrame: i32, length: f64, firstQuarter: f64, last: i32,
): void {
  startLow(lead, firstFrame);
  quarterFrames = length;
  quarter = firstQuarter;
  lastBin = last;
}

export function takeLowQuarters(): void {
  lowQuarterCount = 0;
}

/** Measures the windows whose frames are all there. */
export function followLow(): void {
  silenceLead();
  const end = lowFirst + lowCount;
  for (let from = windowStart(); from + WINDOW_FRAMES <= end; from = windowStart()) {
    transformWindow(lowFrames + (<usize>(from - lowFirst) << 4));
    addWindow();
    window = 1 - window;
    if (window == 0) endQuarter();
  }
  forgetLow();
}

/** A quarter's two windows are centred in its halves. */
function windowStart(): i32 {
  const centre = (quarter + (window == 0 ? 0.25 : 0.75)) * quarterFrames;
  return <i32>Math.round(centre) - WINDOW_FRAMES / 2;
}

function addWindow(): void {
  let power = f64x2.splat(0);
  let crossRe = power;
  let crossIm = power;
  for (let bin = 1; bin <= lastBin; bin++) {
    spectrumAt(bin);
    const re = v128.load(spectrum);
    const im = v128.load(spectrum, 16);
    const gain = v128.load64_splat(lowGains + (<usize>bin << 3));
    const own = f64x2.mul(gain, f64x2.add(f64x2.mul(re, re), f64x2.mul(im, im)));
    const otherRe = exchanged(re);
    const otherIm = exchanged(im);
    power = f64x2.add(power, own);
    crossRe = f64x2.add(
      crossRe, f64x2.mul(gain, f64x2.add(f64x2.mul(re, otherRe), f64x2.mul(im, otherIm))));
    crossIm = f64x2.add(
      crossIm, f64x2.mul(gain, f64x2.sub(f64x2.mul(im, otherRe), f64x2.mul(re, otherIm))));
    const at = powers + (<usize>bin << 3);
    store<f64>(at, load<f64>(at) + left(own) + right(own));
  }
  v128.store(sums, f64x2.add(v128.load(sums), power));
  const cross = v128.shuffle<f64>(crossRe, crossIm, 0, 2);
  v128.store(sums, f64x2.add(v128.load(sums, 16), cross), 16);
}

function endQuarter(): void {
  const out = lowQuarters + <usize>(lowQuarterCount * NUMBERS * 8);
  memory.copy(out, sums, 32);
  store<f64>(out, strongest(), 32);
  memory.fill(sums, 0, 32);
  memory.fill(powers, 0, (WINDOW_FRAMES / 2 + 2) * 8);
  quarter++;
  lowQuarterCount++;
}

/** The largest bin, between bins by the parabola through its neighbours; 0 without any. */
function strongest(): f64 {
  let top = 0;
  for (let bin = 1; bin <= min<i32>(lastBin, WINDOW_FRAMES / 2 - 1); bin++) {
    if (powerAt(bin) > powerAt(top)) top = bin;
  }
  if (top == 0) return 0;
  const before = powerAt(top - 1);
  const after = powerAt(top + 1);
  const curvature = 2 * powerAt(top) - before - after;
  const offset = curvature > 0 ? (after - before) / (2 * curvature) : 0;
  return <f64>top + max<f64>(-0.5, min<f64>(0.5, offset));
}

// @ts-ignore: decorator
@inline
function powerAt(bin: i32): f64 {
  return load<f64>(powers + (<usize>bin << 3));
}
