import { HISTOGRAM_CLASSES, type Histogram } from '../../../analysis/motion.js';
import { halfOctaves, integerCoder } from './integer-coder.js';
import type { BitCoder } from './range-coder.js';
import { octaveOf, partOfOctave } from './rounded.js';

const LAST = HISTOGRAM_CLASSES - 1;
/** Classes an octave. */
const CLASSES = 4;
/** Of a count's half octaves, and of the entries from the top down, those that are told apart. */
const SIZES = 32;
const ENTRIES = 4;

/**
 * A histogram of which only the classes from `leastClass` on are told apart; all samples under it
 * are counted together.
 */
export function pooledHistogram({ topClass, counts }: Histogram, leastClass: number): Histogram {
  const pooled = new Uint32Array(counts.length);
  for (const [index, count] of counts.entries()) {
    const row = index - (index % HISTOGRAM_CLASSES);
    const kept = keptEntries(topClass[row / HISTOGRAM_CLASSES] ?? 0, leastClass);
    const entry = index - row < kept ? index : row + LAST;
    pooled[entry] = (pooled[entry] ?? 0) + count;
  }
  return { topClass, counts: pooled };
}

/**
 * Codes a pooled histogram in place: what is written, or room for what is read. A count is foretold
 * by that of the class above, and by those of its class in the two quarters before.
 * @param peaks the quarters' largest magnitude, in steps of a number
 */
export function codeHistogram(
  coder: BitCoder,
  { topClass, counts }: Histogram,
  leastClass: number,
  peaks: Int32Array,
): void {
  const codeTop = integerCoder(coder, 32);
  const codeTotal = integerCoder(coder, 1);
  const codeCount = integerCoder(coder, ENTRIES * SIZES * SIZES);
  const countOf = (quarter: number, magnitudeClass: number) => {
    const entry = (topClass[quarter] ?? magnitudeClass) - magnitudeClass;
    return entry < 0 || entry >= LAST ? 0 : (counts[quarter * HISTOGRAM_CLASSES + entry] ?? 0);
  };
  let total = 0;
  for (const quarter of topClass.keys()) {
    const row = counts.subarray(quarter * HISTOGRAM_CLASSES, (quarter + 1) * HISTOGRAM_CLASSES);
    const peak = peaks[quarter] ?? 0;
    const octave = CLASSES * octaveOf(peak);
    topClass[quarter] = octave + codeTop(partOfOctave(peak), (topClass[quarter] ?? 0) - octave);
    const top = topClass[quarter] ?? 0;
    total += codeTotal(0, sumOf(row) - total);
    let left = total;
    const kept = keptEntries(top, leastClass);
    for (let entry = 0; entry < kept; entry++) {
      const above = entry === 0 ? 0 : (row[entry - 1] ?? 0);
      const before = countOf(quarter - 1, top - entry) + countOf(quarter - 2, top - entry);
      const context =
        (Math.min(entry, ENTRIES - 1) * SIZES + sizeOf(above)) * SIZES + sizeOf(before >> 1);
      const count = codeCount(context, row[entry] ?? 0);
      row[entry] = count;
      left -= count;
    }
    row[LAST] = left;
  }
}

/** Entries of a quarter's row that are told apart. */
function keptEntries(top: number, leastClass: number): number {
  return Math.min(LAST, Math.max(0, top - leastClass + 1));
}

function sizeOf(count: number): number {
  return Math.min(SIZES - 1, halfOctaves(count));
}

function sumOf(row: Uint32Array): number {
  return row.reduce((sum, count) => sum + count, 0);
}
