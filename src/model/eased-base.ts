import type { Settings } from '../settings.js';
import { closeLate, openEarly } from './slew.js';

/**
 * The base half-width as it can be cut, at the start of each planned quarter and at the end of the
 * last: never under what is asked for, opening early and closing late by the slews of the depth.
 * @param quarters what is asked for, per quarter, m
 */
export function easedBase(quarters: Float64Array, settings: Settings): Float64Array {
  const nodes = new Float64Array(quarters.length + 1);
  nodes.set(quarters);
  toNodesOver(nodes);
  openEarly(nodes, settings.depthOpenSlew);
  closeLate(nodes, settings.depthCloseSlew);
  return nodes;
}

/**
 * Makes nodes of quarters, in place: a node takes the larger of the two quarters that meet there; the
 * ends have one.
 * @param row the quarters, and room for one node more
 */
export function toNodesOver(row: Float64Array): void {
  const last = row.length - 1;
  row[last] = row[last - 1]!;
  for (let node = last - 1; node > 0; node--) {
    if (row[node - 1]! > row[node]!) row[node] = row[node - 1]!;
  }
}

/** A node takes the smaller of the two, likewise. */
export function toNodesUnder(row: Float64Array): void {
  const last = row.length - 1;
  row[last] = row[last - 1]!;
  for (let node = last - 1; node > 0; node--) {
    if (row[node - 1]! < row[node]!) row[node] = row[node - 1]!;
  }
}
