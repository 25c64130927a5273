import type { Settings } from '../settings.js';
import { closeLate, openEarly } from './slew.js';

/**
 * The base half-width as it can be cut, at the start of each planned quarter and at the end of the
 * last: never under what is asked for, opening early and closing late by the slews of the depth.
 * @param quarters what is asked for, per quarter, m
 */
export function easedBase(quarters: Float64Array, settings: Settings): Float64Array {
  const nodes = nodesOf(quarters, Math.max);
  openEarly(nodes, settings.depthOpenSlew);
  closeLate(nodes, settings.depthCloseSlew);
  return nodes;
}

/** A node takes the stricter of the two quarters that meet there; the ends have one. */
export function nodesOf(
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
