import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { codeEdges, edgeOfSteps, edgeSteps } from '../../../../src/report/html/data/code-edge.js';
import { rangeDecoder, rangeEncoder } from '../../../../src/report/html/data/range-coder.js';

/** Half a step, and what a float32 is off by. */
const [NEAR, FLOAT] = [2 ** -27, 2 ** -24];

function through(edges: readonly Float32Array[]) {
  const coder = rangeEncoder();
  codeEdges(coder, edges.map(edgeSteps));
  const bytes = coder.finish();
  const read = edges.map(({ length }) => new Int32Array(length));
  codeEdges(rangeDecoder(bytes), read);
  return { bytes, read: read.map(edgeOfSteps) };
}

describe('the edges that a page keeps', () => {
  it('come back within eight nanometres, as rough as they may be', () => {
    const lengths = { min: -1, max: 1, noNaN: true };
    const property = (edges: Float32Array[]) => {
      for (const [at, edge] of through(edges).read.entries()) {
        expect(edge).toBeWithin(edges[at] ?? [], NEAR, FLOAT);
      }
    };
    fc.assert(fc.property(fc.array(fc.float32Array({ ...lengths, maxLength: 50 })), property));
  });

  it('take a byte a sample at most where they are smooth', () => {
    const edge = Float32Array.from({ length: 700 }, (_, at) => 50e-6 * Math.sin(at / 30));
    expect(through([edge]).bytes.length).toBeLessThan(700);
  });
});
