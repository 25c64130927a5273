import fc from 'fast-check';
import { expect, test } from 'vitest';
import { COLUMNS, landGrid } from '../../../../src/report/html/page/pictures/unrolled/land-grid.js';
import {
  aimedHeight,
  binAtPoint,
  mostRows,
  pointOfBin,
  unrolledLayout,
} from '../../../../src/report/html/page/pictures/unrolled/unrolled-layout.js';

const lands = fc
  .tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 99 }))
  .map(([turns, seed]) =>
    Float64Array.from({ length: turns * COLUMNS }, (_, bin) => Math.sin(seed * (bin + 1) ** 2)),
  );

test('where there are rows enough, a bin’s land lies at its turn and angle', () => {
  fc.assert(
    fc.property(lands, (land) => {
      const grid = landGrid(land, 40);
      expect(grid.turnsPerRow).toBe(1);
      expect(grid.least).toEqual(land);
    }),
  );
});

test('where turns share a row, the least land at each angle is kept, and which bin it is', () => {
  fc.assert(
    fc.property(lands, fc.integer({ min: 1, max: 12 }), (land, mostRows) => {
      const grid = landGrid(land, mostRows);
      expect(grid.rows).toBeLessThanOrEqual(mostRows);
      for (const [cell, least] of grid.least.entries()) {
        const row = Math.floor(cell / COLUMNS);
        const bins = [...land.keys()].filter(
          (bin) =>
            bin % COLUMNS === cell % COLUMNS &&
            Math.floor(bin / COLUMNS / grid.turnsPerRow) === row,
        );
        expect(least).toBe(Math.min(...bins.map((bin) => land[bin] ?? Number.NaN)));
        expect(land[grid.bin[cell] ?? -1]).toBe(least);
      }
    }),
    { numRuns: 40 },
  );
});

test('the tightest spot of a side of 3 600 turns is on a phone’s picture', () => {
  const land = new Float64Array(3600 * COLUMNS).fill(30e-6);
  land[123_457] = -1e-6;
  const grid = landGrid(land, mostRows(aimedHeight(390, false)));
  expect(Math.min(...grid.least)).toBe(-1e-6);
});

test.each([
  [1280, 1, 3],
  [1280, 1, 228],
  [390, 3, 735],
  [390, 2, 2002],
  [1280, 1.25, 667],
])(
  'at %d px and density %d every one of %d rows is the same whole number of pixels',
  (width, density, turns) => {
    const aimed = aimedHeight(width, false) * density;
    const { rows } = landGrid(new Float64Array(turns * COLUMNS), mostRows(aimed));
    const layout = unrolledLayout(width, rows, density, aimed);
    const pixels = (layout.plotHeight * density) / rows;
    expect(pixels).toBeWithin(Math.round(pixels), 1e-9, 0);
    expect(pixels).toBeGreaterThanOrEqual(1);
    expect(layout.plotHeight).toBeLessThanOrEqual(1.5 * aimedHeight(width, false));
  },
);

test('the middle of a bin’s cell is over that bin, and beside the plot there is none', () => {
  const land = Float64Array.from({ length: 5 * COLUMNS }, (_, bin) => bin);
  const grid = landGrid(land, 100);
  const layout = unrolledLayout(800, grid.rows, 2, 1200);
  for (const bin of land.keys()) {
    expect(binAtPoint(layout, grid, pointOfBin(layout, grid, bin))).toBe(bin);
  }
  expect(binAtPoint(layout, grid, { x: layout.left - 1, y: layout.top + 1 })).toBeNull();
  expect(binAtPoint(layout, grid, { x: layout.left + 1, y: layout.top - 1 })).toBeNull();
  const below = layout.top + layout.plotHeight + 1;
  expect(binAtPoint(layout, grid, { x: layout.left + 1, y: below })).toBeNull();
});
