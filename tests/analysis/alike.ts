import { expect } from 'vitest';

type Figures = ReadonlyMap<string, Float64Array>;

/** A difference of two walls is as exact as the walls are: in parts of the largest edge motion. */
const DIFFERENCES = /\.(approach|lift|sink|lateral|outward|inward)$/;
/** These divide by an energy, and mean nothing without any. */
const RATIOS = /\.lowBand\.(correlation|phase|verticalShare)$/;

/**
 * Two summaries that say the same, number by number, to 1e-9 of the side's own motion.
 * @param passed the one that is tested
 * @param plain the one that it is held against
 * @param looser how many times 1e-9 they may be apart
 */
export function expectAlike(passed: Figures, plain: Figures, looser = 1): void {
  const close = 1e-9 * looser;
  const of = (path: string): Float64Array => plain.get(`summary.${path}`) ?? new Float64Array(0);
  const edge = Math.max(...of('outward'), ...of('inward'));
  expect(edge).toBeGreaterThan(1e-6);
  const energy = of('left.velocityMeanSquare').map(
    (v, n) => v + (of('right.velocityMeanSquare')[n] ?? 0),
  );
  const silent = close * Math.max(...energy);
  const heard = (row: Float64Array) => row.filter((_, quarter) => (energy[quarter] ?? 0) > silent);
  expect(heard(energy).length).toBeGreaterThan(0);
  for (const [path, wanted] of plain) {
    const actual = passed.get(path) ?? new Float64Array(0);
    if (path.endsWith('.approachLoose')) {
      // The place of a flat top, at which the window is laid, is known less exactly than its height.
      expect(actual, path).toBeWithin(wanted, 10 * close * edge);
    } else if (path.endsWith('Peak')) {
      // A flat top whose place rounding puts on either side of a quarter's edge: its own value or
      // the edge's, which is read from a coarser table.
      // The acceleration of a bass alone is known less exactly than that of treble.
      const floor = (looser > 1 ? 1 : 1e-2) * close * Math.max(...wanted);
      expect(actual, path).toBeWithin(wanted, floor, 10 * close);
    } else if (path.endsWith('.strongestFrequency')) {
      // The top of a parabola through three nearly equal powers: it widens their rounding.
      expect(heard(actual), path).toBeWithin(heard(wanted), 10 * close, 10 * close);
    } else if (RATIOS.test(path)) {
      expect(heard(actual), path).toBeWithin(heard(wanted), close, close);
    } else if (path.endsWith('.verticalAmplitude')) {
      // The root of a difference of energies, which are what is exact.
      expect(squared(actual), path).toBeWithin(squared(wanted), close * edge * edge);
    } else if (path.endsWith('.counts')) {
      // Samples on the border of two classes may count in either.
      expect(actual, path).toBeWithin(wanted, looser > 1 ? 3 : 0);
    } else if (DIFFERENCES.test(path)) {
      expect(actual, path).toBeWithin(wanted, close * edge);
    } else {
      // Silence after a program is its filters' last breath, far under the loudest quarter.
      expect(actual, path).toBeWithin(
        wanted,
        1e-2 * close * Math.max(...wanted.map(Math.abs)),
        close,
      );
    }
  }
}

function squared(row: Float64Array): Float64Array {
  return row.map((value) => value * value);
}
