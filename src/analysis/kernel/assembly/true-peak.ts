import { lookAtRing, peakNear } from './interpolate';
import { anyLarger, frameAt } from './vector';
import { PEAK_POWER, PEAK_SHARE } from './walls';

/** Largest magnitude so far, left and right. */
export const truePeaks: usize = memory.data(16, 16);

/** Frames that share one look. */
const STRIDE: i32 = 32;

/** Looks at the frames from … until of a buffer that holds six more on each side. */
export function seekTruePeak(buffer: usize, from: i32, until: i32): void {
  for (let start = from; start < until; start += STRIDE) {
    const stop = min<i32>(start + STRIDE, until);
    let most = f64x2.splat(0);
    for (let n = start; n < stop; n++) {
      most = f64x2.pmax(most, f64x2.abs(v128.load(frameAt(buffer, n))));
    }
    const best = v128.load(truePeaks);
    const reach = f64x2.mul(f64x2.splat(PEAK_POWER), f64x2.mul(most, most));
    if (!anyLarger(reach, f64x2.mul(best, best))) continue;
    for (let n = start; n < stop; n++) {
      seekAt(buffer, n, 0);
      seekAt(buffer, n, 1);
    }
  }
}

function seekAt(buffer: usize, n: i32, channel: i32): void {
  const offset = <usize>channel << 3;
  const at = frameAt(buffer, n) + offset;
  const value = load<f64>(at);
  const sign: f64 = value < 0 ? -1 : 1;
  const magnitude = sign * value;
  let best = max<f64>(load<f64>(truePeaks + offset), magnitude);
  const around = sign * (load<f64>(at - 16) + load<f64>(at + 16));
  const mayBeHigher = magnitude + PEAK_SHARE * (2 * magnitude - around) > best;
  if (mayBeHigher && magnitude >= sign * load<f64>(at - 16) && magnitude > sign * load<f64>(at + 16)) {
    lookAtRing(buffer, -1, channel == 0 ? sign : 0, channel == 0 ? 0 : sign);
    best = max<f64>(best, peakNear(n));
  }
  store<f64>(truePeaks + offset, best);
}
