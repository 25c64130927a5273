import { isLocalMaximum, lookAtRing, peakNear, signalAt } from './interpolate';
import { anyLarger, firstOf, frameAt, largerFrame, wideFrame } from './vector';
import { PEAK_POWER, PEAK_SHARE } from './wall-peaks';

/** Largest magnitude so far, left and right. */
export const truePeaks: usize = memory.data(16, 16);

/** Frames that share one look; an even number. */
const STRIDE: i32 = 32;

/** Looks at the frames from … until of a buffer that holds eight more on each side; an even number. */
export function seekTruePeak(buffer: usize, from: i32, until: i32): void {
  for (let start = from; start < until; start += STRIDE) {
    const stop = min<i32>(start + STRIDE, until);
    let most = f32x4.splat(0);
    for (let n = start; n < stop; n += 2) {
      most = f32x4.pmax(most, f32x4.abs(v128.load(frameAt(buffer, n))));
    }
    const reach = f64x2.mul(f64x2.splat(Math.sqrt(PEAK_POWER)), firstOf(largerFrame(most)));
    if (!anyLarger(reach, v128.load(truePeaks))) continue;
    for (let n = start; n < stop; n++) seekAt(buffer, n);
  }
}

function seekAt(buffer: usize, n: i32): void {
  const at = frameAt(buffer, n);
  const frame = wideFrame(at);
  const beside = f64x2.add(wideFrame(at - 8), wideFrame(at + 8));
  const curvature = f64x2.abs(f64x2.sub(f64x2.add(frame, frame), beside));
  const bound = f64x2.add(f64x2.abs(frame), f64x2.mul(f64x2.splat(PEAK_SHARE), curvature));
  const larger = i64x2.bitmask(f64x2.gt(bound, v128.load(truePeaks)));
  if ((larger & 1) != 0) seekBeside(buffer, n, 0);
  if ((larger & 2) != 0) seekBeside(buffer, n, 1);
}

function seekBeside(buffer: usize, n: i32, channel: i32): void {
  const value = load<f32>(frameAt(buffer, n) + (<usize>channel << 2));
  const sign: f64 = value < 0 ? -1 : 1;
  lookAtRing(buffer, -1, channel == 0 ? sign : 0, channel == 0 ? 0 : sign, n, 2);
  const at = truePeaks + (<usize>channel << 3);
  const peak = isLocalMaximum(n) ? peakNear(n) : signalAt(n);
  store<f64>(at, max<f64>(load<f64>(at), peak));
}
