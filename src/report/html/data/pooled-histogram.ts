import { HISTOGRAM_CLASSES, type Histogram } from '../../../analysis/motion.js';
import type { PageColumn, TakeColumn } from './byte-planes.js';

const LAST = HISTOGRAM_CLASSES - 1;
/** The largest count that fits two bytes. */
const NARROW = 2 ** 16 - 1;

/**
 * A histogram of which only the classes from `leastClass` on are told apart; all samples under it
 * are counted together. Row after row of a class, since a class changes little from quarter to
 * quarter.
 */
export function pooledColumns(histogram: Histogram, leastClass: number): PageColumn[] {
  const { topClass, counts } = histogram;
  const highest = topClass.reduce((high, top) => Math.max(high, top), leastClass - 1);
  const classes = Math.max(0, highest - leastClass + 1);
  const total = new Uint32Array(topClass.length);
  const table = new Uint32Array(classes * topClass.length);
  for (const [index, count] of counts.entries()) {
    const quarter = Math.floor(index / HISTOGRAM_CLASSES);
    const entry = index % HISTOGRAM_CLASSES;
    const row = (topClass[quarter] ?? 0) - entry - leastClass;
    total[quarter] = (total[quarter] ?? 0) + count;
    if (row >= 0 && entry < LAST) table[row * topClass.length + quarter] = count;
  }
  const isNarrow = total.every((count) => count <= NARROW);
  const packed = (column: Uint32Array) => (isNarrow ? Uint16Array.from(column) : column);
  const head = Int16Array.of(leastClass, classes, isNarrow ? 1 : 0);
  return [head, topClass, packed(total), packed(table)];
}

/** The histogram again; its counts agree in every class from `leastClass` on, and in their sum. */
export function pooledHistogram(take: TakeColumn, quarterCount: number): Histogram {
  const [leastClass = 0, classes = 0, isNarrow = 0] = take.int16(3);
  const topClass = take.int16(quarterCount);
  const next = isNarrow === 1 ? take.uint16 : take.uint32;
  const total = next(quarterCount);
  const table = next(classes * quarterCount);
  const counts = new Uint32Array(quarterCount * HISTOGRAM_CLASSES);
  for (const [quarter, top] of topClass.entries()) {
    let left = total[quarter] ?? 0;
    for (let entry = 0; entry < LAST && top - entry >= leastClass; entry++) {
      const count = table[(top - entry - leastClass) * quarterCount + quarter] ?? 0;
      counts[quarter * HISTOGRAM_CLASSES + entry] = count;
      left -= count;
    }
    counts[quarter * HISTOGRAM_CLASSES + LAST] = left;
  }
  return { topClass, counts };
}
