import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Metres } from '../units.js';
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
  const { depthOpenSlew, depthCloseSlew, baseWidth, depthMax, bottomRadius } = side.settings;
  const base = baseWidth / 2;
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
    halfWidth[node] = Math.min(halfWidth[node]!, Math.max(base, cap[node]!));
  }
  return halfWidth;
}

/** The base half-width throughout: a machine without automation has none for depth. */
export function fixedDepth({ count, settings }: PlannedSide): Float64Array {
  return new Float64Array(count + 1).fill(settings.baseWidth / 2);
}

/**
 * h(t) + h(t − T) at the start of each planned quarter and at the end of the last; linear between.
 * @param before half-width before the planned quarters
 */
export function facingHalfWidths(halfWidth: Float64Array, before: Metres): Float64Array {
  return halfWidth.map((now, node) => {
    const outer = node - QUARTERS_PER_TURN;
    return now + (outer < 0 ? before : halfWidth[outer]!);
  });
}

function quarterNeed({ settings, liftMax, lateralMax }: PlannedSide, gain: number): Float64Array {
  const { baseWidth, widthMin, depthTolerance, widthPerLateral } = settings;
  return liftMax.map((lift, quarter) =>
    Math.max(
      baseWidth / 2,
      widthMin / 2 + depthTolerance + gain * lift,
      baseWidth / 2 + (widthPerLateral * gain * lateralMax[quarter]!) / 2,
    ),
  );
}

/** A node takes the stricter of the two quarters that meet there; the ends have one. */
function nodesOf(
  quarters: Float64Array,
  stricter: (before: number, after: number) => number,
): Float64Array {
  const nodes = new Float64Array(quarters.length + 1);
  for (let node = 0; node < nodes.length; node++) {
    const before = quarters[Math.max(0, node - 1)]!;
    const after = quarters[Math.min(node, quarters.length - 1)]!;
    nodes[node] = stricter(before, after);
  }
  return nodes;
}
