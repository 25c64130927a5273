import { nodesOver, nodesUnder } from './eased-base.js';
import { halfWidthAt } from './groove.js';
import type { PlannedSide } from './planned-side.js';
import { closeLate, easeCap, openEarly } from './slew.js';

/**
 * Half-width at the start of each planned quarter and at the end of the last; linear between,
 * since a step would be heard.
 * Need of a quarter: widthMin/2 + depthTolerance + g·lift, and baseWidth/2 + f·g·lateral/2, never
 * under baseWidth/2; h = min(slewed need, max(baseWidth/2, eased cap)), where the cap keeps the cut
 * within depthMax. What the cap leaves unmet shows as a width under widthMin.
 * @param gain the level as a factor, g
 */
export function planDepth(side: PlannedSide, gain: number): Float64Array {
  const { depthOpenSlew, depthCloseSlew, depthMax, bottomRadius } = side.settings;
  const base = side.baseNodes;
  const halfWidth = nodesOver(quarterNeed(side, gain));
  openEarly(halfWidth, depthOpenSlew);
  closeLate(halfWidth, depthCloseSlew);

  const cap = nodesUnder(quarterCap(side, halfWidthAt(depthMax, bottomRadius), gain));
  easeCap(cap, depthOpenSlew, depthCloseSlew);
  for (let node = 0; node < halfWidth.length; node++) {
    let most = base[node]!;
    if (cap[node]! > most) most = cap[node]!;
    if (most < halfWidth[node]!) halfWidth[node] = most;
  }
  return halfWidth;
}

/** The base half-width throughout: a machine without automation has none for depth. */
export function fixedDepth({ baseNodes }: PlannedSide): Float64Array {
  return Float64Array.from(baseNodes);
}

function quarterNeed(
  { settings, baseHalfWidth, liftMax, lateralMax }: PlannedSide,
  gain: number,
): Float64Array {
  const { widthMin, depthTolerance, widthPerLateral } = settings;
  const least = widthMin / 2 + depthTolerance;
  const need = Float64Array.from(baseHalfWidth);
  for (let quarter = 0; quarter < need.length; quarter++) {
    const lifted = least + gain * liftMax[quarter]!;
    const swung = baseHalfWidth[quarter]! + (widthPerLateral * gain * lateralMax[quarter]!) / 2;
    if (lifted > need[quarter]!) need[quarter] = lifted;
    if (swung > need[quarter]!) need[quarter] = swung;
  }
  return need;
}

/** Half-width whose cut is as deep as it may be where the sound sinks deepest. */
function quarterCap({ sinkMax }: PlannedSide, deepest: number, gain: number): Float64Array {
  const cap = new Float64Array(sinkMax.length);
  for (let quarter = 0; quarter < cap.length; quarter++) {
    cap[quarter] = deepest - gain * sinkMax[quarter]!;
  }
  return cap;
}
