import { describe, expect, it } from 'vitest';
import { HISTOGRAM_CLASSES } from '../../../../src/analysis/motion.js';
import { takeFrom, toPlanes } from '../../../../src/report/html/data/byte-planes.js';
import {
  pooledColumns,
  pooledHistogram,
} from '../../../../src/report/html/data/pooled-histogram.js';

/** Two quarters, their largest samples in classes 5 and −3; one sample more from class to class. */
function histogram(first: number) {
  const counts = Uint32Array.from({ length: 2 * HISTOGRAM_CLASSES }, (_, entry) => first + entry);
  return { topClass: Int16Array.of(5, -3), counts };
}

function through(of: ReturnType<typeof histogram>, leastClass: number) {
  const planes = toPlanes(pooledColumns(of, leastClass));
  return { bytes: planes.length, back: pooledHistogram(takeFrom(planes), 2) };
}

describe('a pooled histogram', () => {
  it('tells the classes from the least one on apart, and keeps the sum', () => {
    const of = histogram(1);
    const { back } = through(of, 0);
    expect(back.topClass).toEqual(of.topClass);
    expect(back.counts.slice(0, 8)).toEqual(Uint32Array.of(1, 2, 3, 4, 5, 6, 0, 0));
    expect(back.counts[23]).toBe((24 * 25) / 2 - 21);
    const sum = (from: number) => back.counts.slice(from, from + 24).reduce((all, n) => all + n, 0);
    expect([sum(0), sum(24)]).toEqual([300, 876]);
    expect(back.counts.slice(24, 47)).toEqual(new Uint32Array(23));
  });

  it('is the same histogram where every class is asked for', () => {
    expect(through(histogram(7), -40).back).toEqual(histogram(7));
  });

  it('holds counts of more than two bytes, as a slow disc has them', () => {
    expect(through(histogram(70_000), -40).back).toEqual(histogram(70_000));
    expect(through(histogram(70_000), -40).bytes).toBeGreaterThan(through(histogram(7), -40).bytes);
  });

  it('of silence is empty', () => {
    const silent = { topClass: Int16Array.of(-64, -64), counts: new Uint32Array(48) };
    expect(through(silent, 0).back).toEqual(silent);
  });

  it('breaks off loudly where data are missing', () => {
    const planes = toPlanes(pooledColumns(histogram(1), 0)).slice(0, -1);
    expect(() => pooledHistogram(takeFrom(planes), 2)).toThrow(RangeError);
  });
});
