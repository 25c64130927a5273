import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeFrom, toPlanes } from '../../../../src/report/html/data/byte-planes.js';
import { edgeColumn, readEdge } from '../../../../src/report/html/data/edge-columns.js';

/** Half a step. */
const NEAR = 2 ** -29;

function through(edge: Float32Array): Float32Array {
  return readEdge(takeFrom(toPlanes([edgeColumn(edge)])), edge.length);
}

describe('the edges that a page keeps', () => {
  it('come back within two nanometres, as rough as they may be', () => {
    const lengths = { min: Math.fround(-0.01), max: Math.fround(0.01), noNaN: true };
    const property = (edge: Float32Array) => {
      expect(through(edge)).toBeWithin(edge, NEAR, 2 ** -24);
    };
    fc.assert(fc.property(fc.float32Array({ ...lengths, maxLength: 50 }), property));
  });

  it('take two bytes a sample at most where they are smooth', () => {
    const edge = Float32Array.from({ length: 700 }, (_, at) => 50e-6 * Math.sin(at / 30));
    expect(Math.max(...edgeColumn(edge).subarray(2))).toBeLessThan(2 ** 16);
  });
});
