import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { factorBanded, solveFactored } from '../../../src/model/linear/banded-matrix.js';
import { interiorPoint } from '../../../src/model/linear/interior-point.js';
import type { LinearProgram } from '../../../src/model/linear/linear-program.js';
import { type Plan, planSide } from '../../../src/model/plan.js';
import { type PlannedSide, plannedSide } from '../../../src/model/planned-side.js';
import { boundaryNeeds } from '../../../src/model/planners/boundary-needs.js';
import { spacingProgram } from '../../../src/model/planners/spacing-program.js';
import { emptyMotion } from '../../support/empty-motion.js';
import { loadHighs } from '../../support/highs-solver.js';
import { settingsWith } from '../../support/model-settings.js';
import { randomMotion } from '../../support/random-motion.js';

const highs = await loadHighs();
const LEVEL = fc.double({ min: -12, max: 12, noNaN: true });
const SLEW = fc.double({ min: 2e-6, max: 2e-4, noNaN: true });
const LIMITS = fc.record({
  timingTolerance: fc.integer({ min: 0, max: 3 }),
  silentTurns: fc.integer({ min: 1, max: 2 }),
  // From one that most programs want more than to one that none reaches.
  pitchMax: fc.constantFrom(86e-6, 100e-6, 150e-6, 300e-6, 1),
  pitchOpenSlew: SLEW,
  pitchCloseSlew: SLEW,
});

describe('the linear program of a side', () => {
  const programs = fc
    .tuple(randomMotion({ longestTurns: 30 }), LEVEL, LIMITS)
    .map(([motion, levelDb, limits]) => {
      const side = plannedSide(motion, settingsWith(limits));
      return spacingOf(side, planSide(side, 'fixed', levelDb));
    });

  // Outside reference: HiGHS 1.15, dual simplex; it keeps its rows and prices to 1e-7.
  it('has the optimum that HiGHS finds, in all and inside the program', () => {
    const property = (program: LinearProgram) => {
      const [own, other] = [interiorPoint(program), highs(program)];
      expect(sum(program.cost, own.x)).toBeWithin(sum(program.cost, other.x), 1e-9, 1e-9);
      const inside = program.cost.map((cost) => (cost > 1 ? 1 : 0));
      expect(sum(inside, own.x)).toBeWithin(sum(inside, other.x), 1e-4, 1e-6);
    };
    fc.assert(fc.property(programs, property), { numRuns: 200 });
  });

  it('keeps every row and bound to 1e-9', () => {
    const property = (program: LinearProgram) => {
      const { x } = interiorPoint(program);
      expect(largestShortfall(program, x)).toBeLessThan(1e-9);
    };
    fc.assert(fc.property(programs, property), { numRuns: 100 });
  });

  it('costs what its own prices prove that any plan costs', () => {
    const property = (program: LinearProgram) => {
      const { x, duals } = interiorPoint(program);
      expect(sum(program.cost, x)).toBeWithin(dualBound(program, duals), 1e-5, 1e-7);
    };
    fc.assert(fc.property(programs, property), { numRuns: 100 });
  });
});

it('comes as near as rounding lets it on a long side that asks for all there is', () => {
  const program = loudProgram();
  const [own, other] = [interiorPoint(program), highs(program)];
  expect(sum(program.cost, own.x)).toBeWithin(sum(program.cost, other.x), 1e-9, 1e-9);
  expect(largestShortfall(program, own.x)).toBeLessThan(1e-9);
});

it('meets the one point that two rows and a bound leave', () => {
  // Least x + 2y with x + y ≥ 3 and y − x ≤ 1, 0 ≤ x ≤ 2, 0 ≤ y ≤ 9: x = 2, y = 1, by hand.
  const { x, duals } = interiorPoint({
    cost: Float64Array.of(1, 2),
    lower: Float64Array.of(0, 0),
    upper: Float64Array.of(2, 9),
    need: Float64Array.of(3, Number.NEGATIVE_INFINITY),
    most: Float64Array.of(Number.POSITIVE_INFINITY, 1),
    starts: Int32Array.of(0, 2, 4),
    columns: Int32Array.of(0, 1, 0, 1),
    values: Float64Array.of(1, 1, -1, 1),
  });
  expect(x).toBeWithin([2, 1], 1e-9);
  expect(duals).toBeWithin([2, 0], 1e-9);
});

it('says so where a program has no solution', () => {
  const program = {
    cost: Float64Array.of(1),
    lower: Float64Array.of(0),
    upper: Float64Array.of(1),
    need: Float64Array.of(2),
    most: Float64Array.of(Number.POSITIVE_INFINITY),
    starts: Int32Array.of(0, 1),
    columns: Int32Array.of(0),
    values: Float64Array.of(1),
  };
  expect(() => interiorPoint(program)).toThrow(RangeError);
});

it('a factored matrix gives back what it was multiplied with', () => {
  const sizes = fc.integer({ min: 1, max: 30 }).chain((count) =>
    fc.record({
      reach: fc.integer({ min: 0, max: 5 }),
      wanted: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), {
        minLength: count,
        maxLength: count,
      }),
      below: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), {
        minLength: count * 5,
        maxLength: count * 5,
      }),
    }),
  );
  const property = ({
    reach,
    wanted,
    below,
  }: {
    reach: number;
    wanted: number[];
    below: number[];
  }) => {
    const entries = new Float64Array(wanted.length * (reach + 1));
    const right = new Float64Array(wanted.length);
    for (const [row, each] of wanted.entries()) {
      // Twice the reach makes the diagonal the largest of its row.
      entries[row * (reach + 1) + reach] = 2 * reach + 1;
      right[row]! += (2 * reach + 1) * each;
      for (let column = Math.max(0, row - reach); column < row; column++) {
        const entry = below[row * 5 + row - column - 1] ?? 0;
        entries[row * (reach + 1) + reach - row + column] = entry;
        right[row]! += entry * wanted[column]!;
        right[column]! += entry * each;
      }
    }
    const matrix = { reach, entries };
    factorBanded(matrix);
    solveFactored(matrix, right);
    expect(right).toBeWithin(wanted, 1e-12);
  };
  fc.assert(fc.property(sizes, property));
});

function spacingOf(side: PlannedSide, { facing, gain }: Plan): LinearProgram {
  return spacingProgram(side, boundaryNeeds(side, facing, gain));
}

function sum(cost: Float64Array, x: Float64Array): number {
  return cost.reduce((total, each, column) => total + each * x[column]!, 0);
}

function largestShortfall(program: LinearProgram, x: Float64Array): number {
  let most = 0;
  for (const [row, need] of program.need.entries()) {
    let value = 0;
    for (let at = program.starts[row]!; at < program.starts[row + 1]!; at++) {
      value += program.values[at]! * x[program.columns[at]!]!;
    }
    most = Math.max(most, need - value, value - program.most[row]!);
  }
  for (const [column, value] of x.entries()) {
    most = Math.max(most, program.lower[column]! - value, value - program.upper[column]!);
  }
  return most;
}

/**
 * What any x costs at least, by weak duality from whatever row prices there are:
 * Σ y·(need where y > 0, most where y < 0) + Σ d·(lower where d > 0, upper where d < 0), d = c − Aᵀy.
 */
function dualBound(program: LinearProgram, prices: Float64Array): number {
  const reduced = Float64Array.from(program.cost);
  let bound = 0;
  for (const [row, told] of prices.entries()) {
    // Rounding may leave a hair of a negative price where nothing bounds from above.
    const price = program.most[row] === Number.POSITIVE_INFINITY ? Math.max(told, 0) : told;
    if (price !== 0) bound += price * (price > 0 ? program.need[row]! : program.most[row]!);
    for (let at = program.starts[row]!; at < program.starts[row + 1]!; at++) {
      reduced[program.columns[at]!]! -= price * program.values[at]!;
    }
  }
  for (const [column, left] of reduced.entries()) {
    if (left !== 0) bound += left * (left > 0 ? program.lower[column]! : program.upper[column]!);
  }
  return bound;
}

/** 25 minutes of which much wants more pitch than there is: its prices reach over many orders. */
function loudProgram(): LinearProgram {
  const motion = emptyMotion(1500);
  let state = 7919;
  const next = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  let loudness = 0.2;
  for (const bin of motion.approachLoose.keys()) {
    if (bin % 16 === 0 && next() < 0.02) loudness = 0.1 + next();
    motion.approachLoose[bin] = 500e-6 * loudness * (0.3 + 0.7 * next());
    motion.lift[bin] = 150e-6 * loudness * next();
    motion.sink[bin] = 150e-6 * loudness * next();
  }
  const side = plannedSide(motion, settingsWith({}));
  return spacingOf(side, planSide(side, 'turn-ahead', 0));
}
