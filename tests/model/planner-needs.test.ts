import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BINS_PER_QUARTER } from '../../src/analysis/motion.js';
import { echoNeighbours } from '../../src/model/echo-guard.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { boundaryNeeds } from '../../src/model/planners/boundary-needs.js';
import { spacingProgram } from '../../src/model/planners/spacing-program.js';
import { windowMaximum, windowMinimum } from '../../src/model/planners/window-maximum.js';
import { keptLand } from '../../src/model/required-advance.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

test('the extremes of a window are those of the entries that are inside of the row', () => {
  const row = Float64Array.of(5, 2, 9, 4);
  const windows = [
    [-3, 1],
    [1, 3],
    [2, 99],
    [-9, 99],
  ] as const;
  expect(windows.map(([first, last]) => windowMaximum(row, first, last))).toEqual([5, 9, 9, 9]);
  expect(windows.map(([first, last]) => windowMinimum(row, first, last))).toEqual([2, 2, 4, 2]);
  expect(windowMaximum(row, 4, 9)).toBe(Number.NEGATIVE_INFINITY);
  expect(windowMinimum(row, -9, -1)).toBe(Number.POSITIVE_INFINITY);
});

test('a boundary needs what any bin needs whose end is at most c quarters away', () => {
  fc.assert(
    fc.property(
      randomMotion({ longestTurns: 2 }),
      fc.integer({ min: 0, max: 2 }),
      fc.constantFrom(1, 200e-6),
      (motion, timingTolerance, pitchMax) => {
        const side = plannedSide(motion, settingsWith({ timingTolerance, pitchMax }));
        const { facing, gain } = planSide(side, 'turn-ahead', 2);
        const kept = keptLand(side, gain);
        const needAt = (bin: number, boundary: number) => {
          const quarter = Math.floor(bin / BINS_PER_QUARTER);
          const share = boundary / BINS_PER_QUARTER - quarter;
          const widths = facing[quarter]! + (facing[quarter + 1]! - facing[quarter]!) * share;
          return kept[quarter]! + widths + gain * side.approachLoose[bin]!;
        };
        const bins = side.approachLoose.length;
        const reach = timingTolerance * BINS_PER_QUARTER;
        const expected = Array.from({ length: bins + 1 }, (_, boundary) => {
          let most = Number.NEGATIVE_INFINITY;
          const from = Math.max(0, boundary - reach - 1);
          for (let bin = from; bin < Math.min(bins, boundary + reach + 1); bin++) {
            for (const end of [bin, bin + 1]) {
              if (Math.abs(end - boundary) <= reach) most = Math.max(most, needAt(bin, end));
            }
          }
          return Math.min(most, pitchMax);
        });
        expect(boundaryNeeds(side, facing, gain)).toBeWithin(expected, 1e-15);
      },
    ),
    { numRuns: 30 },
  );
});

describe('the program of the tightest pitch', () => {
  const BASE = 100e-6;
  const settings = settingsWith({ ...EXACT, basePitch: BASE, pitchMax: 300e-6, silentTurns: 1 });
  // Quarters 0 to 15, the program from 4 to 11.
  const side = plannedSide(emptyMotion(3.6), settings);

  /** Rows of a program that needs these at some boundaries and base pitch elsewhere. */
  function rowsOf(needed: Readonly<Record<number, number>>) {
    const needs = new Float64Array(16 * BINS_PER_QUARTER + 1).fill(BASE);
    for (const [boundary, need] of Object.entries(needed)) needs[Number(boundary)] = need;
    const program = spacingProgram(side, needs);
    const count = program.need.length - 15;
    return Array.from({ length: count }, (_, row) => {
      const [from, until] = [program.starts[row]!, program.starts[row + 1]!];
      const columns = Array.from(program.columns.subarray(from, until));
      const weights = Array.from(program.values.subarray(from, until));
      return { need: program.need[row]!, columns, weights };
    });
  }

  test('asks for four times the advance, of the five quarters that are part of it', () => {
    const [row, ...others] = rowsOf({ [9 * 16 + 4]: 150e-6 });
    expect(others).toEqual([]);
    expect(row?.need).toBeWithin(6, 1e-12);
    expect(row?.columns).toEqual([5, 6, 7, 8, 9]);
    expect(row?.weights).toBeWithin([0.75, 1, 1, 1, 0.25], 1e-12);
  });

  test('asks once for a boundary between two quarters, and for the last one of all', () => {
    const [row, ...others] = rowsOf({ [9 * 16]: 150e-6 });
    expect(others).toEqual([]);
    expect(row).toMatchObject({ columns: [5, 6, 7, 8], weights: [1, 1, 1, 1] });
    const [last, ...more] = rowsOf({ [16 * 16]: 150e-6 });
    expect(more).toEqual([]);
    expect(last).toMatchObject({ columns: [12, 13, 14, 15], weights: [1, 1, 1, 1] });
  });

  test('asks for nothing that base pitch meets, nor for what lies under a line of others', () => {
    expect(rowsOf({})).toEqual([]);
    expect(rowsOf({ [9 * 16 + 4]: BASE })).toEqual([]);
    // On the line from 120 µm to 140: met where its ends are; over it: asked for.
    const line = { [9 * 16]: 120e-6, [9 * 16 + 8]: 140e-6 };
    expect(rowsOf({ ...line, [9 * 16 + 4]: 129e-6 })).toHaveLength(2);
    expect(rowsOf({ ...line, [9 * 16 + 4]: 131e-6 })).toHaveLength(3);
  });

  test('counts the program a little more than the silence around it', () => {
    const { cost, lower, upper } = spacingProgram(side, new Float64Array(257).fill(BASE));
    const inside = (quarter: number) => quarter >= 4 && quarter < 12;
    for (const [quarter, each] of cost.entries()) {
      if (inside(quarter)) expect(each).toBeGreaterThan(1);
      else expect(each).toBe(1);
      expect(each).toBeLessThan(1.001);
    }
    expect(lower).toBeWithin(new Float64Array(16).fill(1), 1e-12);
    expect(upper).toBeWithin(new Float64Array(16).fill(3), 1e-12);
  });
});

test('what is loud beside what is quiet is so at the planned level', () => {
  const motion = emptyMotion(18);
  // A turn 13 dB under the reference beside silence: loud from 1 dB more on.
  const power = (0.07 ** 2 / 4) * 10 ** -1.3;
  motion.left.velocityMeanSquare[20] = power;
  motion.right.velocityMeanSquare[20] = power;
  const side = plannedSide(motion, settingsWith({ referenceVelocity: 0.07 }));
  const at = (db: number) =>
    Array.from(echoNeighbours(side, 10 ** (db / 20)).entries())
      .filter(([, is]) => is === 1)
      .map(([quarter]) => quarter - side.lead);
  expect(at(0.9)).toEqual([]);
  expect(at(1.1)).toEqual([20, 24]);
});
