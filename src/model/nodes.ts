import type { Seconds } from '../units.js';
import type { PlannedSide } from './planned-side.js';

/** Program time in planned quarters from their start. */
export function quartersIn({ lead, quarterSeconds }: PlannedSide, atSeconds: Seconds): number {
  return lead + atSeconds / quarterSeconds;
}

/** A quantity that is linear between nodes, at a time; its ends go on for ever. */
export function valueAt(side: PlannedSide, nodes: Float64Array, atSeconds: Seconds): number {
  const last = nodes.length - 1;
  const position = Math.min(Math.max(quartersIn(side, atSeconds), 0), last);
  const node = Math.min(Math.floor(position), last - 1);
  return nodes[node]! + (nodes[node + 1]! - nodes[node]!) * (position - node);
}
