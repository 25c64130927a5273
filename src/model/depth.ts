import { nodesOf } from './eased-base.js';
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
  const halfWidth = nodesOf(quarterNeed(side, gain), Math.max);
  openEarly(halfWidth, depthOpenSlew);
  closeLate(halfWidth, depthCloseSlew);

  const deepest = halfWidthAt(depthMax, bottomRadius);
  const cap = nodesOf(
    side.sinkMax.map((sink) => deepest - gain * sink),
    Math.min,
  );
  easeCap(cap, depthOpenSlew, depthCloseSlew);
  for (let node = 0; node < halfWidth.length; node++) {
    halfWidth[node] = Math.min(halfWidth[node]!, Math.max(base[node]!, cap[node]!));
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
  return liftMax.map((lift, quarter) => {
    const base = baseHalfWidth[quarter]!;
    return Math.max(
      base,
      widthMin / 2 + depthTolerance + gain * lift,
      base + (widthPerLateral * gain * lateralMax[quarter]!) / 2,
    );
  });
}
