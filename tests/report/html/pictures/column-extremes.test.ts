import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  columnExtremes,
  heldValue,
} from '../../../../src/report/html/page/pictures/along/column-extremes.js';
import {
  betweenPath,
  envelopePath,
} from '../../../../src/report/html/page/pictures/along/column-paths.js';

const rows = fc
  .array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 1, maxLength: 300 })
  .map((values) => ({ values: Float64Array.from(values), from: -2, step: 0.5 }));

test('at any scale the extremes of all columns are those of the row: no peak is lost', () => {
  fc.assert(
    fc.property(rows, fc.integer({ min: 1, max: 400 }), (row, columns) => {
      const view = { from: row.from, until: row.from + row.values.length * row.step };
      const { least, most } = columnExtremes(row, view, columns);
      expect(Math.min(...least)).toBe(Math.min(...row.values));
      expect(Math.max(...most)).toBe(Math.max(...row.values));
    }),
  );
});

test('a value is shown in the columns it is held in and in no other', () => {
  const values = new Float64Array(100);
  values[37] = 1;
  const row = { values, from: 0, step: 1 };
  // Ten columns a value.
  const { least, most } = columnExtremes(row, { from: 30, until: 40 }, 100);
  const shown = [...most.keys()].filter((column) => most[column] === 1);
  expect(shown).toEqual([70, 71, 72, 73, 74, 75, 76, 77, 78, 79]);
  expect(least).toEqual(most);
});

test('columns before and after the row have no value', () => {
  const row = { values: Float64Array.of(3, 4), from: 10, step: 1 };
  const { least } = columnExtremes(row, { from: 8, until: 14 }, 6);
  expect([...least]).toEqual([Number.NaN, Number.NaN, 3, 4, Number.NaN, Number.NaN]);
  expect(heldValue(row, 9.9)).toBeNaN();
  expect(heldValue(row, 10)).toBe(3);
  expect(heldValue(row, 11.99)).toBe(4);
  expect(heldValue(row, 12)).toBeNaN();
});

test('a line runs over the whole of each column, and breaks where there is nothing', () => {
  const columns = {
    least: Float64Array.of(1, 2, Number.NaN, 0),
    most: Float64Array.of(1, 5, Number.NaN, 0),
  };
  const path = envelopePath(columns, 10, (value) => 100 - value);
  expect(path).toBe('M10 99h1V95V98h1M13 100h1');
});

test('an area covers only the columns whose line lies under the limit', () => {
  const path = betweenPath(Float64Array.of(1, 4), Float64Array.of(3, 3), 0, (value) => 10 - value);
  expect(path).toBe('M0 7h1v2h-1z');
});
