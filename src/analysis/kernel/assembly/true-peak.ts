import { lookAtRing, peakNear } from './interpolate';
import { anyLarger, frameAt } from './vector';
import { PEAK_SHARE } from './walls';

/** Largest magnitude so far, left and right. */
export const truePeaks: usize = memory.data(16, 16);

/** Frames that share one look. */
const STRIDE: i32 = 32;

/** Looks at the frames from … until of a buffer that holds six more on each side. */
export function seekTruePeak(buffer: usize, from: i32, until: i32): void {
  const share = f64x2.splat(PEAK_SHARE);
  let before = v128.load(frameAt(buffer, from - 1));
  let at = v128.load(frameAt(buffer, from));
  for (let start = from; start < until; start += STRIDE) {
    const stop = min<i32>(start + STRIDE, until);
    let most = f64x2.splat(0);
    for (let n = start; n < stop; n++) {
      const after = v128.load(frameAt(buffer, n + 1));
      const curvature = f64x2.abs(f64x2.sub(f64x2.add(at, at), f64x2.add(before, after)));
      most = f64x2.pmax(most, f64x2.add(f64x2.abs(at), f64x2.mul(share, curvature)));
      before = at;
      at = after;
    }
    if (!anyLarger(most, v128.load(truePeaks))) continue;
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
  if (magnitude + PEAK_SHARE * abs(2 * magnitude - around) <= best) {
    store<f64>(truePeaks + offset, best);
    return;
  }
  if (magnitude >= sign * load<f64>(at - 16) && magnitude > sign * load<f64>(at + 16)) {
    lookAtRing(buffer, -1, channel == 0 ? sign : 0, channel == 0 ? 0 : sign);
    best = max<f64>(best, peakNear(n));
  }
  store<f64>(truePeaks + offset, best);
}
