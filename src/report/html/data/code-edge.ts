import { integerCoder, lengthOf } from './integer-coder.js';
import type { BitCoder } from './range-coder.js';

/** Steps a metre, 15 nm each: a twentieth of a pixel under the microscope. */
const STEPS = 2 ** 26;
/** Longer ones, 2 m, are no edge of a groove; their second differences have to fit 31 bits. */
const MOST_STEPS = 2 ** 27;

/** An edge in steps. @param edge m */
export function edgeSteps(edge: Float32Array): Int32Array {
  return Int32Array.from(edge, (metres) =>
    Math.min(MOST_STEPS, Math.max(-MOST_STEPS, Math.round(metres * STEPS))),
  );
}

export function edgeOfSteps(steps: Int32Array): Float32Array {
  return Float32Array.from(steps, (step) => step / STEPS);
}

/**
 * Codes edges in place, each sample by how far it lies off the line through the two before: little,
 * since an edge is smooth.
 */
export function codeEdges(coder: BitCoder, edges: readonly Int32Array[]): void {
  const code = integerCoder(coder, 32);
  for (const edge of edges) {
    let [before, last, off] = [0, 0, 0];
    for (const at of edge.keys()) {
      const foretold = 2 * last - before;
      off = code(lengthOf(Math.abs(off)), (edge[at] ?? 0) - foretold);
      edge[at] = foretold + off;
      [before, last] = [last, edge[at] ?? 0];
    }
  }
}
