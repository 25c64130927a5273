import type { PageColumn, TakeColumn } from './byte-planes.js';

/** Steps a metre, 3.7 nm each: a hundredth of a pixel under the microscope. */
const STEPS = 2 ** 28;

/**
 * An edge in steps, each told by how far it lies off the line through the two before: small numbers,
 * since an edge is smooth; minus and plus in turn, so that small ones have few bits.
 * @param edge m, at most 2 m
 */
export function edgeColumn(edge: Float32Array): PageColumn {
  let [before, last] = [0, 0];
  return Uint32Array.from(edge, (metres) => {
    const step = Math.round(metres * STEPS);
    const off = step - (2 * last - before);
    [before, last] = [last, step];
    return off >= 0 ? 2 * off : -2 * off - 1;
  });
}

/** The edge again. */
export function readEdge(take: TakeColumn, samples: number): Float32Array {
  let [before, last] = [0, 0];
  return Float32Array.from(take.uint32(samples), (code) => {
    const off = code % 2 === 0 ? code / 2 : -(code + 1) / 2;
    const step = 2 * last - before + off;
    [before, last] = [last, step];
    return step / STEPS;
  });
}
