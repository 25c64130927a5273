import { lookAtRing, peakNear } from './interpolate';
import { anyLarger, firstOf, frameAt, largerFrame } from './vector';
import { boundsAt, floorOf, mayPeak, PEAK_POWER } from './wall-peaks';

/** Largest magnitude so far, left and right. */
export const truePeaks: usize = memory.data(16, 16);

/** Frames that share one look; an even number. */
const STRIDE: i32 = 32;

/** Looks at the frames from … until of a buffer that holds eight more on each side; an even number. */
export function seekTruePeak(buffer: usize, from: i32, until: i32): void {
  for (let start = from; start < until; start += STRIDE) {
    const stop = min<i32>(start + STRIDE, until);
    let most = f32x4.splat(0);
    let least = most;
    for (let n = start; n < stop; n += 2) {
      const pair = v128.load(frameAt(buffer, n));
      most = f32x4.pmax(most, pair);
      least = f32x4.pmin(least, pair);
    }
    most = f32x4.pmax(most, f32x4.neg(least));
    const reach = f64x2.mul(f64x2.splat(Math.sqrt(PEAK_POWER)), firstOf(largerFrame(most)));
    if (!anyLarger(reach, v128.load(truePeaks))) continue;
    for (let n = start; n < stop; n += 2) seekAt(buffer, n);
  }
}

function seekAt(buffer: usize, n: i32): void {
  const larger = i32x4.bitmask(f32x4.gt(boundsAt(frameAt(buffer, n)), floorOf(truePeaks)));
  if ((larger & 1) != 0) seekBeside(buffer, n, 0);
  if ((larger & 2) != 0) seekBeside(buffer, n, 1);
  if ((larger & 4) != 0) seekBeside(buffer, n + 1, 0);
  if ((larger & 8) != 0) seekBeside(buffer, n + 1, 1);
}

function seekBeside(buffer: usize, n: i32, channel: i32): void {
  const at = frameAt(buffer, n) + (<usize>channel << 2);
  const out = truePeaks + (<usize>channel << 3);
  store<f64>(out, max<f64>(load<f64>(out), abs(<f64>load<f32>(at))));
  if (!mayPeak(at - 16, load<f64>(out))) return;
  const sign: f64 = load<f32>(at) < 0 ? -1 : 1;
  lookAtRing(buffer, -1, channel == 0 ? sign : 0, channel == 0 ? 0 : sign, n, 2);
  store<f64>(out, max<f64>(load<f64>(out), peakNear(n)));
}
