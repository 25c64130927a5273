import { toNodesOver, toNodesUnder } from './eased-base.js';
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
 * @param halfWidth becomes the result
 * @param cap as long; holds nothing that is wanted, then or later
 */
export function planDepth(
  side: PlannedSide,
  gain: number,
  halfWidth: Float64Array,
  cap: Float64Array,
): void {
  const { depthOpenSlew, depthCloseSlew, depthMax, bottomRadius } = side.settings;
  const base = side.baseNodes;
  setNeed(halfWidth, side, gain);
  toNodesOver(halfWidth);
  openEarly(halfWidth, depthOpenSlew);
  closeLate(halfWidth, depthCloseSlew);

  setCap(cap, side, halfWidthAt(depthMax, bottomRadius), gain);
  toNodesUnder(cap);
  easeCap(cap, depthOpenSlew, depthCloseSlew);
  for (let node = 0; node < halfWidth.length; node++) {
    let most = base[node]!;
    if (cap[node]! > most) most = cap[node]!;
    if (most < halfWidth[node]!) halfWidth[node] = most;
  }
}

/** The base half-width throughout: a machine without automation has none for depth. */
export function fixedDepth({ baseNodes }: PlannedSide, halfWidth: Float64Array): void {
  halfWidth.set(baseNodes);
}

function setNeed(
  need: Float64Array,
  { settings, baseHalfWidth, liftMax, lateralMax, count }: PlannedSide,
  gain: number,
): void {
  const { widthMin, depthTolerance, widthPerLateral } = settings;
  const least = widthMin / 2 + depthTolerance;
  need.set(baseHalfWidth);
  for (let quarter = 0; quarter < count; quarter++) {
    const lifted = least + gain * liftMax[quarter]!;
    const swung = baseHalfWidth[quarter]! + (widthPerLateral * gain * lateralMax[quarter]!) / 2;
    if (lifted > need[quarter]!) need[quarter] = lifted;
    if (swung > need[quarter]!) need[quarter] = swung;
  }
}

/** Half-width whose cut is as deep as it may be where the sound sinks deepest. */
function setCap(
  cap: Float64Array,
  { sinkMax, count }: PlannedSide,
  deepest: number,
  gain: number,
): void {
  for (let quarter = 0; quarter < count; quarter++) {
    cap[quarter] = deepest - gain * sinkMax[quarter]!;
  }
}
