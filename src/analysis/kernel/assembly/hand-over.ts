import { BIN_CAPACITY, binCount, binMaxima, COLUMNS, takeBins } from './bins';
import { CLASSES } from './counts';
import {
  FIGURES, QUARTER_CAPACITY, quarterCount, quarterCounts, quarterFigures, takeQuarters,
} from './walls';

/** Classes of a histogram that are handed over, from the highest that counted anything downwards. */
const KEPT_CLASSES: i32 = 24;
/** Histograms of a quarter: velocity left, right, acceleration left, right. */
const HISTOGRAMS: i32 = 4;

/**
 * What is handed over, as columns one behind the other: of the bins, of the quarters' figures, of
 * the highest classes and of the counts.
 */
export const binColumns: usize = memory.data(BIN_CAPACITY * COLUMNS * 8, 16);
export const figureColumns: usize = memory.data(QUARTER_CAPACITY * FIGURES * 8, 16);
export const topColumns: usize = memory.data(QUARTER_CAPACITY * HISTOGRAMS * 2, 16);
export const countColumns: usize =
  memory.data(QUARTER_CAPACITY * HISTOGRAMS * KEPT_CLASSES * 4, 16);
/** Entries of these columns. */
export let handedBins: i32 = 0;
export let handedQuarters: i32 = 0;

/** What the lowest class that is counted is called, of velocities and of accelerations. */
let lowestVelocity: i32 = 0;
let lowestAcceleration: i32 = 0;

export function setClasses(velocity: i32, acceleration: i32): void {
  lowestVelocity = velocity;
  lowestAcceleration = acceleration;
}

/** Hands over the bins and quarters that are complete, and makes room for others. */
export function handOver(): void {
  handedBins = binCount;
  handedQuarters = quarterCount;
  turn(binMaxima, binCount, COLUMNS, binColumns);
  turn(quarterFigures, quarterCount, FIGURES, figureColumns);
  for (let quarter = 0; quarter < quarterCount; quarter++) {
    for (let histogram = 0; histogram < HISTOGRAMS; histogram++) {
      const counts = quarterCounts + <usize>((quarter * HISTOGRAMS + histogram) * CLASSES * 4);
      const lowest = histogram < 2 ? lowestVelocity : lowestAcceleration;
      fileCounts(counts, lowest, histogram * quarterCount + quarter);
    }
  }
  takeBins();
  takeQuarters();
}

/** Lays rows out as columns. */
function turn(from: usize, rows: i32, columns: i32, to: usize): void {
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const number = load<f64>(from + <usize>((row * columns + column) << 3));
      store<f64>(to + <usize>((column * rows + row) << 3), number);
    }
  }
}

/** Files a histogram, as fileQuarter of the analysis' histogram.ts does. */
function fileCounts(counts: usize, lowest: i32, place: i32): void {
  let top = CLASSES - 1;
  while (top > 0 && load<u32>(counts + (<usize>top << 2)) == 0) top--;
  store<i16>(topColumns + (<usize>place << 1), <i16>(lowest + top));
  const kept = countColumns + <usize>(place * KEPT_CLASSES * 4);
  memory.fill(kept, 0, KEPT_CLASSES * 4);
  for (let index = top; index >= 0; index--) {
    const under = kept + (<usize>min<i32>(top - index, KEPT_CLASSES - 1) << 2);
    store<u32>(under, load<u32>(under) + load<u32>(counts + (<usize>index << 2)));
  }
}
