import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MotionSummary } from '../../src/analysis/motion.js';
import { turnAdvance } from '../../src/model/disc.js';
import { type Plan, planSide } from '../../src/model/plan.js';
import { radiusUsed } from '../../src/model/plan-report.js';
import { type PlannedSide, plannedSide } from '../../src/model/planned-side.js';
import { verify } from '../../src/model/verify.js';
import type { Planner, Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

/** No cap bites, and no echo is guarded against. */
const UNBOUND: Partial<Settings> = { pitchMax: 1, depthMax: 1, echoLand: 0 };
const RUNS = { numRuns: 60 };
/** What rounding of sums of lengths up to 1 mm may add. */
const ROUNDING = 1e-15;

const level = fc.double({ min: -12, max: 12, noNaN: true });
const width = fc.double({ min: 0, max: 1.5, noNaN: true });

const limits = fc.record({
  timingTolerance: fc.integer({ min: 0, max: 5 }),
  silentTurns: fc.integer({ min: 1, max: 3 }),
  pitchOpenSlew: fc.double({ min: 1e-6, max: 2e-4, noNaN: true }),
  pitchCloseSlew: fc.double({ min: 1e-6, max: 2e-4, noNaN: true }),
  landMin: fc.double({ min: 0, max: 5e-5, noNaN: true }),
  widthPerLateral: width,
});

function usedBy(motion: MotionSummary, settings: Settings, planner: Planner, levelDb = 0): number {
  const side = plannedSide(motion, settings);
  return radiusUsed(side, planSide(side, planner, levelDb));
}

/** The plan as it is cut when the pitch comes `quarters` late; base pitch before it. */
function executedLate(side: PlannedSide, plan: Plan, quarters: number): Plan {
  const { basePitch } = side.settings;
  const pitch = plan.pitch.map((_, at) => plan.pitch[at - quarters] ?? basePitch);
  return { ...plan, pitch, advance: turnAdvance(pitch, basePitch) };
}

describe('turn-ahead', () => {
  test('keeps landMin wherever no cap bites, c quarters early or late as well', () => {
    fc.assert(
      fc.property(randomMotion(), level, limits, (motion, levelDb, changes) => {
        const settings = settingsWith({ ...UNBOUND, ...changes });
        const side = plannedSide(motion, settings);
        const plan = planSide(side, 'turn-ahead', levelDb);
        const c = settings.timingTolerance;
        for (const late of [-c, 0, c]) {
          const { land } = verify(side, executedLate(side, plan, late));
          // What is late begins late: the turn before it is at base pitch.
          const kept = land.subarray(4 + Math.max(0, late), side.count + Math.min(0, late));
          for (const left of kept) expect(left).toBeGreaterThanOrEqual(settings.landMin - ROUNDING);
        }
      }),
      RUNS,
    );
  });

  test('takes no more radius than the machine at timing tolerance 0', () => {
    fc.assert(
      fc.property(randomMotion(), level, limits, (motion, levelDb, changes) => {
        const settings = settingsWith({ ...UNBOUND, ...changes, timingTolerance: 0 });
        const ahead = usedBy(motion, settings, 'turn-ahead', levelDb);
        expect(ahead).toBeLessThanOrEqual(usedBy(motion, settings, 'machine', levelDb) + ROUNDING);
      }),
      RUNS,
    );
  });

  test('opens once for a sound between silent turns, where the machine hears both walls', () => {
    const motion = emptyMotion(3.6);
    const [inQuarter, aTurnLater] = [64, 128];
    motion.outward.fill(40e-6, inQuarter, inQuarter + 16);
    motion.inward.fill(40e-6, inQuarter, inQuarter + 16);
    motion.approachLoose.fill(40e-6, inQuarter, inQuarter + 16);
    motion.approachLoose.fill(40e-6, aTurnLater, aTurnLater + 16);
    const settings = settingsWith({ ...UNBOUND, timingTolerance: 0 });
    const side = plannedSide(motion, settings);
    const widest = (planner: Planner) => Math.max(...planSide(side, planner, 0).pitch);
    const still = 12.7e-6 + 6.5e-6 + 50.8e-6;
    expect(widest('turn-ahead')).toBeWithin(still + 40e-6, 1e-12);
    expect(widest('machine')).toBeWithin(still + 80e-6, 1e-12);
  });

  test('raises the land beside a quiet turn to echoLand', () => {
    fc.assert(
      fc.property(randomMotion(), level, (motion, levelDb) => {
        const settings = settingsWith({ ...UNBOUND, echoLand: 60e-6 });
        const side = plannedSide(motion, settings);
        const { left, right } = motion;
        const power = (quarter: number) =>
          (left.velocityMeanSquare[quarter]! + right.velocityMeanSquare[quarter]!) / 2;
        const reference = (settings.referenceVelocity ** 2 / 4) * 10 ** (-levelDb / 10);
        const { land } = verify(side, planSide(side, 'turn-ahead', levelDb));
        for (let quarter = 4; quarter < side.programCount; quarter++) {
          const powers = [power(quarter), power(quarter - 4)];
          const isQuiet = Math.min(...powers) < reference * 1e-4;
          if (!isQuiet || Math.max(...powers) < reference * 10 ** -1.2) continue;
          expect(land[side.lead + quarter]).toBeGreaterThanOrEqual(60e-6 - ROUNDING);
        }
      }),
      RUNS,
    );
  });
});

describe('turn-ahead and the machine', () => {
  test.each(['turn-ahead', 'machine'] as const)(
    '%s never opens or closes faster than its slews, nor past its limits',
    (planner) => {
      fc.assert(
        fc.property(randomMotion(), level, limits, (motion, levelDb, changes) => {
          const settings = settingsWith({ ...changes, pitchMax: 300e-6 });
          const side = plannedSide(motion, settings);
          const { pitch } = planSide(side, planner, levelDb);
          for (const [quarter, here] of pitch.entries()) {
            const next = pitch[quarter + 1] ?? here;
            expect(next - here).toBeLessThanOrEqual(settings.pitchOpenSlew + ROUNDING);
            expect(here - next).toBeLessThanOrEqual(settings.pitchCloseSlew + ROUNDING);
            expect(here).toBeGreaterThanOrEqual(settings.basePitch);
            expect(here).toBeLessThanOrEqual(settings.pitchMax);
          }
        }),
        RUNS,
      );
    },
  );

  test.each([
    ['level', (more: number) => ({ levelDb: 12 * more })],
    ['base width', (more: number) => ({ baseWidth: 50.8e-6 * (1 + more) })],
    ['least width', (more: number) => ({ widthMin: 25.4e-6 * (1 + more) })],
    ['land', (more: number) => ({ landMin: 12.7e-6 + 50e-6 * more })],
    ['depth tolerance', (more: number) => ({ depthTolerance: 10e-6 * more + 2.5e-6 })],
    ['pitch tolerance', (more: number) => ({ pitchTolerance: 10e-6 * more + 1.5e-6 })],
    ['timing tolerance', (more: number) => ({ timingTolerance: 1 + Math.round(4 * more) })],
    ['width for lateral motion', (more: number) => ({ widthPerLateral: more })],
  ])('more %s never shortens the side', (_, changesOf) => {
    const more = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(randomMotion(), more, (motion, share) => {
        const { levelDb, ...changes } = { levelDb: 0, ...changesOf(share) };
        const before = settingsWith(UNBOUND);
        const after = settingsWith({ ...UNBOUND, ...changes });
        for (const planner of ['turn-ahead', 'machine', 'fixed'] as const) {
          const used = usedBy(motion, before, planner);
          expect(usedBy(motion, after, planner, levelDb)).toBeGreaterThanOrEqual(used - ROUNDING);
        }
      }),
      RUNS,
    );
  });

  test('a louder reading opens the machine in proportion to its gain', () => {
    const [motion] = fc.sample(randomMotion({ longestTurns: 3 }), { numRuns: 1, seed: 3 });
    const used = [1, 2, 3].map((gain) => {
      const { machine } = settingsWith();
      const changes = { ...UNBOUND, basePitch: 1e-9, machine: { ...machine, gain } };
      // Slews so wide that nothing but the envelopes shows.
      return usedBy(
        motion!,
        settingsWith({ ...changes, pitchOpenSlew: 1, pitchCloseSlew: 1 }),
        'machine',
      );
    });
    expect(used[2]! - used[1]!).toBeWithin(used[1]! - used[0]!, 1e-12);
    expect(used[1]! - used[0]!).toBeGreaterThan(1e-6);
  });
});

test('in silence every planner keeps base pitch and base width', () => {
  const settings = settingsWith(EXACT);
  const silent = fc.sample(randomMotion({ amplitude: 0 }), { numRuns: 1, seed: 1 })[0]!;
  const side = plannedSide(silent, settings);
  for (const planner of ['turn-ahead', 'machine', 'fixed'] as const) {
    const { pitch, halfWidth } = planSide(side, planner, 0);
    expect(pitch).toBeWithin(
      Array.from({ length: side.count }, () => settings.basePitch),
      0,
    );
    expect(halfWidth).toBeWithin(
      Array.from({ length: side.count + 1 }, () => 25.4e-6),
      1e-18,
    );
  }
});
