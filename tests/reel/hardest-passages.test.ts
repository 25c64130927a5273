import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ExecutedColumns } from '../../src/model/executed-columns.js';
import { hardestPassages } from '../../src/reel/hardest-passages.js';
import { settingsWith } from '../analysis/summary-of.js';

const SETTINGS = settingsWith();
const QUARTER = 0.45;
const TURN = 1.8;

/** Columns of a quiet side, but for what is given, by quarter. */
function columnsWith(
  quarters: number,
  changes: Partial<Record<'land' | 'lift' | 'facet' | 'bend', Readonly<Record<number, number>>>>,
): ExecutedColumns {
  const column = (still: number, hard: Readonly<Record<number, number>> = {}) =>
    Float64Array.from({ length: quarters }, (_, quarter) => hard[quarter] ?? still);
  return {
    quarterSeconds: QUARTER,
    turnSeconds: TURN,
    durationSeconds: quarters * QUARTER,
    land: column(40e-6, changes.land),
    approach: column(0, {}),
    // Whatever takes land closes in.
    approachLoose: column(0, changes.land),
    widthSet: column(50.8e-6),
    lift: column(0, changes.lift),
    sink: column(0),
    facet: column(0, changes.facet),
    bend: column(1, changes.bend),
    radius: column(0.14),
  };
}

describe('the hardest passages', () => {
  test('silence has none', () => {
    expect(hardestPassages(columnsWith(400, {}), SETTINGS)).toEqual([]);
  });

  test('the worst of each kind has one turn before its second and one after', () => {
    const columns = columnsWith(400, {
      land: { 50: 1e-6 },
      lift: { 100: 9e-6 },
      facet: { 200: 0.9, 201: 0.9 },
      bend: { 300: 10e-6, 301: 10e-6 },
    });
    const passages = hardestPassages(columns, SETTINGS);
    expect(passages.map(({ seconds }) => seconds.map(({ look }) => look))).toEqual([
      ['land'],
      ['width'],
      ['facet'],
      ['bend'],
    ]);
    const middles = [50.5 * QUARTER, 100.5 * QUARTER, 201 * QUARTER, 301 * QUARTER];
    for (const [at, { fromSeconds, untilSeconds }] of passages.entries()) {
      expect(fromSeconds).toBeWithin((middles[at] ?? 0) - 0.5 - TURN, 1e-9, 0);
      expect(untilSeconds).toBeWithin((middles[at] ?? 0) + 0.5 + TURN, 1e-9, 0);
    }
  });

  test('two of the worst side by side are one passage that names the land first', () => {
    const passages = hardestPassages(
      columnsWith(400, { land: { 50: 1e-6 }, lift: { 54: 9e-6 } }),
      SETTINGS,
    );
    expect(passages.map(({ seconds }) => seconds.map(({ look }) => look))).toEqual([
      ['land', 'width'],
    ]);
  });

  test('one hard sample does not outweigh a hard second', () => {
    const [first] = hardestPassages(
      columnsWith(400, { facet: { 50: 0.99, 200: 0.8, 201: 0.8 } }),
      SETTINGS,
    ).toSorted((one, other) => (other.seconds[0]?.quarter ?? 0) - (one.seconds[0]?.quarter ?? 0));
    expect(first?.seconds[0]?.quarter).toBe(200);
  });

  test('there are at most five, apart, inside the program, the least land among them', () => {
    const hard = fc.dictionary(
      fc.integer({ min: 0, max: 199 }).map(String),
      fc.double({ min: 0.01, max: 1, noNaN: true }),
      { minKeys: 1 },
    );
    fc.assert(
      fc.property(hard, hard, (land, facet) => {
        const scaled = Object.fromEntries(
          Object.entries(land).map(([quarter, each]) => [quarter, each * 30e-6]),
        );
        const columns = columnsWith(200, { land: scaled, facet });
        const passages = hardestPassages(columns, SETTINGS);
        expect(passages.length).toBeLessThanOrEqual(5);
        let before = 0;
        for (const { fromSeconds, untilSeconds } of passages) {
          expect(fromSeconds).toBeGreaterThanOrEqual(before);
          before = untilSeconds;
        }
        expect(before).toBeLessThanOrEqual(columns.durationSeconds);
        // Two that differ in their last bit only are equals.
        const least = Math.min(...columns.land) + 1e-15;
        const places = [...columns.land.keys()].filter((at) => (columns.land[at] ?? 1) <= least);
        const isShown = places.some((at) =>
          passages.some(
            ({ fromSeconds, untilSeconds }) =>
              fromSeconds <= (at + 0.5) * QUARTER && (at + 0.5) * QUARTER <= untilSeconds,
          ),
        );
        expect(isShown).toBe(true);
      }),
    );
  });
});
