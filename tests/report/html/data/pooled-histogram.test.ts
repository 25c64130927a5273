import { describe, expect, it } from 'vitest';
import { HISTOGRAM_CLASSES, type Histogram } from '../../../../src/analysis/motion.js';
import {
  codeHistogram,
  pooledHistogram,
} from '../../../../src/report/html/data/pooled-histogram.js';
import { rangeDecoder, rangeEncoder } from '../../../../src/report/html/data/range-coder.js';
import { numberSteps } from '../../../../src/report/html/data/rounded.js';

/** Two quarters, their largest samples in classes 5 and −3; one sample more from class to class. */
function histogram(first: number): Histogram {
  const counts = Uint32Array.from({ length: 2 * HISTOGRAM_CLASSES }, (_, entry) => first + entry);
  return { topClass: Int16Array.of(5, -3), counts };
}

const PEAKS = Int32Array.of(numberSteps(2 ** (5.5 / 4)), numberSteps(2 ** (-2.5 / 4)));

function through(of: Histogram, leastClass: number, peaks = PEAKS) {
  const coder = rangeEncoder();
  codeHistogram(coder, pooledHistogram(of, leastClass), leastClass, peaks);
  const bytes = coder.finish();
  const back = {
    topClass: new Int16Array(of.topClass.length),
    counts: new Uint32Array(of.counts.length),
  };
  codeHistogram(rangeDecoder(bytes), back, leastClass, peaks);
  return { bytes: bytes.length, back };
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

  it('has the top class that it has, whatever its peak', () => {
    expect(through(histogram(7), -40, Int32Array.of(0, numberSteps(1e9))).back).toEqual(
      histogram(7),
    );
  });

  it('of silence is empty', () => {
    const silent = { topClass: Int16Array.of(-64, -64), counts: new Uint32Array(48) };
    expect(through(silent, 0, new Int32Array(2)).back).toEqual(silent);
  });
});
