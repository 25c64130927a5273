import type { Settings } from '../settings.js';
import { closeLate, openEarly } from './slew.js';

/**
 * The base half-width as it can be cut, at the start of each planned quarter and at the end of the
 * last: never under what is asked for, opening early and closing late by the slews of the depth.
 * @param quarters what is asked for, per quarter, m
 */
export function easedBase(quarters: Float64Array, settings: Settings): Float64Array {
  const nodes = nodesOver(quarters);
  openEarly(nodes, settings.depthOpenSlew);
  closeLate(nodes, settings.depthCloseSlew);
  return nodes;
}

/** A node takes the larger of the two quarters that meet there; the ends have one. */
export function nodesOver(quarters: Float64Array): Float64Array {
  const nodes = new Float64Array(quarters.length + 1);
  nodes.set(quarters, 1);
  nodes[0] = quarters[0]!;
  for (let node = 0; node < quarters.length; node++) {
    if (quarters[node]! > nodes[node]!) nodes[node] = quarters[node]!;
  }
  return nodes;
}

/** A node takes the smaller of the two, likewise. */
export function nodesUnder(quarters: Float64Array): Float64Array {
  const nodes = new Float64Array(quarters.length + 1);
  nodes.set(quarters, 1);
  nodes[0] = quarters[0]!;
  for (let node = 0; node < quarters.length; node++) {
    if (quarters[node]! < nodes[node]!) nodes[node] = quarters[node]!;
  }
  return nodes;
}
