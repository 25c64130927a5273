import fc from 'fast-check';
import { expect, test } from 'vitest';
import { solve as solveDense } from 'yalps';
import { turnAdvance } from '../../src/model/disc.js';
import { forecastSide, tightestOf } from '../../src/model/forecast-model.js';
import { type Plan, planSide } from '../../src/model/plan.js';
import { radiusUsed } from '../../src/model/plan-report.js';
import { type PlannedSide, plannedSide } from '../../src/model/planned-side.js';
import { keptLand } from '../../src/model/required-advance.js';
import { verify } from '../../src/model/verify.js';
import { SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

const BINS = 16;
const BINS_PER_TURN = 64;
/** The solver keeps a row to 1e-10 base pitches; what is snapped to its least lies 1e-9 away. */
const KEPT = 1e-12;

const level = fc.double({ min: -12, max: 12, noNaN: true });
const limits = fc.record({
  timingTolerance: fc.integer({ min: 0, max: 3 }),
  silentTurns: fc.integer({ min: 1, max: 2 }),
  pitchOpenSlew: fc.double({ min: 2e-6, max: 2e-4, noNaN: true }),
  pitchCloseSlew: fc.double({ min: 2e-6, max: 2e-4, noNaN: true }),
});

test('takes no more than turn-ahead, and keeps landMin c quarters early and late', () => {
  fc.assert(
    fc.property(randomMotion(), level, limits, (motion, levelDb, changes) => {
      const settings = settingsWith({ ...changes, pitchMax: 1, depthMax: 1 });
      const side = plannedSide(motion, settings);
      const plan = planSide(side, 'tightest', levelDb);
      expect(sum(plan)).toBeLessThanOrEqual(sum(planSide(side, 'turn-ahead', levelDb)) + KEPT);
      const c = settings.timingTolerance;
      for (const late of [-c, 0, c]) {
        const { land } = verify(side, executedLate(side, plan, late));
        const kept = land.subarray(4 + Math.max(0, late), side.count + Math.min(0, late));
        // Verification takes the lesser end of A − h − h against a bin's peak wherever it lies, so
        // it may be under what the program promises by what those change inside a bin.
        const margin = KEPT + insideBin(side, plan);
        for (const left of kept) expect(left).toBeGreaterThanOrEqual(settings.landMin - margin);
      }
    }),
    { numRuns: 60 },
  );
});

test('planned by itself, takes the radius that the forecast tells of it', () => {
  fc.assert(
    fc.property(randomMotion(), level, limits, (motion, levelDb, changes) => {
      const settings = settingsWith(changes);
      const request = { levelDb, planner: 'fixed', source: SOUND_SOURCE } as const;
      const { tightest } = forecastSide(motion, settings, request);
      expect(tightestOf(motion, settings, { levelDb })).toEqual(tightest);
      const known = { radiusUsed: 1 };
      const told = forecastSide(motion, settings, { ...request, tightest: known });
      expect(told.tightest).toBe(known);
    }),
    { numRuns: 20 },
  );
});

test('keeps its slews and stays between base pitch and pitchMax', () => {
  fc.assert(
    fc.property(randomMotion(), level, limits, (motion, levelDb, changes) => {
      const settings = settingsWith({ ...changes, pitchMax: 150e-6 });
      const side = plannedSide(motion, settings);
      const { pitch } = planSide(side, 'tightest', levelDb);
      for (const [quarter, here] of pitch.entries()) {
        expect(here).toBeGreaterThanOrEqual(settings.basePitch);
        expect(here).toBeLessThanOrEqual(settings.pitchMax);
        const opened = here - (pitch[quarter - 1] ?? here);
        expect(opened).toBeLessThanOrEqual(settings.pitchOpenSlew + KEPT);
        expect(-opened).toBeLessThanOrEqual(settings.pitchCloseSlew + KEPT);
      }
    }),
    { numRuns: 60 },
  );
});

// Outside reference: the dense simplex of the npm package yalps, on every need there is.
test('a second solver, with no need left out, finds the same sum', () => {
  fc.assert(
    fc.property(randomMotion({ longestTurns: 1.5 }), level, limits, (motion, levelDb, changes) => {
      const settings = settingsWith({ ...changes, silentTurns: 1 });
      const side = plannedSide(motion, settings);
      const plan = planSide(side, 'tightest', levelDb);
      expect(sum(plan)).toBeWithin(leastSum(side, plan), 1e-9);
    }),
    { numRuns: 25 },
  );
});

test('without a sound it is the base pitch', () => {
  fc.assert(
    fc.property(randomMotion({ amplitude: 0 }), (motion) => {
      const side = plannedSide(motion, settingsWith());
      const plan = planSide(side, 'tightest', 0);
      expect(new Set(plan.pitch)).toEqual(new Set([side.settings.basePitch]));
      expect(radiusUsed(side, plan)).toBeWithin(side.turns * side.settings.basePitch, 1e-12);
    }),
    { numRuns: 5 },
  );
});

function sum({ pitch }: Plan): number {
  return pitch.reduce((total, each) => total + each, 0);
}

/** What A − h − h changes in the bin where it changes most. */
function insideBin(side: PlannedSide, plan: Plan): number {
  let most = 0;
  for (let quarter = 0; quarter < side.count; quarter++) {
    const advanced = plan.advance[quarter + 1]! - plan.advance[quarter]!;
    const widened = plan.facing[quarter + 1]! - plan.facing[quarter]!;
    most = Math.max(most, (Math.abs(advanced) + Math.abs(widened)) / BINS);
  }
  return most;
}

/** The plan as it is cut when the pitch comes `quarters` late; base pitch before it. */
function executedLate(side: PlannedSide, plan: Plan, quarters: number): Plan {
  const { basePitch } = side.settings;
  const pitch = plan.pitch.map((_, at) => plan.pitch[at - quarters] ?? basePitch);
  return { ...plan, pitch, advance: turnAdvance(pitch, basePitch) };
}

/** Least Σp by the definition: every pair of a boundary and a bin's end at most c quarters away. */
function leastSum(side: PlannedSide, plan: Plan): number {
  const { basePitch, pitchMax, pitchOpenSlew, pitchCloseSlew, timingTolerance } = side.settings;
  const kept = keptLand(side, plan.gain);
  const bins = side.count * BINS;
  const reach = timingTolerance * BINS;
  /** R at one end of a bin, in base pitches. */
  const required = (bin: number, end: 0 | 1): number => {
    const quarter = Math.floor(bin / BINS);
    const share = (bin - quarter * BINS + end) / BINS;
    const facing = plan.facing[quarter]! * (1 - share) + plan.facing[quarter + 1]! * share;
    return (kept[quarter]! + facing + plan.gain * side.approachLoose[bin]!) / basePitch;
  };
  const constraints = new Map<string, { min?: number; max?: number }>();
  const columns = Array.from({ length: side.count }, (_, quarter) => {
    constraints.set(`least ${quarter}`, { min: 1, max: pitchMax / basePitch });
    return new Map([
      ['sum', 1],
      [`least ${quarter}`, 1],
    ]);
  });
  for (let boundary = BINS_PER_TURN; boundary <= bins; boundary++) {
    let need = 0;
    for (let bin = 0; bin < bins; bin++) {
      for (const end of [0, 1] as const) {
        if (Math.abs(bin + end - boundary) <= reach) need = Math.max(need, required(bin, end));
      }
    }
    constraints.set(`need ${boundary}`, { min: Math.min(need, pitchMax / basePitch) });
    for (const [quarter, column] of columns.entries()) {
      const from = Math.max(quarter * BINS, boundary - BINS_PER_TURN);
      const length = Math.min((quarter + 1) * BINS, boundary) - from;
      if (length > 0) column.set(`need ${boundary}`, length / BINS_PER_TURN);
    }
  }
  for (let quarter = 1; quarter < side.count; quarter++) {
    const slew = `slew ${quarter}`;
    constraints.set(slew, { min: -pitchCloseSlew / basePitch, max: pitchOpenSlew / basePitch });
    columns[quarter - 1]!.set(slew, -1);
    columns[quarter]!.set(slew, 1);
  }
  const variables = columns.map((column, quarter) => [quarter, column] as const);
  const direction = 'minimize';
  const found = solveDense({ direction, objective: 'sum', constraints, variables });
  expect(found.status).toBe('optimal');
  return found.result * basePitch;
}
