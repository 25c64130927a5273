import { expect, test } from 'vitest';
import { landChanges } from '../../src/model/compare-land.js';
import { forecastedFile } from '../support/forecast-fixture.js';

/** A quarter turn at 33⅓ rpm, s. */
const Q = 0.45;

/** A lathe that wants all land of use, so that no change is among what is enough. */
const WANTS_ALL = 25.4e-6;

/** A side whose machine leaves so much land, µm, in each quarter; its plan leaves none. */
function sideWith(landUm: readonly number[], landMin = WANTS_ALL) {
  const file = forecastedFile();
  const machineLand = Float64Array.from(landUm, (um) => um * 1e-6);
  const { quarters } = file.forecast;
  const land = machineLand.map(() => 0);
  const settings = { ...file.settings, landMin };
  return forecastedFile({ settings }, { quarters: { ...quarters, land, machineLand } });
}

/** Change, first and last quarter (in quarters), µm before and after. */
function told(before: readonly number[], after: readonly number[], offsetQuarters = 0) {
  return landChanges(sideWith(before), sideWith(after), offsetQuarters * Q).map((land) => [
    land.change,
    Number((land.atSeconds / Q).toFixed(3)),
    Number((land.untilSeconds / Q).toFixed(3)),
    Number((land.before * 1e6).toFixed(3)),
    Number((land.after * 1e6).toFixed(3)),
  ]);
}

const EVEN = Array.from({ length: 30 }, () => 20);
const withAt = (row: readonly number[], changes: Readonly<Record<number, number>>) =>
  row.map((value, quarter) => changes[quarter] ?? value);

test('less land is lost, more is gained, by 3 µm or more, each in its own quarters', () => {
  const after = withAt(EVEN, { 5: 16, 6: 17.001, 20: 24, 21: 22.9 });
  expect(told(EVEN, after)).toEqual([
    ['lost', 5, 6, 20, 16],
    ['gained', 20, 21, 20, 24],
  ]);
});

test('changes up to a turn apart are one, with the least of their land; beyond they are two', () => {
  expect(told(EVEN, withAt(EVEN, { 5: 15, 9: 11 }))).toEqual([['lost', 5, 10, 20, 11]]);
  expect(told(EVEN, withAt(EVEN, { 5: 15, 10: 11 }))).toEqual([
    ['lost', 5, 6, 20, 15],
    ['lost', 10, 11, 20, 11],
  ]);
});

test('land over the widest limit, 25.4 µm by default, counts as that', () => {
  expect(told(withAt(EVEN, { 5: 90 }), withAt(EVEN, { 5: 30 }))).toEqual([]);
  expect(told(withAt(EVEN, { 5: 90 }), withAt(EVEN, { 5: 22 }))).toEqual([
    ['lost', 5, 6, 25.4, 22],
  ]);
});

test('land that was and is enough has not changed; what falls under that or rises over it has', () => {
  const landMin = 12.7e-6;
  const changes = (from: number, to: number) =>
    landChanges(
      sideWith(withAt(EVEN, { 5: from }), landMin),
      sideWith(withAt(EVEN, { 5: to }), landMin),
      0,
    ).map(({ change }) => change);
  expect(changes(24, 12.71)).toEqual([]);
  expect(changes(12.71, 24)).toEqual([]);
  expect(changes(24, 12.6)).toEqual(['lost']);
  expect(changes(12.6, 24)).toEqual(['gained']);
});

test('only the six largest are told, in time order', () => {
  const long = Array.from({ length: 100 }, () => 20);
  const places = [90, 80, 70, 60, 50, 40, 30, 20];
  const after = withAt(long, Object.fromEntries(places.map((at, rank) => [at, 4 + rank])));
  expect(told(long, after).map(([, at]) => at)).toEqual([40, 50, 60, 70, 80, 90]);
});

const UNEVEN = Array.from({ length: 30 }, (_, quarter) => 8 + ((quarter * 7) % 13));

test('the same land later or earlier by whole quarters is no change', () => {
  expect(told(UNEVEN, [20, 20, 20, ...UNEVEN], 3)).toEqual([]);
  expect(told([20, 20, 20, ...UNEVEN], UNEVEN, -3)).toEqual([]);
  expect(told(UNEVEN, [20, 20, 20, ...UNEVEN]).length).toBeGreaterThan(0);
});

test('the same land on another quarter grid is no change', () => {
  // A quarter of the new grid has the least of the two that it overlaps, or of one of them.
  const halves = UNEVEN.map((land, quarter) => Math.min(land, UNEVEN[quarter + 1] ?? land));
  expect(told(UNEVEN, halves, -0.5)).toEqual([]);
  expect(told(UNEVEN, UNEVEN, -0.5)).toEqual([]);
});

test('what changes is found under a shift, and told in the time of the new file', () => {
  const shifted = [20, 20, 20, ...EVEN];
  expect(told(EVEN, withAt(shifted, { 13: 12, 23: 25 }), 3)).toEqual([['lost', 13, 14, 20, 12]]);
  const [gained, ...more] = told(withAt(EVEN, { 10: 12 }), shifted, 3.5);
  expect(gained).toEqual(['gained', 13.5, 14.5, 12, 20]);
  expect(more).toEqual([]);
});

test('what only one of the two files has is neither lost nor gained', () => {
  expect(told(EVEN, EVEN.slice(0, 10))).toEqual([]);
  expect(told(EVEN.slice(0, 10), EVEN)).toEqual([]);
});
