import { lookAtRing, peakNear } from './interpolate';
import { anyLarger, frameAt } from './vector';
import { PEAK_SHARE } from './walls';

/** Largest magnitude so far, left and right. */
export const truePeaks: usize = memory.data(16, 16);

/** Looks at the frames from … until of a buffer that holds six more on each side. */
export function seekTruePeak(buffer: usize, from: i32, until: i32): void {
  let best = v128.load(truePeaks);
  let before = v128.load(frameAt(buffer, from - 1));
  let at = v128.load(frameAt(buffer, from));
  const share = f64x2.splat(PEAK_SHARE);
  for (let n = from; n < until; n++) {
    const after = v128.load(frameAt(buffer, n + 1));
    const curvature = f64x2.abs(f64x2.sub(f64x2.add(at, at), f64x2.add(before, after)));
    const bound = f64x2.add(f64x2.abs(at), f64x2.mul(share, curvature));
    if (anyLarger(bound, best)) {
      seekAt(buffer, n, 0);
      seekAt(buffer, n, 1);
      best = v128.load(truePeaks);
    }
    before = at;
    at = after;
  }
}

function seekAt(buffer: usize, n: i32, channel: i32): void {
  const offset = <usize>channel << 3;
  const at = frameAt(buffer, n) + offset;
  const value = load<f64>(at);
  const sign: f64 = value < 0 ? -1 : 1;
  const magnitude = sign * value;
  let best = max<f64>(load<f64>(truePeaks + offset), magnitude);
  if (magnitude >= sign * load<f64>(at - 16) && magnitude > sign * load<f64>(at + 16)) {
    lookAtRing(buffer, -1, channel == 0 ? sign : 0, channel == 0 ? 0 : sign);
    best = max<f64>(best, peakNear(n));
  }
  store<f64>(truePeaks + offset, best);
}
